import { describe, expect, test } from "vitest";
import { readScenario } from "../../../src/document";
import type { Scenario } from "../../../src/document";
import {
  bodyInputs,
  breadthOf,
  cadenceInputs,
  partSections,
  stretched,
  tackleInputs,
  waterInputs,
  widened,
  withValue,
} from "../../../src/ui/state/inputs";
import type { InputGroup } from "../../../src/ui/state/inputs";
import { scenario } from "./scenario";

const everyGroup = (one: Scenario): readonly InputGroup[] => [
  ...waterInputs(one),
  ...bodyInputs(one),
  ...partSections(one).flatMap(({ groups }) => groups),
  ...tackleInputs(one),
  ...cadenceInputs(one),
];

describe("a value put at a path", () => {
  test("leaves the original and all other branches as they were", () => {
    const before = { a: [1, { b: 2 }], c: { d: 3 } };
    const after = withValue(before, ["a", 1, "b"], 9);
    expect(after).toEqual({ a: [1, { b: 9 }], c: { d: 3 } });
    expect(before).toEqual({ a: [1, { b: 2 }], c: { d: 3 } });
    expect(after.c).toBe(before.c);
  });
});

describe("live inputs", () => {
  const one = scenario();

  test("each has a label, a slider within what is allowed, and a name of its own", () => {
    const inputs = everyGroup(one).flatMap((group) => group.inputs);
    expect(inputs.length).toBeGreaterThan(20);
    expect(new Set(inputs.map((input) => input.id)).size).toBe(inputs.length);
    for (const input of inputs) {
      expect(input.label).not.toBe("");
      expect(input.slider.min).toBeGreaterThanOrEqual(input.min);
      expect(input.slider.max).toBeLessThanOrEqual(input.max);
      expect(input.slider.step).toBeGreaterThan(0);
    }
  });

  test("a length that no bait has is not taken for one; a file's own longer bait keeps its length", () => {
    const most = (from: Scenario): number | undefined =>
      everyGroup(from)
        .flatMap(({ inputs }) => inputs)
        .find(({ id }) => id === "bait.length_mm")?.max;
    expect(most(one)).toBe(500);
    expect(most(stretched(one, 640))).toBe(640);
  });

  test("what is written is what is read back, and nothing else changes its reading", () => {
    const inputs = everyGroup(one).flatMap((group) => group.inputs);
    for (const input of inputs) {
      const next = input.read(one) * 1.01 + (input.read(one) === 0 ? input.slider.step : 0);
      const changed = input.write(one, next);
      expect(input.read(changed), input.id).toBeCloseTo(next, 2);
      // The same value written again changes nothing that is read.
      expect(input.read(input.write(changed, next)), input.id).toBeCloseTo(next, 2);
    }
  });

  test("equal moves of the cadence share one input, an odd one has its own", () => {
    const inputs = cadenceInputs(one).flatMap((group) => group.inputs);
    expect(inputs.map((input) => input.label)).toEqual([
      "Retrieve speed",
      "Twitch travel",
      "Pause for, moves 2, 4",
      "Pause for, move 6",
    ]);
    const pauses = inputs[2];
    if (pauses === undefined) throw new Error("no input for the pauses");
    const longer = pauses.write(one, 3.5);
    expect(longer.cadence.map((move) => (move.do === "pause" ? move.for_s : null))).toEqual([
      null,
      3.5,
      null,
      3.5,
      null,
      5,
    ]);
  });
});

describe("length and width", () => {
  const one = scenario();

  test("stretching moves all that has a station, keeps heights, and stays a valid document", () => {
    const long = stretched(one, 100);
    const factor = 100 / one.bait.length_mm;
    expect(long.bait.length_mm).toBe(100);
    expect(long.bait.top.at(-1)).toEqual([100, one.bait.top.at(-1)?.[1]]);
    expect(long.bait.ballast[0]?.at_mm[0]).toBeCloseTo((one.bait.ballast[0]?.at_mm[0] ?? NaN) * factor, 3);
    expect(long.bait.ballast[0]?.at_mm[1]).toBe(one.bait.ballast[0]?.at_mm[1]);
    expect(readScenario(long)).toMatchObject({ ok: true });
  });

  test("there and back is the same drawing to a thousandth of a millimetre", () => {
    const back = stretched(stretched(one, 133.7), one.bait.length_mm);
    back.bait.top.forEach(([station], i) => expect(station).toBeCloseTo(one.bait.top[i]?.[0] ?? NaN, 2));
  });

  test("width scales every half-breadth and nothing else", () => {
    const wide = widened(one, 2 * breadthOf(one));
    expect(breadthOf(wide)).toBeCloseTo(2 * breadthOf(one), 9);
    expect(wide.bait.top).toBe(one.bait.top);
    expect(readScenario(wide)).toMatchObject({ ok: true });
  });
});
