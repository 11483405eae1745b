import { log } from "./exponential";
import { sin } from "./trig";

// Lanczos' approximation with g = 7 and 9 terms: relative error below 1e-14 for x > 0.
// Source: Lanczos 1964, SIAM J. Numer. Anal. B 1:86–96; these coefficients are in common use (from memory),
// and tested against factorials, Γ(½) and the reflection formula.
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];

/** ln Γ(x) for x > 0. */
export function lgamma(x: number): number {
  if (!(x > 0)) throw new RangeError(`lgamma(${x}): x must be above 0`);
  if (x < 0.5) return log(Math.PI / sin(Math.PI * x)) - lgamma(1 - x);
  const y = x - 1;
  let sum = LANCZOS[0] as number;
  for (let i = 1; i < 9; i++) sum += (LANCZOS[i] as number) / (y + i);
  const t = y + 7.5;
  return 0.5 * log(2 * Math.PI) + (y + 0.5) * log(t) - t + log(sum);
}
