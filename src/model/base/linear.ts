import type { Sym3 } from "./types";

export const sym3 = (): Sym3 => ({ a11: 0, a13: 0, a15: 0, a33: 0, a35: 0, a55: 0 });

/** out += k·h·hᵀ for h = (h1, h3, h5). */
export function addOuter3(out: Sym3, k: number, h1: number, h3: number, h5: number): void {
  out.a11 += k * h1 * h1;
  out.a13 += k * h1 * h3;
  out.a15 += k * h1 * h5;
  out.a33 += k * h3 * h3;
  out.a35 += k * h3 * h5;
  out.a55 += k * h5 * h5;
}

/**
 * Solves A·x = b for a symmetric positive definite A (a mass matrix) by A = L·D·Lᵀ; result in `out`.
 * Throws where A is not positive definite (a pivot not above 1e-14 of its diagonal entry).
 */
export function solveSym3(
  a: Sym3,
  b1: number,
  b3: number,
  b5: number,
  out: [number, number, number],
): [number, number, number] {
  const d1 = a.a11;
  const l31 = a.a13 / d1;
  const l51 = a.a15 / d1;
  const d3 = a.a33 - l31 * a.a13;
  const c53 = a.a35 - l51 * a.a13;
  const l53 = c53 / d3;
  const d5 = a.a55 - l51 * a.a15 - l53 * c53;
  if (!(d1 > 0 && d3 > 1e-14 * a.a33 && d5 > 1e-14 * a.a55))
    throw new RangeError(`matrix is not positive definite: ${JSON.stringify(a)}; check masses and inertia`);
  const y3 = b3 - l31 * b1;
  const y5 = b5 - l51 * b1 - l53 * y3;
  const x5 = y5 / d5;
  const x3 = y3 / d3 - l53 * x5;
  out[0] = b1 / d1 - l31 * x3 - l51 * x5;
  out[1] = x3;
  out[2] = x5;
  return out;
}

/** Solves the n×n system A·x = b by elimination with scaled row pivoting. Throws on a singular or ill-shaped system. */
export function solveLinear(A: readonly (readonly number[])[], b: readonly number[]): number[] {
  const n = b.length;
  if (A.length !== n || A.some((row) => row.length !== n))
    throw new RangeError(`a system of ${n} unknowns needs ${n} rows of ${n} numbers`);
  // each row with its right-hand side, and the size that its pivot is judged by
  const rows = A.map((row, i) => ({
    a: Float64Array.from([...row, b[i] ?? NaN]),
    size: row.reduce((m, v) => Math.max(m, Math.abs(v)), 0),
  }));
  const pivotShare = (k: number) => (row: { a: Float64Array; size: number }) =>
    Math.abs(row.a[k] as number) / row.size;
  for (let k = 0; k < n; k++) {
    const shares = rows.slice(k).map(pivotShare(k));
    const best = shares.reduce((p, share, i) => (share > (shares[p] as number) ? i : p), 0);
    if (!((shares[best] as number) > 1e-14))
      throw new RangeError(`singular ${n}×${n} system at unknown ${k}`);
    rows.splice(k, 0, ...rows.splice(k + best, 1));
    const top = (rows[k] as (typeof rows)[number]).a;
    for (const { a } of rows.slice(k + 1)) {
      const f = (a[k] as number) / (top[k] as number);
      for (let j = k; j <= n; j++) a[j] = (a[j] as number) - f * (top[j] as number);
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i--) {
    const { a } = rows[i] as (typeof rows)[number];
    let sum = a[n] as number;
    for (let j = i + 1; j < n; j++) sum -= (a[j] as number) * (x[j] as number);
    x[i] = sum / (a[i] as number);
  }
  return x;
}
