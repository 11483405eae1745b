import { exp, log, log1p } from "./exponential";

/*
 * Hyperbolic functions from exp and log: the same bits on every engine (see exponential.ts). Abramowitz & Stegun 1964, 4.5.2
 * and 4.6.20–21, written so that small arguments keep their digits.
 */

/** cosh x = (eˣ + e⁻ˣ)/2. */
export function cosh(x: number): number {
  const e = exp(Math.abs(x));
  if (e < Infinity) return e / 2 + 0.5 / e;
  const root = exp(Math.abs(x) / 2); // eˣ is beyond the range, half of it may not be
  return (root / 2) * root;
}

/** Beyond this size, on either side, the 1 under the root is below the last bit, and the square could overflow. */
const GREAT = 1e150;

/** asinh x = ln(x + √(x² + 1)), with |x| + √(x² + 1) − 1 = |x| + x²/(1 + √(x² + 1)). */
export function asinh(x: number): number {
  if (x === 0 || !Number.isFinite(x)) return x;
  const size = Math.abs(x);
  const square = size * size;
  const value = size > GREAT ? log(size) + Math.LN2 : log1p(size + square / (1 + Math.sqrt(square + 1)));
  return x < 0 ? -value : value;
}

/** acosh x = ln(x + √(x² − 1)), with t = x − 1; NaN below 1. */
export function acosh(x: number): number {
  if (!(x >= 1)) return NaN;
  if (x > GREAT) return log(x) + Math.LN2;
  const t = x - 1;
  return log1p(t + Math.sqrt(t * (t + 2)));
}
