import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  cameTrue,
  drawn,
  lessonJsonSchema,
  parseLesson,
  parseResults,
  readFormula,
  readLesson,
  saidOf,
  texOf,
} from "../../../src/lesson";
import { calculate } from "../../../src/lesson/formula";
import { texTrouble } from "../../../src/lesson/tex";

const text = readFileSync("lessons/density.json", "utf8");
const whole = (): Record<string, unknown> => JSON.parse(text) as Record<string, unknown>;
const refusal = (change: (lesson: Record<string, unknown>) => void): string => {
  const lesson = whole();
  change(lesson);
  const read = readLesson(lesson);
  return read.ok ? "" : read.problems.map((one) => one.message).join("\n");
};

describe("a formula", () => {
  it("follows the rules of arithmetic", () => {
    expect(calculate("2 + 3 * 4 - 6 / 2", {})).toBe(11);
    expect(calculate("2 − 3 − 4", {})).toBe(-5);
    expect(calculate("-(a + 1) × b ÷ 2", { a: 3, b: 5 })).toBe(-10);
    expect(calculate("sqrt(2 * x)", { x: 8 })).toBe(4);
    expect(calculate("atan(1) + sin(30) * 2 + cos(60) * 2 + tan(45)", {})).toBeCloseTo(48, 12);
    expect(calculate("pi * r * r", { r: 2 })).toBeCloseTo(12.566370614359172, 12);
  });

  it("agrees with sums that were worked out while they were written", () => {
    interface Sum {
      readonly text: string;
      readonly value: number;
    }
    const atom = fc.integer({ min: 1, max: 99 }).map((n): Sum => ({ text: String(n), value: n }));
    const does = {
      "+": (a: number, b: number) => a + b,
      "-": (a: number, b: number) => a - b,
      "*": (a: number, b: number) => a * b,
      "/": (a: number, b: number) => a / b,
    } as const;
    const { tree } = fc.letrec<{ tree: Sum }>((tie) => ({
      tree: fc.oneof(
        { depthSize: "small" },
        atom,
        fc.tuple(tie("tree"), fc.constantFrom("+", "-", "*", "/"), atom).map(([a, sign, b]): Sum => ({
          text: `(${a.text}) ${sign} ${b.text}`,
          value: does[sign](a.value, b.value),
        })),
        fc.tuple(tie("tree"), fc.constantFrom("+", "-", "*"), tie("tree")).map(([a, sign, b]): Sum => ({
          text: `((${a.text}) ${sign} (${b.text}))`,
          value: does[sign](a.value, b.value),
        })),
      ),
    }));
    fc.assert(
      fc.property(tree, ({ text, value }) => {
        fc.pre(text.length < 250);
        expect(calculate(text, {})).toBe(value);
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  it.each([
    ["a b", "stands where the formula should end"],
    ["(1 + 2", "not closed"],
    ["1 +", "ends where"],
    ["alert(1)", "stands where the formula should end"],
    ["a; b", "has no meaning"],
    ["sqrt 4", "needs brackets"],
    ["1e9", "stands where the formula should end"],
    ["(".repeat(40) + "1", "too many brackets"],
  ])("refuses %s in words", (formula, why) => {
    const read = readFormula(formula);
    expect(read.ok ? "" : read.why).toContain(why);
  });

  it("gives a number or an error, never infinity", () => {
    expect(() => calculate("1 / a", { a: 0 })).toThrow(/no number/);
    expect(() => calculate("b", { a: 0 })).toThrow(/"b"/);
    expect(() => calculate("toString", {})).toThrow(/no value/);
  });

  it("is written as TeX and read aloud with its brackets", () => {
    const read = readFormula("m * (1 - a / (b + 2))");
    if (!read.ok) throw new Error(read.why);
    expect(texOf(read.term, (name) => name, String)).toBe("m \\cdot \\left(1 - \\frac{a}{b + 2}\\right)");
    // Within a fraction a slash stands for the next one, with the brackets that it then needs.
    const nested = readFormula("sqrt(2 * a / 1000 / (b * (c / 4) / (d * 5)))");
    if (!nested.ok) throw new Error(nested.why);
    expect(texOf(nested.term, (name) => name, String)).toBe(
      "\\sqrt{\\frac{2 \\cdot a / 1000}{b \\cdot c / 4 / \\left(d \\cdot 5\\right)}}",
    );
    const speech = {
      plus: "plus",
      minus: "minus",
      times: "times",
      over: "over",
      root: (of: string) => `root of ${of}`,
      of: (name: string, of: string) => `${name} of ${of}`,
      bracket: (of: string) => `(${of})`,
    };
    expect(saidOf(read.term, speech, (name) => name, String)).toBe("m times (1 minus a over (b plus 2))");
  });
});

describe("TeX", () => {
  it("takes fractions and refuses what could reach outside", () => {
    expect(texTrouble("\\frac{1}{2} \\rho \\cdot C \\cdot v^2")).toBeNull();
    for (const bad of [
      "\\href{http://x}{y}",
      "\\def\\a{b}",
      "\\includegraphics{a}",
      "\\htmlData{a=b}{c}",
      "\\color{red}",
      "<b>",
      "a}{b",
      "$x$",
    ])
      expect(texTrouble(bad) ?? (bad === "<b>" ? "ok" : "")).not.toBe("");
  });
});

describe("a lesson file", () => {
  it("is refused with the place and the remedy", () => {
    expect(refusal((one) => void (one["titel"] = "x"))).toMatch(/titel.*unknown key.*title/s);
    expect(
      refusal((one) => void ((one["exercise"] as Record<string, unknown>)["hand"] = "100 * roh")),
    ).toMatch(/exercise\.hand.*"roh"/s);
    expect(refusal((one) => void (one["question"] = { en: "How deep is {nothing}?" }))).toMatch(
      /question\.en.*\{nothing\}/s,
    );
    expect(refusal((one) => void (one["question"] = {}))).toMatch(/question.*no text/s);
    expect(
      refusal((one) => void ((one["equation"] as Record<string, unknown>)["tex"] = "\\href{a}{b}")),
    ).toMatch(/href/);
    const figures = (one: Record<string, unknown>) => one["figures"] as Record<string, unknown>[];
    expect(refusal((one) => void ((figures(one)[0] ?? {})["is"] = "statics.weight"))).toMatch(
      /figures\[0\]\.is.*statics\.mass_g/s,
    );
    expect(refusal((one) => void ((figures(one)[0] ?? {})["name"] = "rho"))).toMatch(/a second time/);
    expect(parseLesson(" ".repeat(300_000)).ok).toBe(false);
    expect(parseLesson('{"format": "trimwright/lesson", "format": 1}').ok).toBe(false);
  });

  it("has the schema that is published with the page", () => {
    expect(JSON.parse(readFileSync("src/ui/public/lesson.schema.json", "utf8"))).toEqual(lessonJsonSchema());
  });

  it("gives each student the same numbers again, and neighbours other ones", () => {
    const read = parseLesson(text);
    if (!read.ok) throw new Error("refused");
    const { lesson } = read;
    const of = (name: string, group = "8b"): number => drawn(lesson, { group, name })["rho"] ?? NaN;
    expect(of("Ada")).toBe(of(" ada "));
    const many = Array.from({ length: 30 }, (_, i) => of(`student ${i}`));
    expect(new Set(many).size).toBeGreaterThan(15);
    for (const value of many)
      expect(value >= 0.3 && value <= 0.85 && Math.abs(value * 100 - Math.round(value * 100)) < 1e-9).toBe(
        true,
      );
    expect(drawn(lesson, null)).toEqual({ rho: 0.5 });
    const { prediction } = lesson;
    expect([0, 1, 2].map((option) => cameTrue(prediction, 0, option))).toEqual([false, true, false]);
  });
});

describe("results", () => {
  const good = { format: "trimwright/results", version: 1, group: "8b", student: "Ada", lessons: [] };
  it("are bounded and checked", () => {
    expect(parseResults(JSON.stringify(good)).ok).toBe(true);
    for (const bad of [
      { ...good, student: "x".repeat(80) },
      { ...good, extra: 1 },
      { ...good, lessons: [{ lesson: "../x", predicted: 1, happened: 1, cameTrue: true, answers: [] }] },
      {
        ...good,
        lessons: [{ lesson: "density", predicted: 1e300, happened: 1, cameTrue: true, answers: [] }],
      },
    ])
      expect(parseResults(JSON.stringify(bad)).ok).toBe(false);
    expect(parseResults("x".repeat(200_000)).ok).toBe(false);
  });
});
