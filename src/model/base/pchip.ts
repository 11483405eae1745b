/**
 * Slopes of the monotone piecewise cubic Hermite interpolant through (x, y), x strictly rising.
 * Inner: 0 where the secants beside differ in sign or one is 0, else (w₁+w₂)/(w₁/d₋ + w₂/d₊), w₁ = 2h₊ + h₋, w₂ = h₊ + 2h₋.
 * Ends: ((2h₀+h₁)d₀ − h₀d₁)/(h₀+h₁), 0 if its sign differs from d₀, 3d₀ if d₀, d₁ differ in sign and it exceeds 3|d₀|.
 * Source: Fritsch & Butland 1984, SIAM J. Sci. Stat. Comput. 5:300–304; end rule as in the 'pchip' of numerical libraries.
 */
export function pchipSlopes(x: readonly number[], y: readonly number[]): number[] {
  const n = x.length;
  if (n < 2 || y.length !== n)
    throw new RangeError(`a curve needs 2 or more points, got ${n} stations and ${y.length} values`);
  const h: number[] = [];
  const d: number[] = [];
  for (let i = 0; i + 1 < n; i++) {
    const step = num(x, i + 1) - num(x, i);
    if (!(step > 0))
      throw new RangeError(`stations must rise: point ${i + 1} at ${x[i + 1]} is not beyond ${x[i]}`);
    h.push(step);
    d.push((num(y, i + 1) - num(y, i)) / step);
  }
  if (n === 2) return [num(d, 0), num(d, 0)];
  const slopes = [endSlope(num(h, 0), num(h, 1), num(d, 0), num(d, 1))];
  for (let i = 1; i + 1 < n; i++) {
    const [hm, hp, dm, dp] = [num(h, i - 1), num(h, i), num(d, i - 1), num(d, i)];
    if (dm === 0 || dp === 0 || dm > 0 !== dp > 0) slopes.push(0);
    else {
      const w1 = 2 * hp + hm;
      const w2 = hp + 2 * hm;
      slopes.push((w1 + w2) / (w1 / dm + w2 / dp));
    }
  }
  slopes.push(endSlope(num(h, n - 2), num(h, n - 3), num(d, n - 2), num(d, n - 3)));
  return slopes;
}

function endSlope(h0: number, h1: number, d0: number, d1: number): number {
  const m = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
  if (Math.sign(m) !== Math.sign(d0)) return 0;
  if (Math.sign(d0) !== Math.sign(d1) && Math.abs(m) > 3 * Math.abs(d0)) return 3 * d0;
  return m;
}

/** A piecewise cubic with its knots; `at` holds the end values beyond the ends. */
export interface Cubic {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly slopes: readonly number[];
  at(x: number): number;
  slopeAt(x: number): number;
}

/** The monotone piecewise cubic through the points (see `pchipSlopes`); constant beyond its ends. */
export function pchip(x: readonly number[], y: readonly number[]): Cubic {
  const m = pchipSlopes(x, y);
  const n = x.length;
  const knots = Float64Array.from(x);
  // On interval i, with t = x − xᵢ: value = ((c3·t + c2)·t + c1)·t + c0.
  const c = new Float64Array(4 * (n - 1));
  for (let i = 0; i + 1 < n; i++) {
    const h = num(x, i + 1) - num(x, i);
    const secant = (num(y, i + 1) - num(y, i)) / h;
    c[4 * i] = num(y, i);
    c[4 * i + 1] = num(m, i);
    c[4 * i + 2] = (3 * secant - 2 * num(m, i) - num(m, i + 1)) / h;
    c[4 * i + 3] = (num(m, i) + num(m, i + 1) - 2 * secant) / (h * h);
  }
  const first = num(x, 0);
  const last = num(x, n - 1);
  const yFirst = num(y, 0);
  const yLast = num(y, n - 1);
  const interval = (q: number): number => {
    let i = 0;
    while (i < n - 2 && q >= (knots[i + 1] as number)) i++;
    return i;
  };
  return {
    x: [...x],
    y: [...y],
    slopes: m,
    at(q) {
      if (q <= first) return yFirst;
      if (q >= last) return yLast;
      const i = interval(q);
      const t = q - (knots[i] as number);
      const k = 4 * i;
      return (
        (((c[k + 3] as number) * t + (c[k + 2] as number)) * t + (c[k + 1] as number)) * t + (c[k] as number)
      );
    },
    slopeAt(q) {
      if (q < first || q > last) return 0;
      const i = interval(q);
      const t = q - (knots[i] as number);
      const k = 4 * i;
      return (3 * (c[k + 3] as number) * t + 2 * (c[k + 2] as number)) * t + (c[k + 1] as number);
    },
  };
}

/** Straight lines through the points, constant beyond the ends; one point gives a constant. */
export function piecewiseLinear(x: readonly number[], y: readonly number[]): (q: number) => number {
  const n = x.length;
  if (n < 1 || y.length !== n)
    throw new RangeError(`a curve needs a point, got ${n} stations and ${y.length} values`);
  for (let i = 1; i < n; i++)
    if (!(num(x, i) > num(x, i - 1)))
      throw new RangeError(`stations must rise: point ${i} at ${x[i]} is not beyond ${x[i - 1]}`);
  const first = num(y, 0);
  if (y.every((v) => v === first)) return () => first;
  return (q) => {
    if (q <= num(x, 0)) return first;
    let i = 1;
    while (i < n && q > num(x, i)) i++;
    if (i === n) return num(y, n - 1);
    const t = (q - num(x, i - 1)) / (num(x, i) - num(x, i - 1));
    return num(y, i - 1) + t * (num(y, i) - num(y, i - 1));
  };
}

function num(list: ArrayLike<number>, i: number): number {
  const v = list[i];
  if (v === undefined) throw new RangeError(`no entry ${i} in a list of ${list.length}`);
  return v;
}
