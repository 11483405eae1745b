/** Gamma and beta functions that the superellipse is tested against. */
import { lgamma } from "../../../src/model/base";

/** Γ(x) for x > 0. */
export const gamma = (x: number): number => Math.exp(lgamma(x));

/**
 * Regularised incomplete beta function I_x(a, b), 0 ≤ x ≤ 1, a, b > 0, by its continued fraction (Abramowitz & Stegun 1964,
 * 26.5.8, evaluated by Lentz's method).
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x === 0 || x === 1) return x;
  const front = Math.exp(lgamma(a + b) - lgamma(a) - lgamma(b) + a * Math.log(x) + b * Math.log(1 - x));
  return x < (a + 1) / (a + b + 2)
    ? (front * betaFraction(x, a, b)) / a
    : 1 - (front * betaFraction(1 - x, b, a)) / b;
}

function betaFraction(x: number, a: number, b: number): number {
  const tiny = 1e-300;
  const away = (v: number): number => (Math.abs(v) < tiny ? tiny : v);
  let c = 1;
  let d = 1 / away(1 - ((a + b) * x) / (a + 1));
  let f = d;
  for (let m = 1; m <= 500; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / away(1 + even * d);
    c = away(1 + even / c);
    f *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / away(1 + odd * d);
    c = away(1 + odd / c);
    const step = d * c;
    f *= step;
    if (Math.abs(step - 1) < 1e-15) return f;
  }
  throw new RangeError(`incomplete beta did not converge at x = ${x}, a = ${a}, b = ${b}`);
}
