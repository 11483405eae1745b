/**
 * exp, ln, power and arc tangent from + − × ÷ and exact scaling only, so that every engine gives the same bits and a
 * recording can be repeated anywhere (`base` has sin and cos in the same manner). Each within 4e-16 relative of the
 * true value over the range the force models use; plain series, whose first left-out terms are below 1e-17.
 */

const LN2_HIGH = 0.6931471805599453;
const LN2_LOW = 2.3190468138462996e-17; // ln 2 − LN2_HIGH
const INVERSE_LN2 = 1.4426950408889634;
const LN2_SHORT = 0.6931471803691238; // first 33 bits of ln 2: k·LN2_SHORT is exact for |k| < 2²⁰
const LN2_REST = 1.9082149292705877e-10; // ln 2 − LN2_SHORT

/** 2^k for k from −1022 to 1023, exact. */
const POWERS = new Float64Array(2046);
POWERS[1022] = 1;
for (let k = 1; k <= 1023; k++) POWERS[1022 + k] = 2 * (POWERS[1021 + k] as number);
for (let k = 1; k <= 1022; k++) POWERS[1022 - k] = (POWERS[1023 - k] as number) / 2;

/** eˣ; 0 below −708, Infinity above 709. */
export function exp(x: number): number {
  if (x < -708) return 0;
  if (x > 709) return Infinity;
  if (x !== x) return NaN;
  const k = Math.round(x * INVERSE_LN2);
  const r = x - k * LN2_SHORT - k * LN2_REST; // |r| ≤ 0.347
  let p = 1 / 6227020800; // 1/13!
  p = 1 / 479001600 + r * p;
  p = 1 / 39916800 + r * p;
  p = 1 / 3628800 + r * p;
  p = 1 / 362880 + r * p;
  p = 1 / 40320 + r * p;
  p = 1 / 5040 + r * p;
  p = 1 / 720 + r * p;
  p = 1 / 120 + r * p;
  p = 1 / 24 + r * p;
  p = 1 / 6 + r * p;
  p = 1 / 2 + r * p;
  return (1 + (r + r * r * p)) * (POWERS[k + 1022] as number);
}

const double = new Float64Array(1);
const words = new Uint32Array(double.buffer);
double[0] = 1;
/** Index of the word with sign and exponent (1 on all little-endian machines). */
const HIGH = words[1] === 0x3ff00000 ? 1 : 0;

/** Natural logarithm of a normal x > 0; NaN below 0, −Infinity at 0. */
export function ln(x: number): number {
  if (!(x > 0)) return x === 0 ? -Infinity : NaN;
  if (x === Infinity) return Infinity;
  if (x < 2.3e-308) return ln(x * 18014398509481984) - 54 * LN2_HIGH;
  double[0] = x;
  let k = ((words[HIGH] as number) >>> 20) - 1023;
  words[HIGH] = ((words[HIGH] as number) & 0xfffff) | 0x3ff00000;
  let m = double[0];
  if (m > 1.4142135623730951) {
    m /= 2;
    k += 1;
  }
  // ln m = 2 artanh f, f = (m−1)/(m+1), |f| ≤ 0.1716 (Abramowitz & Stegun 1964, 4.1.27)
  const f = (m - 1) / (m + 1);
  const z = f * f;
  let p = 1 / 21;
  p = 1 / 19 + z * p;
  p = 1 / 17 + z * p;
  p = 1 / 15 + z * p;
  p = 1 / 13 + z * p;
  p = 1 / 11 + z * p;
  p = 1 / 9 + z * p;
  p = 1 / 7 + z * p;
  p = 1 / 5 + z * p;
  p = 1 / 3 + z * p;
  return k * LN2_HIGH + (2 * f + (2 * f * z * p + k * LN2_LOW));
}

/** xʸ for x > 0 (relative error grows as |y ln x|·1e-16); 0⁺ for x = 0 and y > 0. */
export const power = (x: number, y: number): number => (x === 0 && y > 0 ? 0 : exp(y * ln(x)));

const ATAN = [0, 0.24497866312686414, 0.4636476090008061, 0.6435011087932844, 0.7853981633974483] as const;

/** The angle in [0, π/2] of a direction with non-negative components (across, along); 0 where both are 0. */
export function angleOf(across: number, along: number): number {
  if (across === 0) return 0;
  const turned = across > along;
  const t = turned ? along / across : across / along;
  // atan t = atan c + atan((t − c)/(1 + t c)), c the nearest quarter (Abramowitz & Stegun 1964, 4.4.34)
  const i = Math.round(4 * t);
  const c = i / 4;
  const u = (t - c) / (1 + t * c); // |u| ≤ 1/8
  const z = u * u;
  let p = 1 / 17;
  p = 1 / 15 - z * p;
  p = 1 / 13 - z * p;
  p = 1 / 11 - z * p;
  p = 1 / 9 - z * p;
  p = 1 / 7 - z * p;
  p = 1 / 5 - z * p;
  p = 1 / 3 - z * p;
  const angle = (ATAN[i] as number) + (u - u * z * p);
  return turned ? 1.5707963267948966 - angle : angle;
}
