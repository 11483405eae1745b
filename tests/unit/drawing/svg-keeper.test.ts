import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Mark, Paint, Stroke } from "../../../src/drawing/mark";
import { paletteFrom } from "../../../src/drawing/palette";
import { svgElements, svgKeeper } from "../../../src/drawing/svg";

/** A drawing that is made anew at each move: what is kept of it must not differ from what would be written. */

const palette = paletteFrom({}, false, "sans-serif");
const options = { palette, scale: 1000, enlarged: true };

// Few values for each field, so that two drawings often have a mark in common and often differ in one field alone.
const place = fc.record({ x: fc.constantFrom(0, 0.01), z: fc.constantFrom(0, -0.02) });
const points = fc.array(place, { minLength: 1, maxLength: 3 });
const paint = fc.record(
  {
    role: fc.constantFrom<Paint["role"]>("ink", "paper"),
    to: fc.constantFrom<Paint["role"]>("accent"),
    t: fc.constantFrom(0.25, 0.75),
    alpha: fc.constantFrom(0.5, 1),
    hex: fc.constantFrom("#0072b2"),
  },
  { requiredKeys: ["role"] },
);
const stroke = fc.record(
  {
    role: fc.constantFrom<Stroke["role"]>("ink", "metal"),
    px: fc.constantFrom(1, 2),
    real: fc.constantFrom(0.0005, 0.004),
    dash: fc.constantFrom<readonly [number, number]>([4, 2], [4, 3]),
    alpha: fc.constantFrom(0.5),
  },
  { requiredKeys: ["role", "px"] },
);
const look = {
  what: fc.constantFrom(null, "body"),
  title: fc.constantFrom("G", "B"),
  fill: paint,
  stroke,
};
const like = <T extends object>(fields: { [K in keyof T]: fc.Arbitrary<T[K]> }, needed: (keyof T)[]) =>
  fc.record({ ...look, ...fields }, { requiredKeys: ["what", ...needed] as never });
const mark = fc.oneof(
  like({ kind: fc.constantFrom("polygon", "path"), points }, ["kind", "points"]),
  like({ kind: fc.constant("lines"), paths: fc.array(points, { maxLength: 2 }) }, ["kind", "paths"]),
  like({ kind: fc.constant("circle"), at: place, radius: fc.constantFrom(0.001, 0.003) }, [
    "kind",
    "at",
    "radius",
  ]),
  like({ kind: fc.constant("arrow"), from: place, to: place, head: fc.constantFrom(6, 9) }, [
    "kind",
    "from",
    "to",
    "head",
  ]),
  like(
    {
      kind: fc.constant("text"),
      at: place,
      words: fc.constantFrom("G", "B"),
      size: fc.constantFrom(11, 12),
      bold: fc.boolean(),
      anchor: fc.record({ x: fc.constantFrom(0, 0.5, 1), y: fc.constantFrom(0, 0.5, 1) }),
      halo: paint,
    },
    ["kind", "at", "words", "size", "anchor"],
  ),
) as unknown as fc.Arbitrary<Mark>;
const drawing = fc.array(mark, { maxLength: 4 });

describe("the elements of a drawing that is made anew", () => {
  test("are those that would be written, whatever has changed", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(drawing, fc.constantFrom(500, 1000)), { maxLength: 8 }), (drawings) => {
        const keeper = svgKeeper();
        for (const [marks, scale] of drawings)
          expect(keeper(marks, { ...options, scale })).toEqual(svgElements(marks, { ...options, scale }));
      }),
    );
  });

  test("one field of one mark alone: it is seen", () => {
    fc.assert(
      fc.property(mark, mark, (a, b) => {
        const keeper = svgKeeper();
        keeper([a], options);
        for (const key of Object.keys(b) as (keyof Mark)[]) {
          if (a.kind !== b.kind) return;
          const next = { ...a, [key]: b[key] } as Mark;
          expect(keeper([next], options)).toEqual(svgElements([next], options));
          keeper([a], options);
        }
      }),
      { numRuns: 2000 },
    );
  });

  test("are the same objects where the marks are the same", () => {
    const one = (x: number): Mark => ({ kind: "circle", what: null, at: { x, z: 0 }, radius: 0.001 });
    const keeper = svgKeeper();
    const first = keeper([one(0), one(0.01)], options);
    expect(keeper([one(0), one(0.01)], options)).toBe(first);
    const next = keeper([one(0), one(0.02)], options);
    expect(next[0]).toBe(first[0]);
    expect(next[1]).not.toBe(first[1]);
  });
});

test("what is enlarged as a whole keeps the width of its lines, but a thing's own width grows with it", () => {
  const line = (real: number): Mark => ({
    kind: "path",
    what: null,
    points: [
      { x: 0, z: 0 },
      { x: 1, z: 0 },
    ],
    stroke: { role: "ink", px: 2, real },
  });
  const effect = (mark: Mark, enlarged: boolean) =>
    svgElements([mark], { palette, scale: 1000, enlarged })[0]?.attributes["vector-effect"];
  expect(effect(line(0.001), true)).toBe("non-scaling-stroke");
  expect(effect(line(0.003), true)).toBeUndefined();
  expect(effect(line(0.001), false)).toBeUndefined();
});
