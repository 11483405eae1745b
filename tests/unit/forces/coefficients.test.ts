import { describe, expect, test } from "vitest";
import {
  ellipsoidCoefficients,
  endEffect,
  flatPlate,
  hookDragArea,
  joined,
  plateAt,
  plateAddedVolume,
  sectionFactor,
} from "../../../src/model/forces";
import {
  cylinderDrag,
  cylinderDragFast,
  cylinderTable,
  skinFriction,
} from "../../../src/model/forces/coefficients";
import { integrate } from "../base/integrate";

describe("ellipsoid coefficients", () => {
  /** κ by brute force. */
  function kappa(i: number, r: readonly [number, number, number]): number {
    const product = r[0] * r[1] * r[2];
    const f = (lambda: number): number => {
      const q = r.map((x) => x * x + lambda);
      return product / ((q[i] ?? NaN) * Math.sqrt((q[0] ?? NaN) * (q[1] ?? NaN) * (q[2] ?? NaN)));
    };
    // λ = size²(1/u² − 1) has no root at either end
    const size = Math.max(...r) ** 2;
    const g = (u: number): number => (f(size * (1 / (u * u) - 1)) * 2 * size) / u ** 3;
    let sum = 0;
    for (let p = 0; p < 40; p++) sum += integrate(g, p / 40, (p + 1) / 40, 24);
    return sum;
  }

  test.each([
    [1, 1, 1],
    [4, 1, 1],
    [5, 0.4, 1],
    [0.046, 0.0075, 0.01],
    [1, 3, 0.5],
    [1, 1.0000001, 0.9999999],
  ] as const)("κ by quadrature, and their sum: %d : %d : %d", (x, y, z) => {
    const k = ellipsoidCoefficients(x, y, z);
    // the quadrature itself is good to about 1e-10
    expect(Math.abs(k.kappaX - kappa(0, [x, y, z]))).toBeLessThan(1e-8);
    expect(Math.abs(k.kappaY - kappa(1, [x, y, z]))).toBeLessThan(1e-8);
    expect(Math.abs(k.kappaZ - kappa(2, [x, y, z]))).toBeLessThan(1e-8);
    expect(Math.abs(k.kappaX + k.kappaY + k.kappaZ - 2)).toBeLessThan(1e-14);
  });

  test("pitch: Lamb's form where it can be evaluated, positive to both sides, smooth through equal axes", () => {
    for (const [x, y, z] of [
      [4, 1, 1],
      [1, 0.7, 4],
      [2, 1, 1.5],
    ] as const) {
      const k = ellipsoidCoefficients(x, y, z);
      const [a, c] = [x * x, z * z];
      const lamb =
        ((a - c) ** 2 * (k.kappaZ - k.kappaX)) / (5 * (2 * (a - c) + (a + c) * (k.kappaX - k.kappaZ)));
      expect(Math.abs(k.pitchPerVolume / lamb - 1)).toBeLessThan(1e-12);
      expect(k.pitchPerVolume).toBeGreaterThan(0);
    }
    // P ∝ (r_x − r_z)² near equal axes: the ratio must run on through the switch at 1e-4 and through 0
    const ratio = (d: number): number => ellipsoidCoefficients(1 + d, 0.5, 1).pitchPerVolume / (d * d);
    for (const d of [-1e-3, -6e-5, -4e-5, -1e-7, 1e-7, 4e-5, 6e-5, 1e-3])
      expect(Math.abs(ratio(d) / ratio(1e-5) - 1)).toBeLessThan(0.004);
    expect(ellipsoidCoefficients(1, 0.5, 1).pitchPerVolume).toBe(0);
  });

  test("only ratios count", () => {
    const a = ellipsoidCoefficients(4, 1, 0.5);
    const b = ellipsoidCoefficients(0.04, 0.01, 0.005);
    expect(Math.abs(a.kZ / b.kZ - 1)).toBeLessThan(1e-14);
    expect(Math.abs(a.pitchPerVolume / b.pitchPerVolume / 1e4 - 1)).toBeLessThan(1e-13);
  });

  test("a length that is none is refused by name", () => {
    expect(() => ellipsoidCoefficients(1, 0, 1)).toThrow(/r_y = 0/);
    expect(() => ellipsoidCoefficients(NaN, 1, 1)).toThrow(/r_x = NaN/);
  });
});

describe("drag coefficients", () => {
  test("the cylinder's table is its formula within 1e-7, Re 1e-12 to 1e8", () => {
    const table = cylinderTable();
    for (let i = 0; i <= 20000; i++) {
      const re = 10 ** (-12 + (20 * i) / 20000);
      expect(Math.abs(cylinderDragFast(table, re) / cylinderDrag(re) - 1)).toBeLessThan(1e-7);
    }
  });

  test("drag vanishes with the speed: C·v² → 0 as v^1.25, C_f·v² as v^1.5", () => {
    for (const [f, power] of [
      [cylinderDrag, 1.25],
      [skinFriction, 1.5],
    ] as const) {
      const a = f(1e-6) * 1e-12;
      const b = f(1e-8) * 1e-16;
      expect(Math.abs(Math.log(a / b) / Math.log(100) - power)).toBeLessThan(1e-3);
    }
  });

  test("skin friction has no jump where the second line begins, and falls", () => {
    let before = Infinity;
    for (let re = 1e3; re < 1e6; re *= 1.001) {
      const c = skinFriction(re);
      expect(c).toBeLessThan(before);
      if (before < Infinity) expect(c / before).toBeGreaterThan(0.999);
      before = c;
    }
  });

  test("section factor: 1 for a circle, capped at the plate's 1.65, 0 for no breadth", () => {
    expect(sectionFactor(1)).toBe(1);
    expect(sectionFactor(0)).toBe(0);
    expect(sectionFactor(100)).toBe(1.65);
    expect(sectionFactor(Infinity)).toBe(1.65);
    expect(() => sectionFactor(NaN)).toThrow(/must not be negative/);
  });

  test("end effect rises to 1 with the fineness", () => {
    expect(endEffect(6)).toBeGreaterThan(endEffect(3));
    expect(Math.abs(endEffect(1e9) - 1)).toBeLessThan(1e-6);
  });

  test("hooks: 0.5 cm² at 0.37 g, four times that at eight times the mass", () => {
    expect(Math.abs(hookDragArea(0.37e-3) / 5e-5 - 1)).toBeLessThan(1e-14);
    expect(Math.abs(hookDragArea(8 * 0.37e-3) / 2e-4 - 1)).toBeLessThan(1e-14);
  });
});

describe("plate", () => {
  const at = (aspect: number, degrees: number) => {
    const out = { cn: NaN, xcp: NaN };
    const a = (degrees * Math.PI) / 180;
    plateAt(flatPlate(aspect), Math.sin(a), Math.cos(a), out);
    return out;
  };

  test("the same from behind: C_N(180° − α), 1 − x_cp", () => {
    for (const a of [5, 20, 40, 70, 89]) {
      expect(Math.abs(at(0.9, a).cn - at(0.9, 180 - a).cn)).toBeLessThan(1e-12);
      expect(Math.abs(at(0.9, a).xcp + at(0.9, 180 - a).xcp - 1)).toBeLessThan(1e-12);
    }
  });

  test("at 0° no force and the limit of its centre, 0.25 [1 − 1/(1 + 1.136 AR + 0.759 AR²)]", () => {
    expect(at(1, 0).cn).toBe(0);
    const limit = 0.25 * (1 - 1 / (1 + 1.136 + 0.759));
    // σ(0°) = e^(−α_s/2.73) leaves a trace of the stalled part: below 1e-3 of a chord
    expect(Math.abs(at(1, 0).xcp - limit)).toBeLessThan(1e-3);
  });

  test("square across the stream; half-way centre", () => {
    expect(Math.abs(at(1, 90).cn - 1.17)).toBeLessThan(0.01); // handbook: 1.17
    expect(Math.abs(at(1, 90).xcp - 0.5)).toBeLessThan(1e-12);
  });

  test("joined to a body: no overshoot, 2^−⅛ at 90°, untouched while small", () => {
    const plate = flatPlate(0.8);
    expect(Math.abs(joined(plate.broadside, plate.broadside) / plate.broadside - 2 ** -0.125)).toBeLessThan(
      1e-12,
    );
    expect(Math.abs(joined(0.3, plate.broadside) / 0.3 - 1)).toBeLessThan(1e-5);
    for (let a = 0; a <= 90; a++)
      expect(joined(at(0.8, a).cn, plate.broadside)).toBeLessThanOrEqual(plate.broadside);
  });

  test("added mass of a long strip tends to the circle on its breadth", () => {
    expect(Math.abs(plateAddedVolume(0.01, 100) / ((Math.PI / 4) * 1e-4 * 100) - 1)).toBeLessThan(1e-3);
    expect(plateAddedVolume(0.01, 0.02)).toBe(plateAddedVolume(0.02, 0.01));
  });

  test("impossible plates are refused", () => {
    expect(() => flatPlate(0)).toThrow(/aspect ratio 0/);
    expect(() => plateAddedVolume(0, 1)).toThrow(/two sides above 0/);
  });
});
