import { describe, expect, it } from "vitest";
import { pchip, random } from "../../src/model/base";
import type { Random } from "../../src/model/base";
import { edgesFromKnots, phiOfStation, shapeOf, stationOfPhi } from "../../src/model/shape";
import type { Knot } from "../../src/model/shape";
import { bodyOfForm, FORM_LIMITS, FORMS } from "../../src/model/shaping";
import { aimOf, isHollow } from "../../src/model/shaping/half";
import type { BodyForm } from "../../src/model/shaping";

const EVEN: BodyForm = {
  length: 0.1,
  height: 0.022,
  breadth: 0.014,
  backAt: 0.5,
  bellyAt: 0.5,
  broadestAt: 0.5,
  backShare: 0.5,
  foreFullness: 0.5,
  aftFullness: 0.5,
  noseBluntness: 0,
  tailBluntness: 0,
  roundAbove: 2,
  roundBelow: 2,
};

/** How far the points lie under their upper hull, at most (Andrew's monotone chain): 0 for a curve that is nowhere hollow. */
function hollow(points: readonly { s: number; v: number }[]): number {
  const hull: { s: number; v: number }[] = [];
  for (const p of points) {
    for (;;) {
      const [a, b] = [hull.at(-2), hull.at(-1)];
      if (!a || !b || (b.s - a.s) * (p.v - a.v) - (b.v - a.v) * (p.s - a.s) < 0) break;
      hull.pop();
    }
    hull.push(p);
  }
  let worst = 0;
  let k = 0;
  for (const p of points) {
    while (k + 2 < hull.length && (hull[k + 1] as Knot).s < p.s) k++;
    const [a, b] = [hull[k] as Knot, hull[k + 1] as Knot];
    if (b.s > a.s) worst = Math.max(worst, a.v + ((b.v - a.v) * (p.s - a.s)) / (b.s - a.s) - p.v);
  }
  return worst;
}

const CHORD = 1e-4;
/** Bends less than this from chord to chord are round-off, rad: on chords of 0.1 mm, a radius of 100 km. */
const STRAIGHT = 1e-9;

/**
 * Which way the curve bends, walked from its end to the greatest depth in chords of 0.1 mm or little more: −1 full, 1 hollow, each
 * stretch once. The points are those of the curve itself, so a curve that is nowhere hollow has no chord that says otherwise.
 */
function bends(points: readonly { s: number; v: number }[]): number[] {
  const walked: { s: number; v: number }[] = [];
  for (const p of points) {
    const from = walked.at(-1);
    if (!from || Math.hypot(p.s - from.s, p.v - from.v) >= CHORD) walked.push(p);
  }
  const found: number[] = [];
  walked.forEach((c, i) => {
    const [a, b] = [walked[i - 2], walked[i - 1]];
    if (!a || !b) return;
    const turn = Math.atan2(c.v - b.v, Math.abs(c.s - b.s)) - Math.atan2(b.v - a.v, Math.abs(b.s - a.s));
    if (Math.abs(turn) > STRAIGHT && found.at(-1) !== Math.sign(turn)) found.push(Math.sign(turn));
  });
  return found;
}

/** How far the drawn curve may be off the form that is aimed at, as a share of what its half falls by. */
const off = (fullness: number): number =>
  fullness >= 0.45 ? 0.005 : fullness >= 0.3 ? 0.011 : isHollow(fullness) ? 0.075 : 0.025;

function randomForm(r: Random): BodyForm {
  const between = ([low, high]: readonly [number, number]): number => low + (high - low) * r.uniform();
  const length = 0.03 + 0.17 * r.uniform();
  return {
    length,
    height: length * (0.12 + 0.33 * r.uniform()),
    breadth: length * (0.08 + 0.3 * r.uniform()),
    backAt: between(FORM_LIMITS.backAt),
    bellyAt: between(FORM_LIMITS.bellyAt),
    broadestAt: between(FORM_LIMITS.broadestAt),
    backShare: between(FORM_LIMITS.backShare),
    foreFullness: between(FORM_LIMITS.foreFullness),
    aftFullness: between(FORM_LIMITS.aftFullness),
    noseBluntness: between(FORM_LIMITS.noseBluntness),
    tailBluntness: between(FORM_LIMITS.tailBluntness),
    roundAbove: between(FORM_LIMITS.roundAbove),
    roundBelow: between(FORM_LIMITS.roundBelow),
  };
}

/** The six halves of a body's outlines, each from its end to the greatest depth, as drawn. */
function halvesOf(form: BodyForm, n: number) {
  const { length: L } = form;
  const edges = edgesFromKnots(bodyOfForm(form));
  return [
    { curve: edges.top, depth: form.height * form.backShare, peak: form.backAt },
    {
      curve: (phi: number) => -edges.bottom(phi),
      depth: form.height * (1 - form.backShare),
      peak: form.bellyAt,
    },
    { curve: edges.halfBreadth, depth: form.breadth / 2, peak: form.broadestAt },
  ].flatMap(({ curve, depth, peak }) => {
    const top = phiOfStation(peak * L, L);
    const half = (from: number): { s: number; v: number }[] =>
      Array.from({ length: n + 1 }, (_, i) => {
        const phi = from + ((top - from) * i) / n;
        return { s: stationOfPhi(phi, L), v: curve(phi) };
      });
    return [
      { points: half(0), fullness: form.foreFullness, end: form.noseBluntness, depth, peak, reach: peak },
      {
        points: half(Math.PI),
        fullness: form.aftFullness,
        end: form.tailBluntness,
        depth,
        peak,
        reach: 1 - peak,
      },
    ];
  });
}

describe("starting shapes", () => {
  it("with everything even are an ellipsoid: volume 4/3·π·a·b·c", () => {
    const exact = (4 / 3) * Math.PI * 0.05 * 0.011 * 0.007;
    expect(Math.abs(shapeOf(bodyOfForm(EVEN)).volume / exact - 1)).toBeLessThan(5e-3);
  });

  it("of 500 random settings are all bodies and keep their sizes: one rise, one fall, the greatest depth at its place", () => {
    const r = random(7);
    for (let i = 0; i < 500; i++) {
      const form = randomForm(r);
      const spec = bodyOfForm(form);
      expect(shapeOf(spec).volume).toBeGreaterThan(0);
      for (const edge of [spec.top, spec.bottom, spec.halfBreadth])
        expect(edge.length).toBeLessThanOrEqual(13);
      for (const { points, depth, end } of halvesOf(form, 400)) {
        const rises = points.slice(1).map((p, k) => p.v - (points[k]?.v ?? NaN));
        expect(Math.min(...rises)).toBeGreaterThanOrEqual(-1e-15);
        expect(points[0]?.v).toBeCloseTo(end * depth, 15);
        expect(points.at(-1)?.v).toBeCloseTo(depth, 15);
      }
    }
  });

  it("of 500 random settings have no wave: full halves nowhere hollow, hollow ones with one change of curvature", () => {
    const r = random(11);
    const seen = { full: 0, hollow: 0 };
    for (let i = 0; i < 500; i++) {
      const form = randomForm(r);
      const words = JSON.stringify(form);
      for (const { points, fullness, depth, end, reach } of halvesOf(form, 2000)) {
        if (isHollow(fullness)) {
          seen.hollow++;
          expect(bends(points), words).toEqual([1, -1]);
        } else {
          seen.full++;
          expect(bends(points), words).toEqual([-1]);
          expect(
            hollow(points.map(({ s, v }) => ({ s: Math.abs(s - (points[0]?.s ?? 0)), v }))),
            words,
          ).toBeLessThan(1e-12);
        }
        const aim = (s: number): number => {
          const u = Math.abs(s / form.length - (points.at(-1)?.s ?? 0) / form.length) / reach;
          return depth * (end + (1 - end) * aimOf(fullness, u));
        };
        const worst = points.reduce((most, p) => Math.max(most, Math.abs(p.v - aim(p.s))), 0);
        expect(worst, words).toBeLessThan(off(fullness) * depth * (1 - end));
      }
    }
    expect(Math.min(seen.full, seen.hollow)).toBeGreaterThan(400);
  });

  it("that wave are found: points of the form itself, evenly in φ, bend to and fro", () => {
    const even = Array.from({ length: 13 }, (_, i) => (Math.PI * i) / 12);
    const drawn = pchip(
      even,
      even.map((phi) => 0.011 * aimOf(0.2, Math.cos(phi))),
    );
    const points = Array.from({ length: 4001 }, (_, i) => {
      const phi = (Math.PI / 2) * (i / 4000);
      return { s: stationOfPhi(phi, 0.1), v: drawn.at(phi) };
    });
    expect(bends(points).length).toBeGreaterThan(2);
    expect(hollow(points)).toBeGreaterThan(1e-5);
  });

  it("that run out to nothing, hollow at both ends, are bodies too", () => {
    // Sections of the aim: ∫₀¹ (1 − u²)^2.5 du = 5π/32, against 2/3 of the ellipsoid.
    const aim = (5 * Math.PI) / 32 / (2 / 3);
    const share =
      shapeOf(bodyOfForm({ ...EVEN, foreFullness: 0, aftFullness: 0 })).volume /
      shapeOf(bodyOfForm(EVEN)).volume;
    expect(share).toBeGreaterThan(0.97 * aim);
    expect(share).toBeLessThan(1.05 * aim);
  });

  it("by name are bodies too", () => {
    for (const { form, height, breadth } of FORMS)
      expect(
        shapeOf(bodyOfForm({ ...form, length: 0.08, height: 0.08 * height, breadth: 0.08 * breadth })).volume,
      ).toBeGreaterThan(0);
  });

  it("refuse a share out of its bounds by name", () => {
    expect(() => bodyOfForm({ ...EVEN, backAt: 0.95 })).toThrow(
      /backAt 0.95: give a number from 0.15 to 0.85/,
    );
    expect(() => bodyOfForm({ ...EVEN, height: 0 })).toThrow(/height 0 m/);
  });
});
