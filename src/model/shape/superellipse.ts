import { asin, cos, exp, lgamma, log } from "../base";

/**
 * The unit quarter superellipse |y|ⁿ + |t|ⁿ = 1, y(t) = (1 − tⁿ)^(1/n), 0 ≤ t ≤ 1.
 * Its full integrals c = ∫y dt, m = ∫t·y dt, q = ∫t²·y dt:
 *   c = Γ(1+p)²/Γ(1+2p),  m = ½ Γ(1+2p)Γ(1+p)/Γ(1+3p),  q = ⅓ Γ(1+3p)Γ(1+p)/Γ(1+4p),  p = 1/n
 * Source: Dirichlet's integral; area form as in docs/model.md §2 and Gridgeman 1970, Math. Gazette 54:31–37.
 */
export interface QuarterIntegrals {
  readonly n: number;
  readonly c: number;
  readonly m: number;
  readonly q: number;
}

const ELLIPSE: QuarterIntegrals = { n: 2, c: Math.PI / 4, m: 1 / 3, q: Math.PI / 16 };

// c, m and q are smooth functions of p = 1/n. They are kept as Chebyshev series on p in [0.1, 1], good to 1e-13, because a
// body whose exponent changes along its length asks for them at every station.
const TERMS = 20;
const LOWEST = 0.1;
const series = [
  (p: number): number => exp(2 * lgamma(1 + p) - lgamma(1 + 2 * p)),
  (p: number): number => exp(lgamma(1 + 2 * p) + lgamma(1 + p) - lgamma(1 + 3 * p)) / 2,
  (p: number): number => exp(lgamma(1 + 3 * p) + lgamma(1 + p) - lgamma(1 + 4 * p)) / 3,
].map((f) => {
  const theta = (k: number): number => (Math.PI * (k + 0.5)) / TERMS;
  const values = Array.from({ length: TERMS }, (_, k) =>
    f(LOWEST + ((1 - LOWEST) * (1 + cos(theta(k)))) / 2),
  );
  return Float64Array.from({ length: TERMS }, (_, j) =>
    values.reduce((sum, v, k) => sum + ((j === 0 ? 1 : 2) / TERMS) * v * cos(j * theta(k)), 0),
  );
}) as [Float64Array, Float64Array, Float64Array];

function chebyshev(coefficients: Float64Array, t: number): number {
  let b1 = 0;
  let b2 = 0;
  for (let j = TERMS - 1; j > 0; j--) [b1, b2] = [2 * t * b1 - b2 + (coefficients[j] as number), b1];
  return t * b1 - b2 + (coefficients[0] as number);
}

// The last two exponents asked for: most bodies have one above and one below.
let recent: QuarterIntegrals = ELLIPSE;
let before: QuarterIntegrals = ELLIPSE;

/** Full integrals of the quarter with exponent n, 1 ≤ n ≤ 10. */
export function quarter(n: number): QuarterIntegrals {
  if (recent.n === n) return recent;
  [recent, before] = [before, recent];
  if (recent.n === n) return recent;
  if (!(n >= 1 && n <= 10)) throw new RangeError(`section exponent ${n}: exponents lie between 1 and 10`);
  const t = (2 * (1 / n - LOWEST)) / (1 - LOWEST) - 1;
  recent =
    n === 2
      ? ELLIPSE
      : { n, c: chebyshev(series[0], t), m: chebyshev(series[1], t), q: chebyshev(series[2], t) };
  return recent;
}

/** Part of the quarter between t = 0 and t = u: its area, its first moment about t = 0, and y(u). */
export interface QuarterPart {
  area: number;
  moment: number;
  breadth: number;
}

/**
 * Area F(u) = ∫₀ᵘ y dt and moment M(u) = ∫₀ᵘ t·y dt to about 1e-12, written to `out`, for a quarter whose full integrals
 * are c and m; u is taken as 0 below 0 and as 1 above 1.
 *
 * These are the incomplete beta functions (1/n)·B(uⁿ; 1/n, 1+1/n) and (1/n)·B(uⁿ; 2/n, 1+1/n). They are summed as power
 * series in x = uⁿ with u itself in front, so that nothing is lost where uⁿ underflows. For x > ½ the series would be slow.
 * There the quarter is read along its other axis, with y in the place of u. The part beyond u has
 *   area F(y) − u·y   and   moment ½·[∫₀^y (1−t'ⁿ)^(2/n) dt' − u²·y].
 */
export function quarterPart(n: number, u: number, c: number, m: number, out: QuarterPart): void {
  if (u <= 0) {
    out.area = 0;
    out.moment = 0;
    out.breadth = 1;
    return;
  }
  if (u >= 1) {
    out.area = c;
    out.moment = m;
    out.breadth = 0;
    return;
  }
  if (n === 2) {
    const y = Math.sqrt((1 - u) * (1 + u));
    out.area = (u * y + asin(u)) / 2;
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
  const x = exp(n * log(u));
  const rest = 1 - x;
  const y = exp(p * log(rest));
  out.breadth = y;
  if (x <= 0.5) {
    let term = 1; // of (1 − x)^(1/n); all but the first are negative and fall
    let area = 1;
    let moment = 0.5;
    for (let k = 1; k < 50; k++) {
      term *= (k - 1 - p) * x * (INVERSE[k] as number);
      const a = n * k + 1;
      const d = term / (a * (a + 1));
      area += d * (a + 1);
      moment += d * a;
      if (d * a > -SMALL) break;
    }
    out.area = u * area;
    out.moment = u * u * moment;
    return;
  }
  let one = 1; // term of (1 − x)^(1/n)
  let two = 1; // term of (1 − x)^(2/n)
  let F = 1;
  let Q = 1;
  for (let k = 1; k < 50; k++) {
    const r = rest * (INVERSE[k] as number);
    one *= (k - 1 - p) * r;
    two *= (k - 1 - 2 * p) * r;
    const d = 1 / (n * k + 1);
    F += one * d;
    Q += two * d;
    if (one * d > -SMALL && Math.abs(two * d) < SMALL) break;
  }
  out.area = c - y * (F - u);
  out.moment = m - (y * (Q - u * u)) / 2;
}

const SMALL = 1e-12;
const INVERSE = Float64Array.from({ length: 50 }, (_, k) => 1 / k);
