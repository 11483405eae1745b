import { describe, expect, it } from "vitest";
import {
  edgesFromKnots,
  makeShape,
  phiOfStation,
  ShapeError,
  shapeOf,
  stationOfPhi,
} from "../../../src/model/shape";
import type { ShapeSpec } from "../../../src/model/shape";
import { immersion } from "../../../src/model/hydrostatics";
import { block, ellipsoid, minnow } from "../../lib/bodies";

const b = 0.01;
const L = 0.1;
const bell = (points: number): ShapeSpec => {
  // knots of b·sin φ, evenly in φ
  const knots = Array.from({ length: points }, (_, i) => {
    const phi = (Math.PI * i) / (points - 1);
    return { s: (L * (1 - Math.cos(phi))) / 2, v: i === 0 || i === points - 1 ? 0 : b * Math.sin(phi) };
  });
  const ends = { s: L, v: 0 };
  return {
    length: L,
    top: [...knots.slice(0, -1), ends],
    bottom: [...knots.slice(0, -1), ends].map((k) => ({ s: k.s, v: -k.v })),
    halfBreadth: [...knots.slice(0, -1), ends],
    exponentAbove: [{ s: 0, v: 2 }],
    exponentBelow: [{ s: 0, v: 2 }],
  };
};

describe("drawn edges", () => {
  it("are 5 % fuller than a half ellipse through (0, b, 0)", () => {
    // By hand: both secants are ±2b/π, the end slope (3 + 1)/2 of the secant, the middle one 0: b·t(2 − t), t = φ/(π/2).
    const edges = edgesFromKnots(bell(3));
    for (const t of [0.1, 0.5, 0.9]) {
      expect(edges.top((t * Math.PI) / 2)).toBeCloseTo(b * t * (2 - t), 15);
      expect(edges.top(Math.PI - (t * Math.PI) / 2)).toBeCloseTo(b * t * (2 - t), 15);
    }
    const exact = (4 / 3) * Math.PI * (L / 2) * b * b;
    // ∫₀¹ t²(2 − t)² sin(πt/2) (π/2) dt = 32(12 − π²)/π⁴ in the place of 2/3
    expect(shapeOf(bell(3)).volume / exact).toBeCloseTo((48 * (12 - Math.PI ** 2)) / Math.PI ** 4, 9);
    expect((48 * (12 - Math.PI ** 2)) / Math.PI ** 4).toBeCloseTo(1.05, 3);
  });

  it("give an ellipsoid's volume within 1e-4 from 21 points on b·sin φ", () => {
    const exact = (4 / 3) * Math.PI * (L / 2) * b * b;
    expect(Math.abs(shapeOf(bell(21)).volume / exact - 1)).toBeLessThan(1e-4);
  });

  it("pass through their knots, and stay between neighbouring ones", () => {
    const edges = edgesFromKnots(minnow);
    for (const k of minnow.top) expect(edges.top(phiOfStation(k.s, minnow.length))).toBeCloseTo(k.v, 15);
    for (const k of minnow.exponentBelow)
      expect(edges.exponentBelow(phiOfStation(k.s, minnow.length))).toBeCloseTo(k.v, 12);
    for (let phi = 0; phi <= Math.PI; phi += 0.01) {
      expect(edges.top(phi)).toBeLessThanOrEqual(0.0105 + 1e-15);
      expect(edges.halfBreadth(phi)).toBeGreaterThanOrEqual(0);
    }
  });

  it("lie widest midway unless said otherwise", () => {
    const edges = edgesFromKnots(minnow);
    expect(edges.widest(1.2)).toBeCloseTo((edges.top(1.2) + edges.bottom(1.2)) / 2, 16);
    expect(edgesFromKnots(block).widest(phiOfStation(0.04, 0.08))).toBeCloseTo(0.004, 15);
  });

  it("keep exponents constant beyond their ends", () => {
    const edges = edgesFromKnots(block);
    expect(edges.exponentBelow(0)).toBe(4);
    expect(edges.exponentBelow(Math.PI)).toBe(10);
    expect(edges.exponentAbove(2)).toBe(1.4);
  });

  it("break at every knot once", () => {
    expect(edgesFromKnots(minnow).breaks).toHaveLength(6); // 0, 30, 34, 36, 46, 92 mm
  });

  it("turn stations into φ and back to the last digits at both ends", () => {
    for (const s of [0, 1e-12, 1e-6, 0.05, 0.1 - 1e-9, 0.1])
      expect(stationOfPhi(phiOfStation(s, 0.1), 0.1)).toBeCloseTo(s, 15);
    expect(phiOfStation(1e-14, 0.1)).toBeCloseTo(2 * Math.sqrt(1e-13), 18);
  });
});

describe("refusals", () => {
  const refuse = (change: Partial<ShapeSpec>, place: string, remedy: RegExp): void => {
    let caught: unknown;
    try {
      shapeOf({ ...minnow, ...change });
    } catch (error) {
      caught = error;
    }
    expect(caught).toBeInstanceOf(ShapeError);
    if (!(caught instanceof ShapeError)) return;
    expect(caught.place).toBe(place);
    expect(caught.message.startsWith(`${place}: `)).toBe(true);
    expect(caught.remedy).toMatch(remedy);
  };
  const top = minnow.top;

  it("names the place and the remedy", () => {
    refuse({ length: 0 }, "length", /above 0/);
    refuse({ top: top.slice(0, 1) }, "top", /two points/);
    refuse({ top: [{ s: 0.001, v: 0 }, ...top.slice(1)] }, "top[0]", /station 0/);
    refuse({ top: [...top.slice(0, 2), { s: 0.091, v: 0 }] }, "top[2]", /the length, 92 mm/);
    refuse(
      { top: [top[0]!, { s: 0.03, v: 0.01 }, { s: 0.03, v: 0.011 }, top[2]!] },
      "top[2]",
      /rise strictly/,
    );
    refuse(
      {
        bottom: [
          { s: 0, v: 0 },
          { s: 0.05, v: NaN },
          { s: 0.092, v: 0 },
        ],
      },
      "bottom[1]",
      /finite/,
    );
    refuse(
      {
        halfBreadth: [
          { s: 0, v: 0 },
          { s: 0.05, v: -0.001 },
          { s: 0.092, v: 0 },
        ],
      },
      "halfBreadth[1]",
      /0 or more/,
    );
    refuse({ exponentAbove: [{ s: 0, v: 0.5 }] }, "exponentAbove[0]", /between 1 and 10/);
    refuse({ exponentBelow: [{ s: 0.1, v: 2 }] }, "exponentBelow[0]", /between 0 and the length/);
    refuse({ exponentBelow: [] }, "exponentBelow", /a point/);
    refuse(
      {
        halfBreadth: [
          { s: 0, v: 0 },
          { s: 0.092, v: 0 },
        ],
      },
      "halfBreadth",
      /breadth and height/,
    );
  });

  it("sees edges that cross between their knots, exactly", () => {
    // The edges meet at no knot: the top dips under the bottom between 20 and 40 mm.
    refuse(
      {
        top: [
          { s: 0, v: 0.002 },
          { s: 0.03, v: -0.006 },
          { s: 0.092, v: 0.002 },
        ],
        bottom: [
          { s: 0, v: -0.002 },
          { s: 0.01, v: -0.003 },
          { s: 0.092, v: -0.004 },
        ],
      },
      "top[1]",
      /keep top at or above bottom/,
    );
    refuse(
      {
        widest: [
          { s: 0, v: 0 },
          { s: 0.03, v: 0.012 },
          { s: 0.092, v: 0 },
        ],
      },
      "top[1]",
      /keep top at or above widest/,
    );
    refuse(
      {
        widest: [
          { s: 0, v: 0 },
          { s: 0.03, v: 0 },
          { s: 0.092, v: -0.004 },
        ],
      },
      "widest[2]",
      /keep widest at or above bottom/,
    );
  });

  it("checks exact edges too", () => {
    const good = ellipsoid(0.05, 0.01, 0.012);
    expect(() => makeShape({ ...good, breaks: [0, 2, 1, Math.PI] })).toThrow(/breaks rise/);
    expect(() => makeShape({ ...good, breaks: [0, 3] })).toThrow(/breaks rise/);
    expect(() => makeShape({ ...good, top: (phi) => Math.log(phi) })).toThrow(/finite everywhere/);
    expect(() => makeShape({ ...good, length: -1 })).toThrow(/above 0/);
  });

  it("lets edges touch: a fin without thickness is no fault", () => {
    const fin = shapeOf({
      ...minnow,
      halfBreadth: [
        { s: 0, v: 0 },
        { s: 0.036, v: 0.0075 },
        { s: 0.08, v: 0 },
        { s: 0.092, v: 0 },
      ],
    });
    expect(fin.volume).toBeGreaterThan(0);
    expect(Number.isFinite(fin.skinArea)).toBe(true);
    expect(Number.isFinite(immersion(fin, { sin: 0, cos: 1, level: 0 }).skinCentroid.x)).toBe(true);
    expect(shapeOf({ ...minnow, top: minnow.top.map((k) => ({ ...k, v: 0 })) }).volume).toBeGreaterThan(0);
  });
});
