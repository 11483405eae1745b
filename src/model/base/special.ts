import { exp, log } from "./elementary";
import { sin } from "./trig";

// Lanczos' approximation with g = 7 and 9 terms: relative error below 1e-14 for x > 0.
// Source: Lanczos 1964, SIAM J. Numer. Anal. B 1:86–96; these coefficients are in common use (from memory),
// and tested against factorials, Γ(½) and the reflection formula.
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];

/** ln Γ(x) for x > 0. */
export function lgamma(x: number): number {
  if (!(x > 0)) throw new RangeError(`lgamma(${x}): x must be above 0`);
  if (x < 0.5) return log(Math.PI / sin(Math.PI * x)) - lgamma(1 - x);
  const y = x - 1;
  let sum = LANCZOS[0] as number;
  for (let i = 1; i < 9; i++) sum += (LANCZOS[i] as number) / (y + i);
  const t = y + 7.5;
  return 0.5 * log(2 * Math.PI) + (y + 0.5) * log(t) - t + log(sum);
}

/** Γ(x) for x > 0 (Infinity above 171.6). */
export const gamma = (x: number): number => exp(lgamma(x));

/**
 * Regularised incomplete beta function I_x(a, b), 0 ≤ x ≤ 1, a, b > 0, by its continued fraction (Abramowitz & Stegun 1964,
 * 26.5.8, evaluated by Lentz's method). Where x^a underflows the value is 0: callers for whom x = uⁿ is tiny while
 * x^a = u is not (blocky sections) use the power series of `superellipse.ts`, which needs no xᵃ.
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (!(x >= 0 && x <= 1 && a > 0 && b > 0))
    throw new RangeError(`incompleteBeta(${x}, ${a}, ${b}): needs 0 ≤ x ≤ 1, a > 0, b > 0`);
  if (x === 0 || x === 1) return x;
  const front = exp(lgamma(a + b) - lgamma(a) - lgamma(b) + a * log(x) + b * log(1 - x));
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
