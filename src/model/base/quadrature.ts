import { cos } from "./trig";

/** Nodes in (−1, 1), rising, and weights of a Gauss–Legendre rule: exact for polynomials of degree 2n − 1. */
export interface GaussRule {
  readonly n: number;
  readonly x: Float64Array;
  readonly w: Float64Array;
}

const rules = new Map<number, GaussRule>();

/**
 * The n-point Gauss–Legendre rule, computed once for each n (1 to 512) by Newton's method on P_n from the
 * asymptotic nodes cos(π(i − ¼)/(n + ½)). Source: Abramowitz & Stegun 1964, 22.16.6 and 25.4.29.
 */
export function gaussLegendre(n: number): GaussRule {
  const known = rules.get(n);
  if (known) return known;
  if (!Number.isInteger(n) || n < 1 || n > 512)
    throw new RangeError(`Gauss rule of ${n} points: use an integer from 1 to 512`);
  const x = new Float64Array(n);
  const w = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    let z = cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let dp = 1;
    for (let iteration = 0; iteration < 100; iteration++) {
      let p0 = 1;
      let p1 = z;
      for (let k = 2; k <= n; k++) [p0, p1] = [p1, ((2 * k - 1) * z * p1 - (k - 1) * p0) / k];
      dp = (n * (z * p1 - p0)) / (z * z - 1);
      const dz = p1 / dp;
      z -= dz;
      if (Math.abs(dz) < 1e-15) break;
    }
    if (n % 2 === 1 && i === (n - 1) / 2) z = 0;
    x[n - 1 - i] = z;
    w[n - 1 - i] = 2 / ((1 - z * z) * dp * dp);
  }
  const rule = { n, x, w };
  rules.set(n, rule);
  return rule;
}
