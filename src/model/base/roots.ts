import { solveLinear } from "./linear";

/**
 * A root of f between a and b, where f(a) and f(b) differ in sign (or one is 0), within `tolerance` of x.
 * Brent 1973, Algorithms for Minimization without Derivatives, ch. 4: inverse quadratic steps, bisection as the guard.
 * Throws where there is no sign change, or where f is not a number.
 */
export function brent(
  f: (x: number) => number,
  a: number,
  b: number,
  tolerance = 1e-14,
  fa = f(a),
  fb = f(b),
): number {
  if (!(Number.isFinite(fa) && Number.isFinite(fb)) || (fa > 0 && fb > 0) || (fa < 0 && fb < 0))
    throw new RangeError(`no sign change between f(${a}) = ${fa} and f(${b}) = ${fb}`);
  let c = a;
  let fc = fa;
  let d = b - a;
  let e = d;
  for (let iteration = 0; iteration < 200; iteration++) {
    if (fb > 0 === fc > 0) {
      c = a;
      fc = fa;
      d = e = b - a;
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      [a, b, c] = [b, c, b];
      [fa, fb, fc] = [fb, fc, fb];
    }
    const tol = 2 * Number.EPSILON * Math.abs(b) + tolerance / 2;
    const m = (c - b) / 2;
    if (Math.abs(m) <= tol || fb === 0) return b;
    if (Math.abs(e) < tol || Math.abs(fa) <= Math.abs(fb)) d = e = m;
    else {
      const s = fb / fa;
      let p: number;
      let q: number;
      if (a === c) {
        p = 2 * m * s;
        q = 1 - s;
      } else {
        const q0 = fa / fc;
        const r = fb / fc;
        p = s * (2 * m * q0 * (q0 - r) - (b - a) * (r - 1));
        q = (q0 - 1) * (r - 1) * (s - 1);
      }
      if (p > 0) q = -q;
      else p = -p;
      if (2 * p < Math.min(3 * m * q - Math.abs(tol * q), Math.abs(e * q))) {
        e = d;
        d = p / q;
      } else d = e = m;
    }
    a = b;
    fa = fb;
    b += Math.abs(d) > tol ? d : m > 0 ? tol : -tol;
    fb = f(b);
    if (Number.isNaN(fb)) throw new RangeError(`f(${b}) is not a number`);
  }
  throw new RangeError(`no root within ${tolerance} after 200 steps near ${b}`);
}

export interface NewtonResult {
  readonly x: readonly number[];
  readonly residual: readonly number[];
  readonly converged: boolean;
  readonly iterations: number;
}

/**
 * Newton's method for f(x) = 0 in a few unknowns, with a central-difference Jacobian and halved steps while the scaled
 * residual does not fall. `scaleX`, `scaleF`: sizes of a noticeable change of each unknown and residual.
 * Converged where every |f_i| ≤ tolerance·scaleF_i. Never throws for lack of convergence: look at `converged`.
 */
export function newton(
  f: (x: readonly number[]) => readonly number[],
  start: readonly number[],
  scaleX: readonly number[],
  scaleF: readonly number[],
  tolerance = 1e-10,
  maxIterations = 40,
): NewtonResult {
  let x = [...start];
  let r = [...f(x)];
  const n = x.length;
  const size = (v: readonly number[]): number => {
    const worst = v.reduce((m, vi, i) => Math.max(m, Math.abs(vi) / (scaleF[i] ?? 1)), 0);
    return v.every(Number.isFinite) ? worst : Infinity;
  };
  for (let iteration = 0; iteration < maxIterations; iteration++) {
    if (size(r) <= tolerance) return { x, residual: r, converged: true, iterations: iteration };
    const J = r.map(() => new Array<number>(n).fill(0));
    for (let j = 0; j < n; j++) {
      const step = 1e-5 * (scaleX[j] ?? 1); // central difference: error ~ step², round-off ~ 1e-11
      const up = f(x.map((v, k) => (k === j ? v + step : v)));
      const down = f(x.map((v, k) => (k === j ? v - step : v)));
      J.forEach((row, i) => (row[j] = ((up[i] ?? NaN) - (down[i] ?? NaN)) / (2 * step)));
    }
    let dx: number[];
    try {
      dx = solveLinear(
        J,
        r.map((v) => -v),
      );
    } catch {
      break;
    }
    let share = 1;
    let moved = false;
    for (let halving = 0; halving < 12 && !moved; halving++, share /= 2) {
      const trial = x.map((v, k) => v + share * (dx[k] ?? NaN));
      const rTrial = [...f(trial)];
      if (size(rTrial) < size(r)) {
        x = trial;
        r = rTrial;
        moved = true;
      }
    }
    if (!moved) break;
  }
  return { x, residual: r, converged: size(r) <= tolerance, iterations: maxIterations };
}
