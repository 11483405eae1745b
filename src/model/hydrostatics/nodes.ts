import { gaussLegendre } from "../base";

/**
 * A range of φ that is wholly under water or cut by the surface. An end that is a crossing of the surface with the top or
 * bottom edge is marked: there the breadth at the surface goes like d^(1/n) and the immersed area like d^(1 + 1/n), where d is
 * the distance from the crossing.
 */
export interface WetRange {
  readonly a: number;
  readonly b: number;
  readonly cut: boolean;
  readonly crossingA: boolean;
  readonly crossingB: boolean;
}

/** A piece that is closer to a crossing than this share of its own width is integrated over √d instead of φ. */
const NEAR = 0.5;

/** Nodes and weights of the last `drawNodes`. */
export const nodes = { phi: new Float64Array(64), weight: new Float64Array(64) };

const nearA = (range: WetRange, from: number, to: number): boolean =>
  range.crossingA && from - range.a < NEAR * (to - from);
const nearB = (range: WetRange, from: number, to: number): boolean =>
  range.crossingB && range.b - to < NEAR * (to - from);

/** True where the plain stations of a piece would be too coarse. */
export const nearCrossing = (range: WetRange, from: number, to: number): boolean =>
  range.cut && (nearA(range, from, to) || nearB(range, from, to));

/** Gauss nodes for the piece [from, to] of a range, denser towards a near crossing. Fills `nodes`; returns how many. */
export function drawNodes(range: WetRange, from: number, to: number, points: number): number {
  const a = range.cut && nearA(range, from, to);
  const b = range.cut && nearB(range, from, to);
  if (a && b) {
    const mid = (from + to) / 2;
    run(range.a, 1, from, mid, points, 0);
    run(range.b, -1, mid, to, points, points);
    return 2 * points;
  }
  if (a) run(range.a, 1, from, to, points, 0);
  else if (b) run(range.b, -1, from, to, points, 0);
  else run(0, 0, from, to, points, 0);
  return points;
}

/** side 0: plain; otherwise φ = crossing + side·v², with Gauss nodes in v. */
function run(crossing: number, side: -1 | 0 | 1, from: number, to: number, points: number, at: number): void {
  const { x, w } = gaussLegendre(points);
  const v0 = side === 0 ? from : Math.sqrt(Math.max(0, side * (from - crossing)));
  const v1 = side === 0 ? to : Math.sqrt(Math.max(0, side * (to - crossing)));
  const half = (v1 - v0) / 2;
  const mid = (v1 + v0) / 2;
  for (let i = 0; i < points; i++) {
    const v = mid + half * (x[i] as number);
    const dv = half * (w[i] as number);
    nodes.phi[at + i] = side === 0 ? v : crossing + side * v * v;
    nodes.weight[at + i] = side === 0 ? dv : 2 * side * v * dv;
  }
}
