import { lgamma } from "../base";

/**
 * The unit quarter superellipse |y|ⁿ + |t|ⁿ = 1, y(t) = (1 − tⁿ)^(1/n), 0 ≤ t ≤ 1.
 * Its full integrals c = ∫y dt, m = ∫t·y dt, q = ∫t²·y dt:
 *   c = Γ(1+1/n)²/Γ(1+2/n),  m = Γ(2/n)Γ(1+1/n)/(n Γ(1+3/n)),  q = Γ(3/n)Γ(1+1/n)/(n Γ(1+4/n))
 * Source: Dirichlet's integral; area form as in docs/model.md §2 and Gridgeman 1970, Math. Gazette 54:31–37.
 */
export interface QuarterIntegrals {
  readonly n: number;
  readonly c: number;
  readonly m: number;
  readonly q: number;
}

const ELLIPSE: QuarterIntegrals = { n: 2, c: Math.PI / 4, m: 1 / 3, q: Math.PI / 16 };

// The last few exponents asked for: sections mostly share theirs.
let recent: QuarterIntegrals = ELLIPSE;
let before: QuarterIntegrals = ELLIPSE;

/** Full integrals of the quarter with exponent n, 1 ≤ n ≤ 10. */
export function quarter(n: number): QuarterIntegrals {
  if (recent.n === n) return recent;
  if (before.n === n) {
    [recent, before] = [before, recent];
    return recent;
  }
  const p = 1 / n;
  const g = lgamma(1 + p);
  const found: QuarterIntegrals =
    n === 2
      ? ELLIPSE
      : {
          n,
          c: Math.exp(2 * g - lgamma(1 + 2 * p)),
          m: p * Math.exp(lgamma(2 * p) + g - lgamma(1 + 3 * p)),
          q: p * Math.exp(lgamma(3 * p) + g - lgamma(1 + 4 * p)),
        };
  before = recent;
  recent = found;
  return found;
}

/** Part of the quarter between t = 0 and t = u: its area, its first moment about t = 0, and y(u). */
export interface QuarterPart {
  area: number;
  moment: number;
  breadth: number;
}

/**
 * Area F(u) = ∫₀ᵘ y dt and moment M(u) = ∫₀ᵘ t·y dt, written to `out`; u is taken as 0 below 0 and as 1 above 1.
 *
 * These are the incomplete beta functions (1/n)·B(uⁿ; 1/n, 1+1/n) and (1/n)·B(uⁿ; 2/n, 1+1/n), summed as power series in
 * x = uⁿ with u itself in front, so that nothing is lost where uⁿ underflows. For x > ½ the series would be slow; there
 * the quarter is read along its other axis, with y in the place of u: the part beyond u has
 *   area F(y) − u·y   and   moment ½·[∫₀^y (1−t'ⁿ)^(2/n) dt' − u²·y].
 */
export function quarterPart(n: number, u: number, out: QuarterPart): void {
  if (u <= 0) {
    out.area = 0;
    out.moment = 0;
    out.breadth = 1;
    return;
  }
  if (u >= 1) {
    const full = quarter(n);
    out.area = full.c;
    out.moment = full.m;
    out.breadth = 0;
    return;
  }
  if (n === 2) {
    const y = Math.sqrt((1 - u) * (1 + u));
    out.area = (u * y + Math.asin(u)) / 2;
    out.moment = (1 - y * y * y) / 3;
    out.breadth = y;
    return;
  }
  if (n === 1) {
    out.area = u - (u * u) / 2;
    out.moment = (u * u) / 2 - (u * u * u) / 3;
    out.breadth = 1 - u;
    return;
  }
  const p = 1 / n;
  const rest = -Math.expm1(n * Math.log(u)); // 1 − uⁿ without cancellation
  const y = Math.pow(rest, p);
  out.breadth = y;
  if (rest >= 0.5) {
    const x = 1 - rest;
    let term = 1;
    let area = 1;
    let moment = 0.5;
    for (let k = 1; k < 60; k++) {
      term *= ((k - 1 - p) * x) / k;
      area += term / (n * k + 1);
      moment += term / (n * k + 2);
      if (term > -1e-14) break; // all terms after the first are negative and fall
    }
    out.area = u * area;
    out.moment = u * u * moment;
    return;
  }
  let one = 1; // term of (1 − x)^(1/n)
  let two = 1; // term of (1 − x)^(2/n)
  let F = 1;
  let Q = 1;
  for (let k = 1; k < 60; k++) {
    const r = rest / k;
    one *= (k - 1 - p) * r;
    two *= (k - 1 - 2 * p) * r;
    const d = 1 / (n * k + 1);
    F += one * d;
    Q += two * d;
    if (Math.abs(one) + Math.abs(two) < 1e-14) break;
  }
  const full = quarter(n);
  out.area = full.c - (y * F - u * y);
  out.moment = full.m - (y * Q - u * u * y) / 2;
}
