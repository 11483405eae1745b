/**
 * Exponential, logarithm, power and cube root, made from + − × ÷ and √ only. IEEE 754 fixes these five operations, so every
 * engine gives the same bits. The built-in functions differ in the last bit of one call in ten or twenty.
 * `tests/unit/base/elementary.test.ts` states the error of each function in units in the last place.
 *
 * The methods are the classical ones: reduce the argument (Cody & Waite 1980, Software Manual for the Elementary Functions),
 * sum the Taylor series of what is left, and keep the rounding error of products (Dekker 1971, Numer. Math. 18:224–242).
 */

const LN2_HIGH = 0.6931471803691238; // first 32 bits of ln 2: k·LN2_HIGH is exact for |k| < 2²¹
const LN2_LOW = 1.9082149292705877e-10;
const INVERSE_LN2 = 1.4426950408889634;
const INVERSE_LN10 = 0.4342944819032518;

// One number seen as its two halves; which half is the high one depends on the machine.
const number = new Float64Array([1]);
const halves = new Uint32Array(number.buffer);
const HIGH = halves[1] === 0x3ff00000 ? 1 : 0;

/** 2ᵏ for −1022 ≤ k ≤ 1023. */
function powerOfTwo(k: number): number {
  halves[HIGH] = (k + 1023) << 20;
  halves[1 - HIGH] = 0;
  return number[0] ?? NaN;
}

/** v·2ᵏ, in two steps where one factor would leave the range. */
function scaled(v: number, k: number): number {
  if (k >= -1022 && k <= 1023) return v * powerOfTwo(k);
  if (k > 1023) return v * powerOfTwo(1023) * powerOfTwo(Math.min(k - 1023, 1023));
  return v * powerOfTwo(-1022) * powerOfTwo(Math.max(k + 1022, -1022));
}

// The exponent and the mantissa in [√½, √2) of the last `part`.
let exponent = 0;

/** x = m·2^exponent for finite x > 0; returns m. */
function part(x: number): number {
  let k = 0;
  if (x < 2.2250738585072014e-308) {
    x *= 18014398509481984; // 2⁵⁴: subnormal
    k = -54;
  }
  number[0] = x;
  const high = halves[HIGH] as number;
  k += (high >>> 20) - 1023;
  halves[HIGH] = (high & 0xfffff) | 0x3ff00000;
  let m = number[0];
  if (m > Math.SQRT2) {
    m /= 2;
    k += 1;
  }
  exponent = k;
  return m;
}

/** (ln((1 + s)/(1 − s)) − 2s)/s for z = s² ≤ 0.0295: 2z/3 + 2z²/5 + …, odd and even terms in two chains. */
function atanhRest(z: number): number {
  const w = z * z;
  const odd = 2 / 3 + w * (2 / 7 + w * (2 / 11 + w * (2 / 15 + w * (2 / 19 + w * (2 / 23)))));
  const even = 2 / 5 + w * (2 / 9 + w * (2 / 13 + w * (2 / 17 + w * (2 / 21))));
  return z * odd + w * even;
}

/** Natural logarithm; −Infinity at 0, NaN below. */
export function log(x: number): number {
  if (!(x > 0 && x < Infinity)) return x === 0 ? -Infinity : x === Infinity ? x : NaN;
  const f = part(x) - 1;
  return logOfParts(f, exponent);
}

/** ln(1 + f) + k ln 2 for √½ − 1 ≤ f < √2 − 1: ln(1 + f) = f − [f²/2 − s (f²/2 + R)], s = f/(2 + f). */
function logOfParts(f: number, k: number): number {
  const s = f / (2 + f);
  const half = 0.5 * f * f;
  return k * LN2_HIGH - (half - (s * (half + atanhRest(s * s)) + k * LN2_LOW) - f);
}

/** ln(1 + x), with all its digits where x is small; −Infinity at −1, NaN below. */
export function log1p(x: number): number {
  if (x > Math.SQRT1_2 - 1 && x < Math.SQRT2 - 1) return x === 0 ? x : logOfParts(x, 0);
  const sum = 1 + x;
  if (!(sum > 0 && sum < Infinity)) return log(sum);
  const lost = sum > 2 ? 1 - (sum - x) : x - (sum - 1); // rounding error of the sum
  return log(sum) + lost / sum;
}

/** Logarithm to base 10. */
export const log10 = (x: number): number => log(x) * INVERSE_LN10;

/** eˣ. */
export const exp = (x: number): number => expOfSum(x, 0);

/** e^(x + tail), the tail far below x's last bit or small. */
function expOfSum(x: number, tail: number): number {
  if (!(x > -746 && x < 710)) return x <= -746 ? 0 : x >= 710 ? Infinity : NaN;
  const k = Math.round(x * INVERSE_LN2);
  return scaled(1 + expRest(x, tail, k), k);
}

/** eˣ − 1, with all its digits where x is small. */
export function expm1(x: number): number {
  if (!(x > -40 && x < 709)) return exp(x) - 1;
  const k = Math.round(x * INVERSE_LN2);
  if (k === 0) return x === 0 ? x : expRest(x, 0, 0);
  return (1 - powerOfTwo(-k) + expRest(x, 0, k)) * powerOfTwo(k);
}

/** e^r − 1 for r = x + tail − k ln 2, |r| ≤ ½ ln 2. */
function expRest(x: number, tail: number, k: number): number {
  const high = x - k * LN2_HIGH;
  const low = tail - k * LN2_LOW;
  const r = high + low;
  const rest = high - r + low; // rounding error of r
  // p = 1/2! + r/3! + … + r¹²/14!, even and odd terms in two chains
  const z = r * r;
  const even =
    1 / 2 +
    z *
      (1 / 24 + z * (1 / 720 + z * (1 / 40320 + z * (1 / 3628800 + z * (1 / 479001600 + z / 87178291200)))));
  const odd = 1 / 6 + z * (1 / 120 + z * (1 / 5040 + z * (1 / 362880 + z * (1 / 39916800 + z / 6227020800))));
  const p = even + r * odd;
  return r + (z * p + rest);
}

const SPLIT = 134217729; // 2²⁷ + 1

/** a·b − p, exactly, for p the rounded product (Dekker). */
function productError(a: number, b: number, p: number): number {
  const ca = SPLIT * a;
  const ah = ca - (ca - a);
  const al = a - ah;
  const cb = SPLIT * b;
  const bh = cb - (cb - b);
  const bl = b - bh;
  return ah * bh - p + ah * bl + al * bh + al * bl;
}

/** xʸ as Math.pow means it, also for x ≤ 0. */
export function pow(x: number, y: number): number {
  if (y === 0) return 1;
  if (y === 1) return x;
  if (!(x > 0 && x < Infinity && y > -Infinity && y < Infinity)) return powOfEdge(x, y);
  if (x === 1) return 1;
  // ln x = hi + lo with about 70 bits: k ln 2 + 2s + s·R, s = f/(2 + f) with its rounding error
  const f = part(x) - 1;
  const k = exponent;
  const d = 2 + f;
  const dError = 2 - d + f;
  const s = f / d;
  const p = s * d;
  const sError = (f - p - productError(s, d, p) - s * dError) / d;
  const a = k * LN2_HIGH;
  const b = 2 * s;
  const sum = a + b;
  const back = sum - a;
  const lost = a - (sum - back) + (b - back);
  const lo0 = lost + (2 * sError + s * atanhRest(s * s) + k * LN2_LOW);
  const hi = sum + lo0;
  const lo = sum - hi + lo0;
  const t = y * hi;
  if (!(t > -746 && t < 710)) return t > 0 ? Infinity : 0;
  return expOfSum(t, productError(y, hi, t) + y * lo);
}

function powOfEdge(x: number, y: number): number {
  if (Number.isNaN(x) || Number.isNaN(y)) return NaN;
  const whole = Number.isInteger(y);
  const odd = whole && Math.abs(y % 2) === 1;
  if (x < 0 && Number.isFinite(x) && Number.isFinite(y)) return whole ? (odd ? -1 : 1) * pow(-x, y) : NaN;
  const size = Math.abs(x);
  if (!Number.isFinite(y)) return size === 1 ? NaN : size > 1 === y > 0 ? Infinity : 0;
  // x is ±0 or ±Infinity
  const value = (size === 0) === y > 0 ? 0 : Infinity;
  return odd && (x < 0 || Object.is(x, -0)) ? -value : value;
}

/** Cube root: a power, then one step of Newton on t³ = x. */
export function cbrt(x: number): number {
  if (x === 0 || !Number.isFinite(x)) return x;
  const size = Math.abs(x);
  if (size < 1e-290) return cbrt(x * 1.152921504606847e18) / 1048576; // 2⁶⁰ and 2²⁰: t³ keeps its digits
  const t = pow(size, 1 / 3);
  const root = t - (t * t * t - size) / (3 * t * t);
  return x < 0 ? -root : root;
}
