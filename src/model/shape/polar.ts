/**
 * The quarter superellipse by its polar angle: y = ρ cos α, ζ = ρ sin α, ρ = (cosⁿα + sinⁿα)^(−1/n), tabulated for one exponent
 * at the points of a Simpson rule over α in [0, π/2].
 *
 * The rule runs over τ in [0, 1]. For n ≥ 2 α is even in τ: the corner of a blocky section lies at π/4, on a grid line. For
 * n < 2 the slope of the contour goes like α^(n−1) at both ends, and α = (π/2)(3τ² − 2τ³) draws the points there. With 24 steps
 * the girth is then right within 2e-6 for n = 2 to 10 and 2e-5 down to 1.
 */
export interface Polar {
  readonly n: number;
  readonly graded: boolean;
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

/** τ of a polar angle. */
export function tauOf(alpha: number, graded: boolean): number {
  const share = alpha / (Math.PI / 2);
  // the middle root of 3τ² − 2τ³ = share
  return graded ? 0.5 - Math.sin(Math.asin(Math.min(Math.max(1 - 2 * share, -1), 1)) / 3) : share;
}

interface Grid {
  readonly sin: Float64Array;
  readonly cos: Float64Array;
  /** dα/dτ */
  readonly rate: Float64Array;
}

function makeGrid(graded: boolean): Grid {
  const grid: Grid = { sin: new Float64Array(COUNT), cos: new Float64Array(COUNT), rate: new Float64Array(COUNT) };
  for (let j = 0; j < COUNT; j++) {
    const t = j / (COUNT - 1);
    const alpha = (Math.PI / 2) * (graded ? t * t * (3 - 2 * t) : t);
    grid.sin[j] = Math.sin(alpha);
    grid.cos[j] = j === COUNT - 1 ? 0 : Math.cos(alpha);
    grid.rate[j] = (Math.PI / 2) * (graded ? 6 * t * (1 - t) : 1);
  }
  return grid;
}

const even = makeGrid(false);
const drawn = makeGrid(true);

// The last two tables: most bodies have one exponent above and one below.
let recent: Polar | null = null;
let before: Polar | null = null;

export function polar(n: number, graded: boolean): Polar {
  const fits = (p: Polar | null): p is Polar => p !== null && p.n === n && p.graded === graded;
  if (fits(recent)) return recent;
  [recent, before] = [before, recent];
  if (fits(recent)) return recent;
  recent = makePolar(n, graded);
  return recent;
}

function makePolar(n: number, graded: boolean): Polar {
  const { sin, cos, rate } = graded ? drawn : even;
  const table: Polar = {
    n,
    graded,
    y: new Float64Array(COUNT),
    z: new Float64Array(COUNT),
    yByTau: new Float64Array(COUNT),
    zByTau: new Float64Array(COUNT),
    yByN: new Float64Array(COUNT),
    zByN: new Float64Array(COUNT),
  };
  for (let j = 0; j < COUNT; j++) {
    const c = cos[j] as number;
    const s = sin[j] as number;
    const dAlpha = rate[j] as number;
    let rho = 1;
    let byAlpha = 0;
    let byN = 0;
    const lc = c > 0 ? Math.log(c) : -Infinity;
    const ls = s > 0 ? Math.log(s) : -Infinity;
    const cn = Math.exp(n * lc); // cosⁿα
    const sn = Math.exp(n * ls);
    const sum = cn + sn; // ρ⁻ⁿ
    const logSum = Math.log(sum);
    if (n !== 2) {
      rho = Math.exp(-logSum / n);
      // dρ/dα = −ρ (sinⁿ⁻¹α cos α − cosⁿ⁻¹α sin α)/sum, one-sided at the ends
      const bySin = s > 0 ? (sn / s) * c : n === 1 ? c : 0;
      const byCos = c > 0 ? (cn / c) * s : n === 1 ? s : 0;
      byAlpha = (-rho * (bySin - byCos)) / sum;
    }
    // dρ/dn = ρ [ln(sum)/n² − (cosⁿα ln cos α + sinⁿα ln sin α)/(n·sum)]
    byN = rho * (logSum / (n * n) - ((cn > 0 ? cn * lc : 0) + (sn > 0 ? sn * ls : 0)) / (n * sum));
    table.y[j] = rho * c;
    table.z[j] = rho * s;
    table.yByTau[j] = (byAlpha * c - rho * s) * dAlpha;
    table.zByTau[j] = (byAlpha * s + rho * c) * dAlpha;
    table.yByN[j] = byN * c;
    table.zByN[j] = byN * s;
  }
  return table;
}
