import { BaitError } from "../model/bait";
import { ShapeError } from "../model/shape";
import { compile, leftAlone } from "./compile";
import type { Before, Compiled, Made } from "./compile";
import { pathSteps, valueAt } from "./fields";
import { problemsOf } from "./issues";
import { readJson } from "./json";
import { carryForward } from "./migrate";
import { describe, nearestPlace, problem } from "./problem";
import type { Place, Problem } from "./problem";
import { rules } from "./rules";
import { scenarioSchema } from "./schema";
import type { Scenario } from "./schema";
import { visible } from "./visible";

export type Parsed =
  | {
      readonly ok: true;
      readonly scenario: Scenario;
      /** What it compiles to: it has been assembled once already. */
      readonly compiled: Compiled;
      /** What was carried forward from an older version, in words. */
      readonly notes: readonly string[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const nowhere = () => null;

/**
 * Reads the text of a scenario file: JSON, version, schema, rules, and the model's own refusals. Nothing of a
 * refused file comes back but its problems.
 */
export function parseScenario(text: string): Parsed {
  const read = readJson(text);
  if (!read.ok) return read;
  const carried = carryForward(read.value);
  if (!carried.ok) return { ok: false, problems: carried.problems.map((one) => placed(one, read.place)) };
  const checked = readScenario(carried.document, read.place);
  return checked.ok ? { ...checked, notes: carried.notes } : checked;
}

/**
 * The same for a value that is not a text: data from a form, or from another program. `before`: the document that it was
 * edited from; what the edit has left alone is not worked out again. All is checked in any case.
 */
export function readScenario(
  value: unknown,
  place: (path: string) => Place | null = nowhere,
  before: Before | null = null,
): Parsed {
  const result = scenarioSchema.safeParse(value);
  if (!result.success) {
    const near = (path: string) => nearestPlace(path, place);
    return { ok: false, problems: problemsOf(scenarioSchema, value, result.error.issues, near) };
  }
  const scenario: Scenario = result.data;
  // What is the same is seen in the document as it was given: the schema makes a copy.
  const tried = ruled(scenario, before === null ? {} : leftAlone(value as Scenario, before));
  if (!tried.ok) return { ok: false, problems: tried.problems.map((one) => placed(one, place)) };
  return { ok: true, scenario, compiled: tried.compiled, notes: [] };
}

/** A drawing that is kept half done: it has the shape of a document, but the rules or the model may refuse it. Else null. */
export function draftOf(value: unknown): Scenario | null {
  const result = scenarioSchema.safeParse(value);
  return result.success ? result.data : null;
}

function ruled(scenario: Scenario, made: Made): Tried {
  const broken = rules(scenario);
  return broken.length > 0 ? { ok: false, problems: broken } : tryCompile(scenario, made);
}

export type Tried =
  | { readonly ok: true; readonly compiled: Compiled }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Compiles, and gives the model's refusal as a problem with its place in the document. Faults of ours still throw. */
export function tryCompile(scenario: Scenario, made: Made = {}): Tried {
  try {
    return { ok: true, compiled: compile(scenario, made) };
  } catch (fault) {
    if (fault instanceof BaitError || fault instanceof ShapeError) {
      return { ok: false, problems: [refusal(scenario, fault)] };
    }
    throw fault;
  }
}

function refusal(scenario: Scenario, fault: BaitError | ShapeError): Problem {
  if (fault instanceof ShapeError) {
    const path = shapePath(fault.place);
    return problem(path, fault.found.replace(/^found /, ""), fault.remedy, "Change the drawing there.");
  }
  const { path } = fault;
  // The error's message is "path: what is wrong. Remedy."
  const wrong = fault.message.slice(path.length + 2, -(fault.remedy.length + 3));
  const value = valueAt(scenario, pathSteps(path));
  const found = typeof value === "object" || value === undefined ? "what cannot be built" : describe(value);
  return {
    path,
    found,
    allowed: visible(wrong),
    remedy: visible(sentence(fault.remedy)),
    message: visible(`${path}: ${wrong}. ${sentence(fault.remedy)}`),
  };
}

const sentence = (words: string): string => {
  const capital = words.charAt(0).toUpperCase() + words.slice(1);
  return /[.!?]$/.test(capital) ? capital : `${capital}.`;
};

/** The shape room names its own knots ("top[2]", "exponentAbove[0]"); the document says where these stand. */
function shapePath(place: string): string {
  if (place === "length") return "bait.length_mm";
  return `bait.${place.replace(/^exponentAbove/, "roundover.above").replace(/^exponentBelow/, "roundover.below")}`;
}

function placed(one: Problem, place: (path: string) => Place | null): Problem {
  return one.line !== undefined
    ? one
    : problem(one.path, one.found, one.allowed, one.remedy, nearestPlace(one.path, place));
}
