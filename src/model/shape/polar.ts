import { asin, cos, exp, log, sin } from "../base";

/**
 * The quarter superellipse by its polar angle: y = ρ cos α, ζ = ρ sin α, ρ = (cosⁿα + sinⁿα)^(−1/n), tabulated for one exponent
 * at the points of a Simpson rule over α in [0, π/2].
 *
 * The rule runs over τ in [0, 1]. For n ≥ 2 α is even in τ: the corner of a blocky section lies at π/4, on a grid line. For
 * n < 2 the slope of the contour goes like α^(n−1) at both ends, and α = (π/2)(3τ² − 2τ³) draws the points there. With 24 steps
 * the girth is then right within 2e-6 for n = 2 to 10 and 2e-5 down to 1.
 */
export interface Polar {
  n: number;
  graded: boolean;
  /** At each of the 2·STEPS + 1 points: ρ cos α, ρ sin α, their derivatives by τ, and by n. */
  readonly y: Float64Array;
  readonly z: Float64Array;
  readonly yByTau: Float64Array;
  readonly zByTau: Float64Array;
  readonly yByN: Float64Array;
  readonly zByN: Float64Array;
}

/** Steps of the rule; each has a point at both ends and one in its middle. */
export const STEPS = 24;
const COUNT = 2 * STEPS + 1;
const column = (): Float64Array => new Float64Array(COUNT);

/** τ of a polar angle. */
export function tauOf(alpha: number, graded: boolean): number {
  const share = alpha / (Math.PI / 2);
  // the middle root of 3τ² − 2τ³ = share
  return graded ? 0.5 - sin(asin(Math.min(Math.max(1 - 2 * share, -1), 1)) / 3) : share;
}

interface Grid {
  readonly sin: Float64Array;
  readonly cos: Float64Array;
  readonly logSin: Float64Array;
  readonly logCos: Float64Array;
  /** dα/dτ */
  readonly rate: Float64Array;
}

function makeGrid(graded: boolean): Grid {
  const grid: Grid = { sin: column(), cos: column(), logSin: column(), logCos: column(), rate: column() };
  for (let j = 0; j < COUNT; j++) {
    const t = j / (COUNT - 1);
    const alpha = (Math.PI / 2) * (graded ? t * t * (3 - 2 * t) : t);
    grid.sin[j] = sin(alpha);
    grid.cos[j] = j === COUNT - 1 ? 0 : cos(alpha);
    grid.logSin[j] = log(grid.sin[j] as number);
    grid.logCos[j] = log(grid.cos[j] as number);
    grid.rate[j] = (Math.PI / 2) * (graded ? 6 * t * (1 - t) : 1);
  }
  return grid;
}

const even = makeGrid(false);
const drawn = makeGrid(true);

const newPolar = (): Polar => ({
  n: NaN,
  graded: false,
  y: column(),
  z: column(),
  yByTau: column(),
  zByTau: column(),
  yByN: column(),
  zByN: column(),
});

/**
 * The tables of the exponents asked for last. A body whose exponent changes along its length asks for one at every station,
 * and asks for the same ones again when its breadth or height changes.
 */
const KEPT = 256;
const kept = [new Map<number, Polar>(), new Map<number, Polar>()] as const;

/** The table for an exponent. */
export function polar(n: number, graded: boolean): Readonly<Polar> {
  const tables = kept[graded ? 1 : 0];
  const found = tables.get(n);
  if (found) return found;
  if (tables.size >= KEPT) tables.clear();
  const made = newPolar();
  fill(made, n, graded);
  tables.set(n, made);
  return made;
}

function fill(table: Polar, n: number, graded: boolean): void {
  const grid = graded ? drawn : even;
  const { logSin, logCos, rate } = grid;
  table.n = n;
  table.graded = graded;
  // The contour is symmetric about α = π/4, and so is the rule: each point gives its mirror image too.
  for (let j = 0; j <= STEPS; j++) {
    const c = grid.cos[j] as number;
    const s = grid.sin[j] as number;
    const dAlpha = rate[j] as number;
    const cn = exp(n * (logCos[j] as number)); // cosⁿα, ½^(n/2) to 1
    const sn = exp(n * (logSin[j] as number)); // sinⁿα, 0 at the first point
    const sum = cn + sn; // ρ⁻ⁿ
    const logSum = log(sum);
    const rho = n === 2 ? 1 : exp(-logSum / n);
    // dρ/dα = −ρ (sinⁿ⁻¹α cos α − cosⁿ⁻¹α sin α)/sum, one-sided at the ends
    const bySin = s > 0 ? (sn / s) * c : n === 1 ? 1 : 0;
    const byAlpha = n === 2 ? 0 : (-rho * (bySin - (cn / c) * s)) / sum;
    // dρ/dn = ρ [ln(sum)/n² − (cosⁿα ln cos α + sinⁿα ln sin α)/(n·sum)]
    const logs = cn * (logCos[j] as number) + (s > 0 ? sn * (logSin[j] as number) : 0);
    const byN = rho * (logSum / (n * n) - logs / (n * sum));
    const k = COUNT - 1 - j;
    table.y[j] = table.z[k] = rho * c;
    table.z[j] = table.y[k] = rho * s;
    const yByTau = (byAlpha * c - rho * s) * dAlpha;
    const zByTau = (byAlpha * s + rho * c) * dAlpha;
    table.yByTau[j] = yByTau;
    table.zByTau[k] = -yByTau;
    table.zByTau[j] = zByTau;
    table.yByTau[k] = -zByTau;
    table.yByN[j] = table.zByN[k] = byN * c;
    table.zByN[j] = table.yByN[k] = byN * s;
  }
}
