import { readdirSync, readFileSync } from "node:fs";
import readability from "text-readability";
import { describe, expect, it } from "vitest";
import { parseScenario } from "../../src/document";
import type { Scenario } from "../../src/document";
import {
  cameTrue,
  drawn,
  filled,
  optionOf,
  outcomeOf,
  parseLesson,
  serializeLesson,
  textsOf,
  toleranceOf,
  variantsOf,
} from "../../src/lesson";

/**
 * Every lesson of the collection: what the model computes is held against the hand formula that the lesson shows, which is
 * physics of its own with published coefficients (the lesson's `sources`). Each lesson gives its tolerance and the reason.
 */
const SEEDS = 100;
const files = readdirSync("lessons").filter((name) => name.endsWith(".json"));
const collection = new Map<string, Scenario>(
  readdirSync("scenarios").map((file) => {
    const read = parseScenario(readFileSync(`scenarios/${file}`, "utf8"));
    if (!read.ok) throw new Error(`scenarios/${file} is refused`);
    return [file.replace(".json", ""), read.scenario];
  }),
);
const lessons = files.map((file) => {
  const text = readFileSync(`lessons/${file}`, "utf8");
  const read = parseLesson(text);
  if (!read.ok) throw new Error(read.problems.map((one) => `${file}: ${one.message}`).join("\n"));
  return { file, text, lesson: read.lesson };
});

it("there are at least fourteen lessons, on one idea each", () => {
  expect(lessons.length).toBeGreaterThanOrEqual(14);
  expect(new Set(lessons.map(({ lesson }) => lesson.idea.en)).size).toBe(lessons.length);
});

describe.each(lessons)("$file", ({ file, text, lesson }) => {
  it("is written as the program writes it, under its own name, with sources", () => {
    expect(serializeLesson(lesson)).toBe(text);
    expect(`${lesson.id}.json`).toBe(file);
    expect(lesson.sources.length).toBeGreaterThan(0);
  });

  it("stands in both languages in full", () => {
    const missing = textsOf(lesson).filter(([, words]) => !words.en?.trim() || !words.de?.trim());
    expect(missing.map(([path]) => path)).toEqual([]);
    // An equation that holds words stands in German too.
    const { tex, tex_de } = lesson.equation;
    expect(tex_de === undefined).toBe(!tex.includes("\\text"));
    expect(tex_de).not.toBe(tex);
  });

  it(`has a worked answer that the model gives too, for ${SEEDS} students`, () => {
    const differing = new Set<number>();
    const seen = new Set<string>();
    for (let i = 0; i < SEEDS; i++) {
      const draws = drawn(lesson, { group: "class 8b", name: `student ${i}` });
      // Two students may have the same numbers: once is enough.
      const key = JSON.stringify(draws);
      if (seen.has(key)) continue;
      seen.add(key);
      const built = variantsOf(lesson, collection, draws);
      if (!built.ok) throw new Error(built.problems.map((one) => one.message).join("\n"));
      const { hand, model, happens } = outcomeOf(lesson, built.scenarios, draws);
      differing.add(hand);
      expect(Math.abs(hand - model), `${key}: ${hand} by hand, ${model} by the model`).toBeLessThanOrEqual(
        toleranceOf(lesson.exercise, model),
      );
      // A tolerance that takes anything would teach nothing.
      expect(toleranceOf(lesson.exercise, model)).toBeLessThan(0.2 * Math.abs(model) + 0.6);
      const { prediction } = lesson;
      if (prediction.kind === "choose") expect(optionOf(prediction, happens)).toBeGreaterThanOrEqual(0);
      else expect(cameTrue(prediction, happens, happens)).toBe(true);
    }
    expect(differing.size).toBeGreaterThan(4);
  });

  it("is read by about grade 8", () => {
    // The number of a place is read as one short word.
    const texts = textsOf(lesson)
      .filter(([path]) =>
        /^(idea|question|misconception|explanation|exercise\.(ask|hint)|plan\.(goal|demonstration))$/.test(
          path,
        ),
      )
      .map(([, words]) => filled(words.en ?? "", () => "five"));
    // Flesch–Kincaid (Kincaid et al. 1975, Research Branch Report 8-75) of the whole lesson; half a grade for "centre of buoyancy".
    expect(readability.fleschKincaidGrade(texts.join(" "))).toBeLessThanOrEqual(8.5);
  });

  it("asks for nothing that hurts", () => {
    const { things, demonstration } = lesson.plan;
    for (const words of [things, demonstration])
      expect(`${words.en} ${words.de}`).not.toMatch(
        /\b(lead|hooks?|knife|candle flame|Blei|Haken|Messer)\b/i,
      );
  });
});
