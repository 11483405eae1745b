import { pathSteps, readScenario, scaled } from "../document";
import type { Problem, Scenario } from "../document";
import { calculate } from "./formula";
import type { Values } from "./formula";
import type { Lesson } from "./schema";

type Change = Lesson["variants"][number]["changes"][number];

/** Scenarios that lessons may name, by their file without .json. */
export type Collection = ReadonlyMap<string, Scenario>;

export type Built =
  | { readonly ok: true; readonly scenarios: readonly Scenario[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const wrong = (path: string, allowed: string, remedy: string): Problem => ({
  path,
  found: "what cannot be used",
  allowed,
  remedy,
  message: `${path}: ${allowed}. ${remedy}`,
});

/** A change's value with its formulas worked out. */
function worked(value: unknown, values: Values): unknown {
  if (typeof value === "string" && value.startsWith("="))
    return Number(calculate(value.slice(1), values).toPrecision(12));
  if (Array.isArray(value)) return value.map((one: unknown) => worked(one, values));
  if (typeof value === "object" && value !== null)
    return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, worked(one, values)]));
  return value;
}

/** Plain data with the value at a path replaced; null removes the key. A copy: what is given stays as it is. */
function changed(root: unknown, steps: readonly (string | number)[], value: unknown): unknown {
  const [step, ...more] = steps;
  if (step === undefined) return value;
  if (Array.isArray(root) || typeof step === "number") {
    const list: unknown[] = Array.isArray(root) ? [...(root as readonly unknown[])] : [];
    if (typeof step !== "number" || step > list.length) throw new RangeError("no such place in a list");
    if (more.length === 0 && value === null) list.splice(step, 1);
    else list[step] = changed(list[step], more, value);
    return list;
  }
  const group = typeof root === "object" && root !== null ? (root as Record<string, unknown>) : {};
  const { [step]: old, ...others } = group;
  return more.length === 0 && value === null ? others : { ...group, [step]: changed(old, more, value) };
}

/** The lesson's scenarios with the numbers of one student: a scenario of their own, never the open bait. */
export function variantsOf(lesson: Lesson, collection: Collection, values: Values): Built {
  const { scenario: from } = lesson;
  let base: Scenario;
  if (from.from === "collection") {
    const found = collection.get(from.file);
    if (found === undefined)
      return {
        ok: false,
        problems: [
          wrong("scenario.file", `one of ${[...collection.keys()].join(", ")}`, "Name one of these files."),
        ],
      };
    base = found;
  } else {
    const read = readScenario(from.document);
    if (!read.ok)
      return {
        ok: false,
        problems: read.problems.map((one) => ({ ...one, path: `scenario.document.${one.path}` })),
      };
    base = read.scenario;
  }
  const scenarios: Scenario[] = [];
  for (const [i, variant] of lesson.variants.entries()) {
    const path = `variants[${i}]`;
    try {
      const k = variant.size === undefined ? 1 : calculate(variant.size, values);
      if (!(k >= 0.1 && k <= 10))
        return {
          ok: false,
          problems: [wrong(`${path}.size`, "a number from 0.1 to 10", "Give a size within it.")],
        };
      const sized = k === 1 ? base : scaled(base, { length: k, height: k, breadth: k });
      const document = variant.changes.reduce(
        (root: unknown, one: Change) => changed(root, pathSteps(one.path), worked(one.value, values)),
        sized,
      );
      const read = readScenario(document);
      if (!read.ok)
        return {
          ok: false,
          problems: read.problems.map((one) =>
            wrong(`${path}.changes`, one.message, "Look at the changes of this variant."),
          ),
        };
      scenarios.push(read.scenario);
    } catch (fault) {
      if (!(fault instanceof RangeError)) throw fault;
      return { ok: false, problems: [wrong(path, fault.message, "Look at its size and its changes.")] };
    }
  }
  return { ok: true, scenarios };
}
