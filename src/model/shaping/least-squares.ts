import { solveLinear } from "../base";

/** Result of `leastSquares`. */
export interface Fitted {
  readonly at: readonly number[];
  /** Root of the mean of the squared residuals, in their unit. */
  readonly rms: number;
}

/** Share of each unknown's scale by which it is moved to see the slope. */
const NUDGE = 1e-5;
const ROUNDS = 60;
/** The fit has arrived when a step changes the sum of squares by less than this share. */
const DONE = 1e-10;

/**
 * Least squares by the Levenberg–Marquardt method with slopes by differences. Source: Marquardt 1963, SIAM J. Appl. Math.
 * 11:431–441 (damping by the diagonal).
 *
 * @param residuals one number for each reading; may not change in number
 * @param start first guess; `scale` says for each unknown how large a noticeable change is; `low` and `high` bound it
 */
export function leastSquares(
  residuals: (at: readonly number[]) => readonly number[],
  start: readonly number[],
  scale: readonly number[],
  low: readonly number[],
  high: readonly number[],
): Fitted {
  const within = (at: readonly number[]): number[] =>
    at.map((v, k) => Math.min(Math.max(v, low[k] ?? -Infinity), high[k] ?? Infinity));
  const squares = (r: readonly number[]): number => r.reduce((sum, v) => sum + v * v, 0);
  let at = within(start);
  let r = residuals(at);
  let sum = squares(r);
  let damping = 1e-3;
  for (let round = 0; round < ROUNDS && sum > 0; round++) {
    const slopes = at.map((v, k) => {
      const h = NUDGE * (scale[k] ?? 1);
      const step = v + h > (high[k] ?? Infinity) ? -h : h;
      const moved = residuals(at.map((u, j) => (j === k ? u + step : u)));
      return moved.map((m, i) => (m - (r[i] ?? 0)) / step);
    });
    const dot = (a: readonly number[], b: readonly number[]): number =>
      a.reduce((s, v, i) => s + v * (b[i] ?? 0), 0);
    const normal = slopes.map((a) => slopes.map((b) => dot(a, b)));
    const right = slopes.map((a) => -dot(a, r));
    let better = false;
    for (let attempt = 0; attempt < 12 && !better; attempt++) {
      // An unknown that changes nothing keeps its place: its row is that of the damping alone.
      const damped = normal.map((row, i) =>
        row.map((v, j) => (i === j ? v * (1 + damping) + (v === 0 ? 1 : 0) : v)),
      );
      const step = solveLinear(damped, right);
      const next = within(at.map((v, k) => v + (step[k] ?? 0)));
      const found = residuals(next);
      const total = squares(found);
      if (total < sum) {
        const gain = (sum - total) / sum;
        at = next;
        r = found;
        sum = total;
        damping = Math.max(damping / 5, 1e-12);
        better = true;
        if (gain < DONE) round = ROUNDS;
      } else damping *= 4;
    }
    if (!better) break;
  }
  return { at, rms: Math.sqrt(sum / Math.max(1, r.length)) };
}
