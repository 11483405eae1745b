import { describe, expect, it } from "vitest";
import { random } from "../../../src/model/base";
import type { Random } from "../../../src/model/base";
import { edgesFromKnots, shapeOf, stationOfPhi } from "../../../src/model/shape";
import type { Knot } from "../../../src/model/shape";
import { fitSection } from "../../../src/model/shaping";
import { fairEdge } from "../../../src/model/shaping/fair";

/** Points along a curve of φ, close together. */
function sampled(curve: (phi: number) => number, length: number, n = 400): { s: number; v: number }[] {
  return Array.from({ length: n + 1 }, (_, i) => {
    const phi = (Math.PI * i) / n;
    return { s: stationOfPhi(phi, length), v: curve(phi) };
  });
}

describe("a section fitted to caliper readings", () => {
  const top = 0.012;
  const bottom = -0.014;
  const truth = (z: number, hw: number, widest: number, above: number, below: number): number => {
    const up = z >= widest;
    const u = Math.abs(z - widest) / (up ? top - widest : widest - bottom);
    const n = up ? above : below;
    return 2 * hw * (1 - u ** n) ** (1 / n);
  };
  const heights = Array.from({ length: 17 }, (_, i) => bottom + ((i + 0.7) * (top - bottom)) / 17.6);

  it("without noise gives the section back", () => {
    for (const [above, below] of [
      [2, 2],
      [1.4, 3.2],
      [4.5, 1.8],
    ] as const) {
      const fit = fitSection(
        heights.map((height) => ({ height, thickness: truth(height, 0.008, -0.002, above, below) })),
        top,
        bottom,
      );
      expect(fit.exponentAbove).toBeCloseTo(above, 3);
      expect(fit.exponentBelow).toBeCloseTo(below, 3);
      expect(fit.halfBreadth).toBeCloseTo(0.008, 6);
      expect(fit.widest).toBeCloseTo(-0.002, 5);
      expect(fit.rms).toBeLessThan(1e-7);
    }
  });

  const spread = (n: number): readonly number[] =>
    Array.from({ length: n }, (_, i) => bottom + ((i + 0.7) * (top - bottom)) / (n + 0.6));
  /** How far the exponents are off, and the residuals, of 40 tries; `error` in m, `widest` as `fitSection` is told it. */
  function tries(at: readonly number[], widest: number | null, seed: number, error: (r: Random) => number) {
    const r = random(seed);
    const off: number[] = [];
    const rms: number[] = [];
    for (let i = 0; i < 40; i++) {
      const readings = at.map((height) => ({
        height,
        thickness: truth(height, 0.008, -0.001, 2.4, 2) + error(r),
      }));
      const fit = fitSection(readings, top, bottom, widest);
      off.push(Math.max(Math.abs(fit.exponentAbove - 2.4), Math.abs(fit.exponentBelow - 2)));
      rms.push(fit.rms);
    }
    return { off: off.sort((a, b) => a - b), rms };
  }
  /** A caliper that is read to 0.1 mm: the error lies evenly within half a step. */
  const toTenths = (r: Random): number => 1e-4 * (r.uniform() - 0.5);

  it("read to 0.1 mm gives the exponents within 0.05 in all of 40 tries, and the residual is the noise", () => {
    const { off, rms } = tries(heights, -0.001, 3, toTenths);
    expect(off.at(-1)).toBeLessThan(0.05);
    // Even within ±0.05 mm: 0.1 mm/√12, less what the three unknowns take up.
    expect(Math.max(...rms)).toBeLessThan(1e-4 / Math.sqrt(12) + 1e-5);
  });

  it("as the page asks for it, at nine heights and with the widest line unknown too, gives them within 0.05", () => {
    for (const seed of [3, 4, 5])
      expect(tries(spread(9), null, seed, toTenths).off.at(-1)).toBeLessThan(0.05);
  });

  it("with errors of up to 0.1 mm to either side gives them within 0.05 as well", () => {
    const error = (r: Random): number => 2e-4 * (r.uniform() - 0.5);
    for (const seed of [3, 4, 5]) expect(tries(heights, -0.001, seed, error).off.at(-1)).toBeLessThan(0.05);
  });

  it("with errors of 0.1 mm root mean square, some of them thrice as large, gives them within 0.05 in nine of ten tries", () => {
    const error = (r: Random): number => 1e-4 * r.normal();
    for (const seed of [3, 4, 5]) expect(tries(heights, -0.001, seed, error).off[35]).toBeLessThan(0.05);
  });

  it("refuses what cannot fix a section, with the remedy", () => {
    expect(() => fitSection([{ height: 0, thickness: 0.01 }], top, bottom)).toThrow(/give 5 or more/);
    expect(() =>
      fitSection(
        [0.02, 0, 0.001, 0.002, 0.003].map((height) => ({ height, thickness: 0.01 })),
        top,
        bottom,
      ),
    ).toThrow(/leave this reading out/);
  });
});

describe("an edge fitted to a traced outline", () => {
  const L = 0.1;
  const ellipse = (phi: number): number => 0.011 * Math.sin(phi);

  /** The greatest height of a drawn edge over or under the true one, at one station each, m. */
  function farthest(knots: readonly Knot[], truth: (phi: number) => number): number {
    const level = (v: number): readonly Knot[] => [
      { s: 0, v },
      { s: L, v },
    ];
    const { top } = edgesFromKnots({
      length: L,
      top: knots,
      bottom: level(-0.02),
      halfBreadth: level(0),
      exponentAbove: [{ s: 0, v: 2 }],
      exponentBelow: [{ s: 0, v: 2 }],
    });
    const looks = Array.from({ length: 2001 }, (_, i) => (Math.PI * i) / 2000);
    return Math.max(...looks.map((phi) => Math.abs(top(phi) - truth(phi))));
  }
  /** Points that a hand sets on the ellipse itself, evenly in φ. */
  const byHand = (n: number): Knot[] =>
    sampled(ellipse, L, n - 1).map(({ s, v }, i) => ({ s, v: i === 0 || i === n - 1 ? 0 : v }));

  // Measured here, all along the curve and straight up and down, not by what the fit says of itself.
  it("draws an ellipse within 0.2 mm by 7 points, set by hand or fitted", () => {
    expect(farthest(byHand(7), ellipse)).toBeLessThan(0.2e-3);
    const fit = fairEdge(sampled(ellipse, L), L, 1e-7, { most: 7, nose: 0, tail: 0 });
    expect(fit.knots.length).toBeLessThanOrEqual(7);
    expect(farthest(fit.knots, ellipse)).toBeLessThan(0.2e-3);
    expect(fit.worst).toBeLessThanOrEqual(farthest(fit.knots, ellipse));
  });

  it("holds an ellipsoid's volume to 1e-3 by 21 points", () => {
    const knots = byHand(21);
    const { volume } = shapeOf({
      length: L,
      top: knots,
      bottom: knots.map(({ s, v }) => ({ s, v: 0 - v })),
      halfBreadth: knots,
      exponentAbove: [{ s: 0, v: 2 }],
      exponentBelow: [{ s: 0, v: 2 }],
    });
    expect(Math.abs(volume / ((4 / 3) * Math.PI * (L / 2) * 0.011 ** 2) - 1)).toBeLessThan(1e-3);
  });

  it("draws a wavy outline within 0.3 mm, by no more points than its turns need", () => {
    const wavy = (phi: number): number => 0.011 * Math.sin(phi) * (1 + 0.12 * Math.sin(3 * phi));
    const fit = fairEdge(sampled(wavy, L), L, 0.3e-3);
    expect(fit.worst).toBeLessThanOrEqual(0.3e-3);
    expect(fit.knots.length).toBeLessThanOrEqual(9);
    expect(fit.knots[0]?.s).toBe(0);
    expect(fit.knots.at(-1)?.s).toBe(L);
  });

  it("is not led astray by the roughness of pixels", () => {
    const r = random(11);
    const rough = sampled(ellipse, L, 300).map(({ s, v }) => ({ s, v: v + 0.1e-3 * r.normal() }));
    const fit = fairEdge(rough, L, 0.4e-3, { nose: 0, tail: 0 });
    const curve = edgesFromKnots({
      length: L,
      top: fit.knots,
      bottom: [
        { s: 0, v: -0.02 },
        { s: L, v: -0.02 },
      ],
      halfBreadth: [
        { s: 0, v: 0 },
        { s: L, v: 0 },
      ],
      exponentAbove: [{ s: 0, v: 2 }],
      exponentBelow: [{ s: 0, v: 2 }],
    }).top;
    // In the plane of the drawing: across the length a round end would miss by much.
    const truth = sampled(ellipse, L, 2000);
    const worst = Math.max(
      ...sampled(curve, L).map((p) => Math.min(...truth.map((q) => Math.hypot(p.s - q.s, p.v - q.v)))),
    );
    expect(worst).toBeLessThan(0.3e-3);
    expect(fit.knots.length).toBeLessThanOrEqual(9);
  });

  it("refuses an outline that does not reach the ends", () => {
    const part = sampled(ellipse, L).filter((p) => p.s < 0.07);
    expect(() => fairEdge(part, L, 1e-4)).toThrow(/trace the outline to both ends/);
  });
});
