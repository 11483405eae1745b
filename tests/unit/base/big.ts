/**
 * Elementary functions in whole-number arithmetic with 400 binary places, for tests: a way to the true values that shares
 * nothing with the program. A `bigint` v stands for v/2⁴⁰⁰. Series are those of any textbook (Abramowitz & Stegun 1964,
 * 4.1.27, 4.2.1, 4.3.65–66, 4.4.42; π by Machin's formula, 23.2.25 ff.).
 */
const PLACES = 400n;
export const ONE = 1n << PLACES;

export const times = (a: bigint, b: bigint): bigint => (a * b) >> PLACES;
export const over = (a: bigint, b: bigint): bigint => (a << PLACES) / b;
const size = (a: bigint): bigint => (a < 0n ? -a : a);

/** The exact value of a finite number (of one below 2⁻³⁴⁷: its first places). */
export function big(x: number): bigint {
  if (!Number.isFinite(x)) throw new RangeError(`${x} has no whole-number form`);
  const view = new DataView(new ArrayBuffer(8));
  view.setFloat64(0, x);
  const raw = view.getBigUint64(0);
  const exponent = (raw >> 52n) & 0x7ffn;
  const mantissa = (raw & 0xfffffffffffffn) | (exponent === 0n ? 0n : 1n << 52n);
  const shift = (exponent === 0n ? 1n : exponent) - 1075n + PLACES;
  const value = shift >= 0n ? mantissa << shift : mantissa >> -shift;
  return raw >> 63n === 1n ? -value : value;
}

/** How far `got` is from `want`, in units in the last place of `want`. */
export function ulps(got: number, want: bigint): number {
  const unit = BigInt(size(want).toString(2).length) - 53n;
  if (unit < 20n) throw new RangeError("too small for the places kept");
  return Number((size(big(got) - want) << 20n) >> unit) / 2 ** 20;
}

/** Sum of terms until they vanish; `next` makes each from the one before and its number. */
function series(first: bigint, next: (term: bigint, n: bigint) => bigint): bigint {
  let sum = 0n;
  let term = first;
  for (let n = 1n; size(term) > 1n; n++) {
    sum += term;
    term = next(term, n);
  }
  return sum;
}

/** atan of 1/n. */
function atanOfInverse(n: bigint): bigint {
  let sum = 0n;
  let power = ONE / n;
  for (let k = 1n; power > 0n; k += 2n) {
    sum += k % 4n === 1n ? power / k : -(power / k);
    power /= n * n;
  }
  return sum;
}

const PI = 4n * (4n * atanOfInverse(5n) - atanOfInverse(239n));

/** ln 2 = 2 artanh ⅓. */
const LN2 = ((): bigint => {
  let sum = 0n;
  let power = ONE / 3n;
  for (let k = 1n; power > 0n; k += 2n) {
    sum += power / k;
    power /= 9n;
  }
  return 2n * sum;
})();

const nearest = (a: bigint, b: bigint): bigint =>
  (2n * a + b) / (2n * b) - ((2n * a + b) % (2n * b) < 0n ? 1n : 0n);

export function bigExp(x: bigint): bigint {
  const k = nearest(x, LN2);
  const r = x - k * LN2;
  const value = series(ONE, (term, n) => times(term, r) / n);
  return k >= 0n ? value << k : value >> -k;
}

/** From a start that has a number's digits: three steps of Halley's method on e^y = x, each of which cubes the error. */
export function bigLog(x: bigint, start: number): bigint {
  let y = big(start);
  for (let pass = 0; pass < 3; pass++) {
    const e = bigExp(y);
    y += 2n * over(x - e, x + e);
  }
  return y;
}

/** Sine and cosine. */
export function bigSinCos(x: bigint): readonly [bigint, bigint] {
  const k = nearest(x, PI / 2n);
  const r = x - (k * PI) / 2n;
  const square = times(r, r);
  const s = series(r, (term, n) => -times(term, square) / (2n * n * (2n * n + 1n)));
  const c = series(ONE, (term, n) => -times(term, square) / (2n * n * (2n * n - 1n)));
  const quarter = ((k % 4n) + 4n) % 4n;
  return quarter === 0n ? [s, c] : quarter === 1n ? [c, -s] : quarter === 2n ? [-s, -c] : [-c, s];
}

/** The angle of (x, y) from a start: what is left is the arc of its tangent, small enough for the plain series. */
export function bigAtan2(y: bigint, x: bigint, start: number): bigint {
  const a = big(start);
  const [s, c] = bigSinCos(a);
  const t = over(times(y, c) - times(x, s), times(x, c) + times(y, s));
  const square = times(t, t);
  let sum = 0n;
  let power = t;
  for (let k = 1n; size(power) > 1n; k += 2n) {
    sum += k % 4n === 1n ? power / k : -(power / k);
    power = times(power, square);
  }
  return a + sum;
}

export function bigSqrt(x: bigint): bigint {
  const square = x << PLACES;
  let root = 1n << BigInt(Math.ceil(square.toString(2).length / 2));
  for (;;) {
    const next = (root + square / root) / 2n;
    if (next >= root) return root;
    root = next;
  }
}
