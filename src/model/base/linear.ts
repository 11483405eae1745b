import type { Sym3 } from "./types";

export const sym3 = (): Sym3 => ({ a11: 0, a13: 0, a15: 0, a33: 0, a35: 0, a55: 0 });

/** out += k·a */
export function addSym3(out: Sym3, a: Sym3, k = 1): void {
  out.a11 += k * a.a11;
  out.a13 += k * a.a13;
  out.a15 += k * a.a15;
  out.a33 += k * a.a33;
  out.a35 += k * a.a35;
  out.a55 += k * a.a55;
}

/** out += k·h·hᵀ for h = (h1, h3, h5). */
export function addOuter3(out: Sym3, k: number, h1: number, h3: number, h5: number): void {
  out.a11 += k * h1 * h1;
  out.a13 += k * h1 * h3;
  out.a15 += k * h1 * h5;
  out.a33 += k * h3 * h3;
  out.a35 += k * h3 * h5;
  out.a55 += k * h5 * h5;
}

/** A·v, written to `out` (which may be v itself). */
export function mulSym3(
  a: Sym3,
  v1: number,
  v3: number,
  v5: number,
  out: [number, number, number],
): [number, number, number] {
  out[0] = a.a11 * v1 + a.a13 * v3 + a.a15 * v5;
  out[1] = a.a13 * v1 + a.a33 * v3 + a.a35 * v5;
  out[2] = a.a15 * v1 + a.a35 * v3 + a.a55 * v5;
  return out;
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

/** Inverse of a symmetric positive definite matrix; throws as `solveSym3` does. */
export function inverseSym3(a: Sym3): Sym3 {
  const c1 = solveSym3(a, 1, 0, 0, [0, 0, 0]);
  const c3 = solveSym3(a, 0, 1, 0, [0, 0, 0]);
  const c5 = solveSym3(a, 0, 0, 1, [0, 0, 0]);
  return { a11: c1[0], a13: c3[0], a15: c5[0], a33: c3[1], a35: c5[1], a55: c5[2] };
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

/**
 * Solves a tridiagonal system of n rows in place (Thomas): lower[i]·x[i−1] + diag[i]·x[i] + upper[i]·x[i+1] = rhs[i].
 * `diag` and `rhs` are overwritten; the solution is in `rhs`. No pivoting: meant for diagonally dominant systems.
 */
export function solveTridiagonal(
  n: number,
  lower: Float64Array,
  diag: Float64Array,
  upper: Float64Array,
  rhs: Float64Array,
): void {
  if (n < 1 || lower.length < n || diag.length < n || upper.length < n || rhs.length < n)
    throw new RangeError(`tridiagonal system of ${n} rows needs arrays at least that long`);
  for (let i = 1; i < n; i++) {
    const f = (lower[i] as number) / (diag[i - 1] as number);
    diag[i] = (diag[i] as number) - f * (upper[i - 1] as number);
    rhs[i] = (rhs[i] as number) - f * (rhs[i - 1] as number);
  }
  rhs[n - 1] = (rhs[n - 1] as number) / (diag[n - 1] as number);
  for (let i = n - 2; i >= 0; i--)
    rhs[i] = ((rhs[i] as number) - (upper[i] as number) * (rhs[i + 1] as number)) / (diag[i] as number);
  if (!Number.isFinite(rhs[0]))
    throw new RangeError(
      "tridiagonal system has no finite solution: a pivot is zero or an entry is not a number",
    );
}
