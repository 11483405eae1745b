import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { pchip } from "../../src/model/base";
import {
  immersedSection,
  insideOutline,
  outline,
  outlineCrossings,
  sectionArea,
  shapeOf,
} from "../../src/model/shape";
import type { Knot, Section, ShapeSpec } from "../../src/model/shape";
import { immersion } from "../../src/model/hydrostatics";

// Random drawn bodies and surfaces. Seeded: the same cases every time.
const runs = { seed: 20240611, numRuns: 60 };

const real = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

/** Knots from nose to tail with values between two limits; closed ends as often as blunt ones. */
const curve = (L: number, low: number, high: number): fc.Arbitrary<Knot[]> =>
  fc
    .record({
      inner: fc.uniqueArray(
        fc.integer({ min: 1, max: 19 }).chain((i) => real(low, high).map((v) => ({ s: (L * i) / 20, v }))),
        { minLength: 1, maxLength: 6, selector: (k) => k.s },
      ),
      nose: fc.oneof(fc.constant(0), real(Math.min(low, 0), Math.max(high, 0))),
      tail: fc.oneof(fc.constant(0), real(Math.min(low, 0), Math.max(high, 0))),
    })
    .map(({ inner, nose, tail }) => [
      { s: 0, v: nose },
      ...[...inner].sort((p, q) => p.s - q.s),
      { s: L, v: tail },
    ]);

const exponents = (L: number): fc.Arbitrary<Knot[]> =>
  fc
    .array(fc.oneof(real(1, 10), fc.constantFrom(1, 2, 10)), { minLength: 1, maxLength: 3 })
    .map((values) => values.map((v, i) => ({ s: (L * (i + 0.5)) / values.length, v })));

const L = 0.1;
const bodies: fc.Arbitrary<ShapeSpec> = fc.record({
  length: fc.constant(L),
  top: curve(L, 0.002, 0.015),
  bottom: curve(L, -0.015, -0.002),
  halfBreadth: curve(L, 0.001, 0.012),
  exponentAbove: exponents(L),
  exponentBelow: exponents(L),
});

const poses = fc.record({
  pitch: fc.oneof(
    real(-Math.PI, Math.PI),
    fc.constantFrom(0, Math.PI / 2, -Math.PI / 2, Math.PI, Math.PI / 2 + 1e-4),
  ),
  place: real(-0.05, 1.05),
});

const surface = ({ pitch, place }: { pitch: number; place: number }) => {
  // a plane through a point of the box round the body
  const [sin, cos] = [Math.sin(pitch), Math.cos(pitch)];
  return { sin, cos, level: -L * place * sin + 0.03 * (place - 0.5) * cos };
};

describe("monotone curves", () => {
  it("never leave the range of their two neighbours", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(real(0.01, 1), real(-5, 5)), { minLength: 2, maxLength: 9 }),
        real(0, 1),
        (steps, share) => {
          let at = 0;
          const x = steps.map(([h]) => (at += h));
          const y = steps.map(([, v]) => v);
          const f = pchip(x, y);
          for (let i = 0; i + 1 < x.length; i++) {
            const v = f.at(x[i]! + share * (x[i + 1]! - x[i]!));
            const slack = 1e-12 * (Math.abs(y[i]!) + Math.abs(y[i + 1]!));
            expect(v).toBeGreaterThanOrEqual(Math.min(y[i]!, y[i + 1]!) - slack);
            expect(v).toBeLessThanOrEqual(Math.max(y[i]!, y[i + 1]!) + slack);
            // and rise or fall along each piece without turning
            expect(f.slopeAt(x[i]! + share * (x[i + 1]! - x[i]!)) * (y[i + 1]! - y[i]!)).toBeGreaterThan(
              -1e-9,
            );
          }
        },
      ),
      { ...runs, numRuns: 300 },
    );
  });
});

describe("sections", () => {
  it("are parted by a level line into two that add up", () => {
    const sections: fc.Arbitrary<Section> = fc.record({
      s: fc.constant(0),
      top: real(0.001, 0.02),
      widest: real(0, 0.001),
      bottom: real(-0.02, 0),
      halfBreadth: real(0, 0.02),
      exponentAbove: real(1, 10),
      exponentBelow: real(1, 10),
    });
    fc.assert(
      fc.property(sections, real(-0.021, 0.021), (s, z) => {
        const below = immersedSection(s, z, "below");
        const above = immersedSection(s, z, "above");
        const whole = immersedSection(s, 1, "below");
        expect(below.area + above.area).toBeCloseTo(sectionArea(s), 15);
        expect(below.momentZ + above.momentZ).toBeCloseTo(whole.momentZ, 17);
        expect(below.area).toBeGreaterThanOrEqual(0);
        expect(below.area).toBeLessThanOrEqual(sectionArea(s) * (1 + 1e-12));
        // the area grows by the breadth at the line
        const d = 1e-7;
        const rate = (immersedSection(s, z + d).area - immersedSection(s, z - d).area) / (2 * d);
        const near = Math.min(Math.abs(z - s.top), Math.abs(z - s.bottom), Math.abs(z - s.widest));
        if (near > 1e-4) expect(Math.abs(rate - 2 * below.waterHalfBreadth)).toBeLessThan(1e-5 * 0.02);
      }),
      { ...runs, numRuns: 400 },
    );
  });
});

describe("bodies under any surface", () => {
  it("are parted by it into two that add up: volume, moments, skin", () => {
    fc.assert(
      fc.property(bodies, poses, (spec, pose) => {
        const shape = shapeOf(spec);
        const s = surface(pose);
        const one = immersion(shape, s, { skin: true });
        const other = immersion(shape, { sin: -s.sin, cos: -s.cos, level: -s.level }, { skin: true });
        // Quadrature error of one side against the other: random knots make sharper curves than makers draw.
        expect(Math.abs(one.volume + other.volume - shape.volume)).toBeLessThan(1e-6 * shape.volume);
        const moment = (k: "x" | "z"): number =>
          one.volume * one.centroid[k] + other.volume * other.centroid[k];
        expect(Math.abs(moment("x") - shape.volume * shape.centroid.x)).toBeLessThan(1e-6 * shape.volume * L);
        expect(Math.abs(moment("z") - shape.volume * shape.centroid.z)).toBeLessThan(1e-6 * shape.volume * L);
        expect(one.skinFraction).toBeGreaterThanOrEqual(-1e-12);
        expect(one.skinFraction).toBeLessThanOrEqual(1 + 1e-5);
        // A blocky keel that just touches has no sharp waterline: its breadth goes like the tenth root of the depth.
        if (Math.min(one.volume, other.volume) < 1e-6 * shape.volume) return;
        expect(one.waterplaneArea).toBeCloseTo(other.waterplaneArea, 8); // of some 1e-3 m²
        expect(Math.abs(one.skinFraction + other.skinFraction - 1)).toBeLessThan(1e-5);
        const skin = one.skinFraction * one.skinCentroid.x + other.skinFraction * other.skinCentroid.x;
        expect(Math.abs(skin - shape.skinCentroid.x)).toBeLessThan(1e-5 * L);
      }),
      runs,
    );
  });

  it("take up as much more water as the waterplane is wide", () => {
    fc.assert(
      fc.property(bodies, poses, (spec, { pitch }) => {
        const shape = shapeOf(spec);
        const [sin, cos] = [Math.sin(pitch), Math.cos(pitch)];
        const heights = outline(shape, 2000).map((p) => p.x * sin + p.z * cos);
        const [low, high] = [Math.min(...heights), Math.max(...heights)];
        // ∫ waterplane dlevel from keel to ridge is the volume; 300 midpoints drawn to both ends, good to some 1e-3 across the
        // waterplane's kinks
        const n = 300;
        let sum = 0;
        let before = 0;
        for (let i = 0; i < n; i++) {
          const t = (i + 0.5) / n;
          const got = immersion(shape, { sin, cos, level: low + (high - low) * t * t * (3 - 2 * t) });
          sum += (got.waterplaneArea * (high - low) * 6 * t * (1 - t)) / n;
          // volumes only grow, to quadrature error
          expect(got.volume).toBeGreaterThanOrEqual(before - 1e-7 * shape.volume);
          before = got.volume;
        }
        expect(Math.abs(sum / shape.volume - 1)).toBeLessThan(3e-3);
      }),
      { ...runs, numRuns: 40 },
    );
  });

  it("keep their volume when the same drawing is turned over", () => {
    fc.assert(
      fc.property(bodies, poses, (spec, pose) => {
        const flip = (list: readonly Knot[]): Knot[] => list.map((k) => ({ s: k.s, v: -k.v }));
        const upright = shapeOf(spec);
        const over = shapeOf({
          ...spec,
          top: flip(spec.bottom),
          bottom: flip(spec.top),
          exponentAbove: spec.exponentBelow,
          exponentBelow: spec.exponentAbove,
        });
        const s = surface(pose);
        const one = immersion(upright, s, { skin: true });
        const other = immersion(over, { sin: s.sin, cos: -s.cos, level: s.level }, { skin: true });
        expect(Math.abs(one.volume - other.volume)).toBeLessThan(1e-9 * upright.volume);
        expect(Math.abs(one.skinFraction - other.skinFraction)).toBeLessThan(1e-9);
        expect(over.skinArea / upright.skinArea).toBeCloseTo(1, 12);
      }),
      runs,
    );
  });

  it("never give NaN, whatever touches", () => {
    fc.assert(
      fc.property(
        bodies,
        fc.constantFrom(0, Math.PI / 2, -Math.PI / 2, Math.PI),
        real(-0.1, 0.1),
        (spec, pitch, level) => {
          const shape = shapeOf(spec);
          for (const l of [level, 0, -L, spec.top[1]!.v, spec.bottom[1]!.v, -spec.top[1]!.s]) {
            const got = immersion(
              shape,
              { sin: Math.sin(pitch), cos: Math.cos(pitch), level: l },
              { skin: true },
            );
            for (const v of [
              got.volume,
              got.centroid.x,
              got.centroid.z,
              got.waterplaneIT,
              got.waterplaneArea,
              got.skinFraction,
              got.skinCentroid.x,
              got.skinCentroid.z,
            ])
              expect(Number.isFinite(v)).toBe(true);
          }
        },
      ),
      runs,
    );
  });
});

describe("outline crossings", () => {
  const points = fc.record({ x: real(-0.13, 0.03), z: real(-0.03, 0.03) });

  it("part any line into pieces that are wholly inside or wholly outside", () => {
    fc.assert(
      fc.property(bodies, points, points, (spec, a, b) => {
        fc.pre(Math.abs(a.x - b.x) > 1e-6); // a piece that lies in a blunt face is neither inside nor outside
        const shape = shapeOf(spec);
        const length = Math.hypot(a.x - b.x, a.z - b.z);
        const t = [0, ...outlineCrossings(shape, a, b), 1];
        for (let k = 0; k + 1 < t.length; k++) {
          if ((t[k + 1]! - t[k]!) * length < 1e-8) continue;
          const at = (share: number): boolean => {
            const u = t[k]! + share * (t[k + 1]! - t[k]!);
            return insideOutline(shape, { x: a.x + u * (b.x - a.x), z: a.z + u * (b.z - a.z) });
          };
          const middle = at(0.5);
          for (const share of [0.01, 0.15, 0.35, 0.65, 0.85, 0.99]) expect(at(share)).toBe(middle);
        }
      }),
      { ...runs, numRuns: 300 },
    );
  });
});
