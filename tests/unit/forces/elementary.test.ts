import { describe, expect, test } from "vitest";
import { angleOf, exp, ln, power } from "../../../src/model/forces/elementary";

// The engine's own functions are within one unit in the last place of the true values; ours within two of theirs.
const NEAR = 5e-16;

describe("elementary functions from + − × ÷", () => {
  test("exp and ln over the range of the models", () => {
    for (let i = 0; i <= 20000; i++) {
      const x = -60 + (120 * i) / 20000;
      expect(Math.abs(exp(x) / Math.exp(x) - 1)).toBeLessThan(NEAR);
      const y = Math.exp(3 * x);
      expect(Math.abs(ln(y) - Math.log(y))).toBeLessThan(NEAR * Math.max(1, Math.abs(Math.log(y))));
    }
  });

  test("ln keeps its digits next to 1", () => {
    for (const d of [1e-3, 1e-6, 1e-9, -1e-6])
      expect(Math.abs(ln(1 + d) / Math.log(1 + d) - 1)).toBeLessThan(NEAR);
  });

  test("ends", () => {
    expect(exp(0)).toBe(1);
    expect(exp(-1000)).toBe(0);
    expect(exp(-Infinity)).toBe(0);
    expect(exp(1000)).toBe(Infinity);
    expect(exp(NaN)).toBeNaN();
    expect(ln(0)).toBe(-Infinity);
    expect(ln(-1)).toBeNaN();
    expect(ln(Infinity)).toBe(Infinity);
    expect(Math.abs(ln(5e-320) - Math.log(5e-320))).toBeLessThan(1e-12);
    expect(power(0, 0.7)).toBe(0);
    expect(Math.abs(power(2, 10) - 1024)).toBeLessThan(1e-12);
  });

  test("angles of the first quadrant", () => {
    expect(angleOf(0, 0)).toBe(0);
    expect(angleOf(0, 1)).toBe(0);
    expect(angleOf(1, 0)).toBe(Math.PI / 2);
    for (let i = 1; i < 5000; i++) {
      const a = ((Math.PI / 2) * i) / 5000;
      const [s, c] = [3e-5 * Math.sin(a), 3e-5 * Math.cos(a)];
      expect(Math.abs(angleOf(s, c) - Math.atan2(s, c))).toBeLessThan(NEAR);
    }
  });
});
