import { beforeAll, describe, expect, test } from "vitest";
import {
  answers,
  attitudeWords,
  floatFigures,
  leverFigure,
  massFigures,
  netFigure,
  restFigure,
  riseFigures,
  chanceFigure,
  verdictSentence,
  type Figure,
} from "../../../src/ui/state/figures";
import { floats } from "../../../src/runner";
import { Prefs } from "../../../src/ui/state/prefs.svelte";
import { Units } from "../../../src/ui/state/units";
import { Workspace } from "../../../src/ui/state/workspace.svelte";
import { FIGURES } from "../../../src/ui/words/figures";
import { scenario } from "./scenario";

const units = new Units(new Prefs(null, 1200));
const german = new Units(new Prefs(null, 1200, "de"));
beforeAll(async () => {
  await Promise.all([answers.load("de"), FIGURES.ready("de")]);
});

describe("words", () => {
  // The working tolerance is 0.05 g: common practice, no source.
  test.each([
    [0.37, "floats"],
    [0.0501, "floats"],
    [0.05, "suspends"],
    [0, "suspends"],
    [-0.05, "suspends"],
    [-0.051, "sinks"],
  ] as const)("%d g %s", (net, word) => expect(floats(net)).toBe(word));

  test.each([
    [0, "level"],
    [1.9, "level"],
    [6, "nose-up"],
    [-6, "nose-down"],
    [170, "belly up"],
    [-95, "belly up"],
    [361, "level"],
    [366, "nose-up"],
    [-366, "nose-down"],
  ] as const)("%d° is %s", (pitch, words) => expect(attitudeWords(pitch, "en")).toBe(words));
});

describe("figures", () => {
  const { now } = new Workspace(scenario());
  const figuresIn = (units: Units): readonly Figure[] => [
    netFigure(now, units),
    restFigure(now, null, units),
    ...riseFigures(now, { speed: -0.12, pitch: -0.1, drift: 0.02, steady: true, why: null }, units),
    ...floatFigures(now, units),
    leverFigure(now, units),
    chanceFigure(now, null, units),
    ...massFigures(now, units),
  ];

  test.each([
    ["en", units],
    ["de", german],
  ])("every one answers why with a formula, inputs and a source (%s)", (_, units) => {
    const figures = figuresIn(units);
    expect(figures.length).toBeGreaterThanOrEqual(9);
    for (const figure of figures) {
      const why = figure.why(units);
      if (why === null) throw new Error("The answers were loaded.");
      for (const text of [why.title, why.value, why.meaning, why.formula, why.source]) {
        expect(text, figure.key).not.toBe("");
        expect(text, figure.key).not.toMatch(/NaN|undefined|Infinity/);
      }
      expect(why.inputs.length, figure.key).toBeGreaterThan(0);
    }
  });

  test("the account's rows add up to its foot as printed, within their rounding", () => {
    const table = netFigure(now, units).why(units)?.table;
    if (table === undefined) throw new Error("net buoyancy has no account");
    const number = (text: string | undefined): number => Number((text ?? "").replace("\u2212", "-"));
    for (const column of [1, 2, 3]) {
      const sum = table.rows.reduce((total, row) => total + number(row[column]), 0);
      // Half a unit of the last printed digit a row.
      expect(Math.abs(sum - number(table.foot[column]))).toBeLessThanOrEqual(
        0.0005 * (table.rows.length + 1),
      );
    }
  });

  test("a sinking speed is said as sinking, with its seconds over 30 cm", () => {
    const [rise, seconds] = riseFigures(
      now,
      { speed: -0.12, pitch: 0, drift: 0, steady: true, why: null },
      units,
    );
    expect(rise?.label).toBe("Sinks at");
    expect(rise?.value).toBeCloseTo(120, 9);
    // 0.3 m at 0.12 m/s.
    expect(seconds?.value).toBeCloseTo(2.5, 9);
  });

  test("one that hardly moves has no seconds", () => {
    const [, seconds] = riseFigures(now, { speed: 1e-4, pitch: 0, drift: 0, steady: true, why: null }, units);
    expect(seconds?.value).toBeNull();
    expect(seconds?.words).not.toBe("");
  });

  test("labels, words and answers follow the language that is read", () => {
    const prefs = new Prefs(null, 1200);
    const both = new Units(prefs);
    const seen = (): unknown => {
      const trim = floatFigures(now, both)[0];
      const why = trim?.why(both);
      return [trim?.label, trim?.words, why?.title, why?.inputs[1]?.name];
    };
    expect(seen()).toEqual(["Afloat", "nose-down", "Trim afloat", "mass"]);
    prefs.setLanguage("de");
    expect(seen()).toEqual(["An der Oberfläche", "Nase tief", "Lage an der Oberfläche", "Masse"]);
    expect(verdictSentence(now.statics, both)).toMatch(/^(Schwimmt mit|Sinkt mit|Schwebt:) \d+,\d\d\u202fg/);
  });

  test("the sentence carries word and grams", () => {
    expect(verdictSentence(now.statics, units)).toMatch(/^(Floats by|Sinks by|Suspends:) \d+\.\d\d\u202fg/);
  });
});
