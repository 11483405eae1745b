import { describe, expect, it } from "vitest";
import { pchip, pchipSlopes, piecewiseLinear } from "../../../src/model/base";

describe("monotone cubic", () => {
  // Reference values: PchipInterpolator of SciPy 1.17.1 (Fritsch & Butland slopes, the same end rule), to its printed digits.
  const cases = [
    {
      x: [0, 1, 3, 4, 7],
      y: [0, 2, 2.5, 1, 1],
      at: [0.25, 0.9, 1.5, 2.75, 3.3, 3.9, 5, 6.9],
      values: [
        0.6529771959459459, 1.9278445945945943, 2.2149493243243246, 2.491817989864865, 2.1760000000000006,
        1.0420000000000003, 1, 1,
      ],
      slopes: [2.5833333333333335, 0.4864864864864865, 0, 0, 0],
    },
    {
      x: [0, 0.4, 1.1, 2, Math.PI],
      y: [0, 3, 5, 1, 0],
      at: [0.1, 0.3, 0.7, 1, 1.6, 2.5, 3],
      values: [
        0.904710179526356, 2.4608837853323147, 4.209741039272852, 4.942033956439718, 2.8536266630809823,
        0.35513448586119767, 0.01920914425904416,
      ],
      slopes: [9.188311688311687, 4.313725490196078, 0, -1.5032648598448468, 0],
    },
    {
      // the end slope that is cut to three times the secant
      x: [0, 1, 2],
      y: [0, 1, -5],
      at: [0.2, 0.8, 1.2, 1.9],
      values: [0.4880000000000001, 0.9920000000000001, 0.6800000000000002, -4.0625],
      slopes: [3, 0, -9.5],
    },
    {
      // the end slope that is set to zero
      x: [0, 1, 1.5],
      y: [1, 1.1, 4],
      at: [0.5, 0.9, 1.2],
      values: [1.0224683544303799, 1.0793594936708861, 1.767058227848101],
      slopes: [0, 0.2202531645569622, 7.7],
    },
  ];

  it.each(cases)("agrees with the reference through $y", ({ x, y, at, values, slopes }) => {
    const curve = pchip(x, y);
    at.forEach((q, i) => expect(curve.at(q)).toBeCloseTo(values[i]!, 13));
    slopes.forEach((m, i) => expect(curve.slopes[i]).toBeCloseTo(m, 13));
    // the curve's own slope agrees with the slopes at its knots, from the side that is inside
    x.slice(0, -1).forEach((q, i) => expect(curve.slopeAt(q)).toBeCloseTo(slopes[i]!, 12));
  });

  it("takes the weighted harmonic mean by hand", () => {
    // h = 1, 2; d = 2, 1: w₁ = 2·2 + 1 = 5, w₂ = 2 + 2·1 = 4 → 9/(5/2 + 4/1) = 18/13
    expect(pchipSlopes([0, 1, 3], [0, 2, 4])[1]).toBeCloseTo(18 / 13, 15);
    // end: ((2·1 + 2)·2 − 1·1)/3 = 7/3
    expect(pchipSlopes([0, 1, 3], [0, 2, 4])[0]).toBeCloseTo(7 / 3, 15);
  });

  it("is the straight line through two points, and holds its ends", () => {
    const line = pchip([1, 3], [2, -2]);
    expect(line.at(1.5)).toBeCloseTo(1, 15);
    expect(line.at(0)).toBe(2);
    expect(line.at(9)).toBe(-2);
    expect(line.slopeAt(9)).toBe(0);
  });

  it("refuses points that do not rise", () => {
    expect(() => pchip([0, 1, 1], [0, 1, 2])).toThrow(/point 2 at 1 is not beyond 1/);
    expect(() => pchip([0], [0])).toThrow(/2 or more points/);
  });
});

describe("straight pieces", () => {
  it("runs between its points and is constant beyond them", () => {
    const f = piecewiseLinear([1, 2, 4], [2, 3, 1]);
    expect([0, 1, 1.5, 2, 3, 4, 9].map(f)).toEqual([2, 2, 2.5, 3, 2, 1, 1]);
    expect(piecewiseLinear([2], [5])(-1)).toBe(5);
  });
});
