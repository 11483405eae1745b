/**
 * Sine, cosine and tangent, made from + − × ÷ only: the same bits on every engine (see exponential.ts). |x| ≤ 1e6.
 *
 * First x = k·π/2 + r, with π/2 in three parts (33 + 33 + 53 bits: k·part is exact for k < 2²⁰; Cody & Waite 1980,
 * Software Manual for the Elementary Functions). r is kept as r + tail. Then the Taylor series on |r| ≤ π/4: its first
 * left-out terms are below 1e-19.
 */
const TWO_OVER_PI = 0.6366197723675814;
const PIO2_1 = 1.5707963267341256; // first 33 bits of π/2
const PIO2_2 = 6.077100506303966e-11; // next 33 bits
const PIO2_3 = 2.0222662487959506e-21; // the rest
const LIMIT = 1e6;

const S3 = -1 / 6;
const S5 = 1 / 120;
const S7 = -1 / 5040;
const S9 = 1 / 362880;
const S11 = -1 / 39916800;
const S13 = 1 / 6227020800;
const S15 = -1 / 1307674368000;
const S17 = 1 / 355687428096000;
const C4 = 1 / 24;
const C6 = -1 / 720;
const C8 = 1 / 40320;
const C10 = -1 / 3628800;
const C12 = 1 / 479001600;
const C14 = -1 / 87178291200;
const C16 = 1 / 20922789888000;
const C18 = -1 / 6402373705728000;

/** sin(r + t) for |r| ≤ π/4 and a tail t far below r's last bit. */
function sinNear(r: number, t: number): number {
  const z = r * r;
  const p = S5 + z * (S7 + z * (S9 + z * (S11 + z * (S13 + z * (S15 + z * S17)))));
  return r + (z * r * (S3 + z * p) + t * (1 - z / 2));
}

/** cos(r + t), as above; 1 − z/2 is formed with its rounding error put back. */
function cosNear(r: number, t: number): number {
  const z = r * r;
  const p = C4 + z * (C6 + z * (C8 + z * (C10 + z * (C12 + z * (C14 + z * (C16 + z * C18))))));
  const half = 0.5 * z;
  const w = 1 - half;
  return w + (1 - w - half + (z * z * p - r * t));
}

function turned(x: number, quarter: number): number {
  if (!(x >= -LIMIT && x <= LIMIT)) {
    if (Number.isFinite(x))
      throw new RangeError(`angle ${x} rad is outside ±${LIMIT}: bring it into range first`);
    return NaN;
  }
  const k = Math.round(x * TWO_OVER_PI);
  const a = x - k * PIO2_1;
  const b = k * PIO2_2;
  const hi = a - b;
  // rounding error of a − b (two-sum), then the third part
  const bb = a - hi;
  const low = a - (hi + bb) + (bb - b) - k * PIO2_3;
  const r = hi + low;
  const t = hi - r + low;
  switch ((k + quarter) & 3) {
    case 0:
      return sinNear(r, t);
    case 1:
      return cosNear(r, t);
    case 2:
      return -sinNear(r, t);
    default:
      return -cosNear(r, t);
  }
}

/** sin x, x in radians, |x| ≤ 1e6; NaN for NaN and ±Infinity, RangeError for larger angles. */
export const sin = (x: number): number => turned(x, 0);

/** cos x, as `sin`. */
export const cos = (x: number): number => turned(x, 1);

/** tan x, as `sin`. */
export const tan = (x: number): number => sin(x) / cos(x);
