import { describe, expect, test } from "vitest";
import {
  pieceDepth,
  pieceShift,
  pieceVolume,
  sphereDepth,
  sphereRadius,
  sphereVolume,
} from "../../../src/model/hydrostatics/going-under";
import { integrate } from "../base/integrate";

describe("a straight piece", () => {
  test("goes under by its length", () => {
    // 4 m upright with 1 m under: a quarter, its middle 0.5 m deep
    expect(pieceVolume(1, -1, 2)).toBe(0.25);
    expect(pieceDepth(0.25, -1, 2) / 0.25).toBe(0.5);
    expect(pieceVolume(7, 2, 2)).toBe(7);
    expect(pieceDepth(7, 3, 2) / 7).toBe(3);
    expect(pieceVolume(7, -2, 2)).toBe(0);
    // level: all at once
    expect(pieceVolume(7, 1e-9, 0)).toBe(7);
    expect(pieceVolume(7, -1e-9, 0)).toBe(0);
  });

  test("its shift is the slope of U by its half height", () => {
    const U = (half: number): number => pieceDepth(pieceVolume(3, 0.4, half), 0.4, half);
    const h = 1e-6;
    expect((U(1 + h) - U(1 - h)) / (2 * h)).toBeCloseTo(pieceShift(3, 0.4, 1), 9);
  });
});

describe("a sphere", () => {
  test("half a sphere's centroid lies 3R/8 deep", () => {
    expect(sphereVolume(1, 0, 2)).toBe(0.5);
    expect(sphereDepth(1, 0, 2) / 0.5).toBeCloseTo(0.75, 15);
    expect(sphereVolume(1, -2, 2)).toBe(0);
    expect(sphereVolume(1, 2, 2)).toBe(1);
    expect(sphereDepth(1, 5, 2)).toBe(5);
  });

  test("the cap of height 5 of a sphere of radius 10: closed form", () => {
    // standard geometry: π h²(3R − h)/3 = 654.498469, its centroid 3(2R − h)²/(4(3R − h)) = 6.75 from the centre
    const whole = (4 * Math.PI * 1000) / 3;
    const cap = sphereVolume(whole, -5, 10);
    expect(cap).toBeCloseTo(654.498469, 6);
    expect(sphereDepth(whole, -5, 10) / cap).toBeCloseTo(6.75 - 5, 12);
    expect(sphereRadius(whole)).toBeCloseTo(10, 12);
  });
});

test("U is the integral of V", () => {
  for (const depth of [-0.7, 0.1, 0.9, 1.6]) {
    const run = (V: (d: number) => number): number => {
      const cuts = [-1, Math.min(depth, 1), depth];
      return cuts.slice(1).reduce((sum, to, i) => sum + integrate(V, cuts[i] ?? 0, to, 8), 0);
    };
    expect(pieceDepth(pieceVolume(2, depth, 1), depth, 1)).toBeCloseTo(
      run((d) => pieceVolume(2, d, 1)),
      12,
    );
    expect(sphereDepth(2, depth, 1)).toBeCloseTo(
      run((d) => sphereVolume(2, d, 1)),
      12,
    );
  }
});
