import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  decimalsFor,
  domainOf,
  moveAt,
  placeMarks,
  summaryOf,
  unitOf,
  valueText,
} from "../../../src/ui/plots/axes";
import { decimate, nearestIndex, rangeOf } from "../../../src/ui/plots/decimate";
import type { Series } from "../../../src/ui/plots";
import { PARTS } from "../../../src/ui/words/parts";

const times = (n: number, rate = 60): Float64Array => Float64Array.from({ length: n }, (_, i) => i / rate);
const series = (values: ArrayLike<number>, over: Partial<Series> = {}): Series => ({
  key: "a",
  label: "depth",
  unit: "m",
  colour: "#000",
  time: times(values.length),
  values,
  ...over,
});

describe("decimate", () => {
  test("keeps short series as they are", () => {
    const t = times(50);
    const v = t.map((x) => x * x);
    expect(decimate(t, v, 0, 1, 100)).toEqual(Array.from(t, (time, i) => ({ t: time, v: v[i] })));
  });

  test("ten minutes at 60 frames a second become at most four points a pixel column, no peak lost", () => {
    const t = times(36_001);
    const v = t.map((x) => Math.sin(x));
    v[12_345] = 9; // one frame
    v[30_000] = -9;
    const out = decimate(t, v, 0, 600, 800);
    expect(out.length).toBeLessThanOrEqual(4 * 801);
    expect(Math.max(...out.map((s) => s.v))).toBe(9);
    expect(Math.min(...out.map((s) => s.v))).toBe(-9);
    expect(out[0]).toEqual({ t: 0, v: 0 });
    expect(out.at(-1)?.t).toBe(600);
  });

  test("order, range and gaps survive for any series", () => {
    const value = fc.oneof(
      { weight: 12, arbitrary: fc.double({ min: -5, max: 5, noNaN: true }) },
      { weight: 1, arbitrary: fc.constant(Number.NaN) },
    );
    fc.assert(
      fc.property(
        fc.array(value, { minLength: 1, maxLength: 600 }),
        fc.integer({ min: 1, max: 40 }),
        (values, columns) => {
          const t = times(values.length);
          const out = decimate(t, values, 0, t.at(-1) ?? 0, columns);
          for (let i = 1; i < out.length; i++) expect(out[i]?.t ?? 0).toBeGreaterThan(out[i - 1]?.t ?? 0);
          const range = rangeOf(values);
          const kept = rangeOf(out.map((s) => s.v));
          expect(kept === null).toBe(range === null);
          expect([kept?.low, kept?.high]).toEqual([range?.low, range?.high]);
          // As many separate runs as in the series.
          const runs = (list: readonly number[]): number =>
            list.filter(
              (v, i) => Number.isFinite(v) && (i === 0 || !Number.isFinite(list[i - 1] ?? Number.NaN)),
            ).length;
          expect(runs(out.map((s) => s.v))).toBe(runs(values));
        },
      ),
      { seed: 11, numRuns: 300 },
    );
  });

  test("a part of the time keeps one sample beyond either end, so that the line runs to the edge", () => {
    const t = times(601, 10);
    const out = decimate(t, t, 20.05, 30.05, 1000);
    expect(out[0]?.t).toBeCloseTo(20, 9);
    expect(out.at(-1)?.t).toBeCloseTo(30.1, 9);
  });

  test("refuses lists of different lengths", () => {
    expect(() => decimate([0, 1], [0], 0, 1, 10)).toThrow(/2 times for 1 values/);
  });
});

describe("reading", () => {
  test("the nearest sample", () => {
    const t = [0, 1, 2];
    expect(nearestIndex(t, 0.4)).toBe(0);
    expect(nearestIndex(t, 0.6)).toBe(1);
    expect(nearestIndex(t, -5)).toBe(0);
    expect(nearestIndex(t, 9)).toBe(2);
    expect(nearestIndex([], 1)).toBe(-1);
  });

  test("values with a real minus, no minus nought, and a dash for a gap", () => {
    expect(valueText(-18.94, 1)).toBe("−18.9");
    expect(valueText(-0.001, 1)).toBe("0.0");
    expect([valueText(-18.94, 1, "de"), valueText(-0.001, 1, "de")]).toEqual(["−18,9", "0,0"]);
    expect(valueText(Number.NaN, 1)).toBe("–");
    expect(decimalsFor(1.5)).toBe(2);
    expect(decimalsFor(40)).toBe(1);
    expect(decimalsFor(0.05)).toBe(4);
  });

  test("the move at a time", () => {
    const marks = [
      { time: 0, label: "settle" },
      { time: 2, label: "reel" },
    ];
    expect(moveAt(marks, 1.99)?.label).toBe("settle");
    expect(moveAt(marks, 2)?.label).toBe("reel");
    expect(moveAt([], 2)).toBeNull();
  });

  test("a summary says least and greatest with their times", () => {
    const text = summaryOf("Depth", [series([0, 0.5, 2, 1])], 0.05, PARTS.in("en"));
    expect(text).toContain("least 0.00 m at 0.0 s");
    expect(text).toContain("greatest 2.00 m at 0.0 s");
    expect(summaryOf("Depth", [series([])], 3, PARTS.in("en"))).toContain("nothing recorded yet");
  });
});

describe("axes", () => {
  test("the domain holds every value with a little room, and a bait at rest is not drawn as a storm", () => {
    const [low, high] = domainOf([series([0, 1, 2]), series([3, Number.NaN])]);
    expect(low).toBeLessThan(0);
    expect(high).toBeGreaterThan(3);
    expect(high - low).toBeLessThan(3.6);
    const still = domainOf([series([1, 1 + 1e-9])]);
    expect(still[1] - still[0]).toBeCloseTo(0.05, 9);
    expect(domainOf([series([])])).toEqual([0, 0.05]);
  });

  test("one axis has one unit", () => {
    expect(unitOf("Depth", [series([]), series([])])).toBe("m");
    expect(() => unitOf("Depth", [series([]), series([], { unit: "°", label: "pitch" })])).toThrow(
      /"pitch" is in °/,
    );
  });

  test("labels of the moves never overlap and stay in the plot, however many there are", () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(
            fc.double({ min: 0, max: 60, noNaN: true }),
            fc.constantFrom("pause", "twitch 0.35 m", "reel 0.9 m/s"),
          ),
          { maxLength: 60 },
        ),
        (list) => {
          const marks = list.map(([time, label]) => ({ time, label })).sort((a, b) => a.time - b.time);
          const width = (label: string): number => 6 * label.length;
          const placed = placeMarks(marks, (t) => 40 + 10 * t, 640, width);
          expect(placed).toHaveLength(marks.length);
          const boxes = placed.flatMap((m) =>
            m.text ? [{ ...m.text, end: m.text.x + width(m.label) }] : [],
          );
          for (const a of boxes) {
            expect(a.x).toBeGreaterThanOrEqual(40 - 1e-9);
            expect(a.end).toBeLessThanOrEqual(640 + 1e-9);
            for (const b of boxes)
              if (a !== b && a.row === b.row) expect(a.end <= b.x || b.end <= a.x).toBe(true);
          }
          if (marks.length > 0) expect(boxes.length).toBeGreaterThan(0);
        },
      ),
      { seed: 3, numRuns: 200 },
    );
  });

  test("a label stands at its mark where there is room", () => {
    const [first, second] = placeMarks(
      [
        { time: 0, label: "settle" },
        { time: 1, label: "reel" },
      ],
      (t) => 50 + 200 * t,
      600,
      (label) => 6 * label.length,
    );
    expect(first?.text).toEqual({ x: 50, row: 0, ends: false });
    expect(second?.text).toEqual({ x: 250, row: 0, ends: false });
  });
});
