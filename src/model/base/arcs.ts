/**
 * Inverse tangent, sine and cosine, made from + − × ÷ and √ only: the same bits on every engine (see exponential.ts). The
 * argument is reduced by a table of atan(i/8) (Abramowitz & Stegun 1964, 4.4.34); a Taylor series gives the rest.
 */

/** atan(i/8) = high + low. */
const ATAN_HIGH = [
  0, 0.12435499454676144, 0.24497866312686414, 0.35877067027057225, 0.4636476090008061, 0.5585993153435624,
  0.6435011087932844, 0.7188299996216245, 0.7853981633974483,
];
const ATAN_LOW = [
  0, -3.1253241424539383e-18, 1.0698755618734451e-17, -2.4623815582638635e-17, 2.2698777452961687e-17,
  -5.4556305485916264e-18, 1.5834785051444286e-17, -2.1478388444456983e-17, 3.061616997868383e-17,
];

/** atan of a ratio in [0, 1], given as y/x with 0 ≤ y ≤ x. */
function atanOfRatio(y: number, x: number): number {
  const i = Math.round(8 * (y / x));
  const c = i / 8;
  const t = (y - c * x) / (x + c * y); // |t| ≤ 1/15.9
  const z = t * t;
  const series = z * (-1 / 3 + z * (1 / 5 + z * (-1 / 7 + z * (1 / 9 + z * (-1 / 11 + z / 13)))));
  return (ATAN_HIGH[i] as number) + (t + (t * series + (ATAN_LOW[i] as number)));
}

const HALF_PI = Math.PI / 2;
const HALF_PI_LOW = 6.123233995736766e-17;

/** 2¹⁰⁰⁰: a sum of sides above it may leave the range, so both are made smaller by it. */
const GREAT = 1.0715086071862673e301;

/** Angle of the point (x, y) as Math.atan2 means it, −π to π. */
export function atan2(y: number, x: number): number {
  if (Number.isNaN(x) || Number.isNaN(y)) return NaN;
  let ax = Math.abs(x);
  let ay = Math.abs(y);
  if (ax === Infinity || ay === Infinity) {
    // only the directions of infinite sides count
    ax = ax === Infinity ? 1 : 0;
    ay = ay === Infinity ? 1 : 0;
  } else if (ax > GREAT || ay > GREAT) {
    ax /= GREAT;
    ay /= GREAT;
  }
  const first =
    ax === 0 && ay === 0 ? 0 : ay <= ax ? atanOfRatio(ay, ax) : HALF_PI - (atanOfRatio(ax, ay) - HALF_PI_LOW);
  const left = x < 0 || Object.is(x, -0);
  const angle = left ? Math.PI - (first - 2 * HALF_PI_LOW) : first;
  return y < 0 || Object.is(y, -0) ? -angle : angle;
}

export const atan = (x: number): number => atan2(x, 1);

/** NaN outside [−1, 1]. */
export const asin = (x: number): number => atan2(x, Math.sqrt((1 - x) * (1 + x)));

/** NaN outside [−1, 1]. */
export const acos = (x: number): number => atan2(Math.sqrt((1 - x) * (1 + x)), x);
