import { gaussLegendre } from "../../../src/model/base";

/** ∫ₐᵇ f by one n-point Gauss–Legendre rule. */
export function integrate(f: (x: number) => number, a: number, b: number, n = 16): number {
  const { x, w } = gaussLegendre(n);
  const half = (b - a) / 2;
  const mid = (a + b) / 2;
  let sum = 0;
  for (let i = 0; i < n; i++) sum += (w[i] as number) * f(mid + half * (x[i] as number));
  return sum * half;
}
