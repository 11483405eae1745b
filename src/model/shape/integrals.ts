import { gaussLegendre } from "../base";
import type { Edges } from "./types";
import { sectionAt, stationOfPhi } from "./edges";
import { sectionIntegrals } from "./section";

/** Widest panel of the integrals along the body, rad, and Gauss points on one: 1e-9 on an ellipsoid. */
const PANEL = 0.45;
export const POINTS = 6;

/** Panel ends in φ: the breaks, and at most `widest` rad between two. */
export function panelEnds(breaks: readonly number[], widest = PANEL): Float64Array {
  const ends = [0];
  for (let i = 0; i + 1 < breaks.length; i++) {
    const a = breaks[i] as number;
    const b = breaks[i + 1] as number;
    const steps = Math.ceil((b - a) / widest);
    for (let k = 1; k <= steps; k++) ends.push(k === steps ? b : a + ((b - a) * k) / steps);
  }
  return Float64Array.from(ends);
}

/** The panel that holds φ. */
export function panelOf(ends: Float64Array, phi: number): number {
  let p = 0;
  while (p < ends.length - 2 && phi > (ends[p + 1] as number)) p++;
  return p;
}

/** Calls `visit` for the pieces of [a, b] that lie in one panel each. */
export function inPanels(
  ends: Float64Array,
  a: number,
  b: number,
  visit: (a: number, b: number) => void,
): void {
  let from = a;
  for (let p = panelOf(ends, a); p < ends.length - 1 && from < b; p++) {
    const to = Math.min(ends[p + 1] as number, b);
    if (to > from) visit(from, to);
    from = Math.max(from, to);
  }
}

/** Volume (m³) and its first moments ∫x dV, ∫z dV (m⁴). */
export interface VolumeSum {
  volume: number;
  momentX: number;
  momentZ: number;
}

/** The integrals of whole sections from the nose to each panel end. */
export interface Prefix {
  readonly ends: Float64Array;
  readonly volume: Float64Array;
  readonly momentX: Float64Array;
  readonly momentZ: Float64Array;
}

export function makePrefix(edges: Edges): Prefix {
  const ends = panelEnds(edges.breaks);
  const prefix: Prefix = {
    ends,
    volume: new Float64Array(ends.length),
    momentX: new Float64Array(ends.length),
    momentZ: new Float64Array(ends.length),
  };
  const sum: VolumeSum = { volume: 0, momentX: 0, momentZ: 0 };
  for (let p = 1; p < ends.length; p++) {
    addPiece(edges, ends[p - 1] as number, ends[p] as number, sum);
    prefix.volume[p] = sum.volume;
    prefix.momentX[p] = sum.momentX;
    prefix.momentZ[p] = sum.momentZ;
  }
  return prefix;
}

/** Adds the whole sections between φ = a and φ = b: kept sums for whole panels, quadrature for the pieces at both ends. */
export function addWhole(edges: Edges, prefix: Prefix, a: number, b: number, sum: VolumeSum): void {
  const { ends } = prefix;
  const pa = panelOf(ends, a);
  const pb = panelOf(ends, b);
  if (pa === pb && !(a === ends[pa] && b === ends[pb + 1])) {
    addPiece(edges, a, b, sum);
    return;
  }
  const first = a === ends[pa] ? pa : pa + 1;
  const last = b === ends[pb + 1] ? pb + 1 : pb;
  if (first > pa) addPiece(edges, a, ends[first] as number, sum);
  sum.volume += (prefix.volume[last] as number) - (prefix.volume[first] as number);
  sum.momentX += (prefix.momentX[last] as number) - (prefix.momentX[first] as number);
  sum.momentZ += (prefix.momentZ[last] as number) - (prefix.momentZ[first] as number);
  if (last === pb) addPiece(edges, ends[last] as number, b, sum);
}

function addPiece(edges: Edges, a: number, b: number, sum: VolumeSum): void {
  const { x, w } = gaussLegendre(POINTS);
  const mid = (a + b) / 2;
  const half = (b - a) / 2;
  for (let i = 0; i < POINTS; i++) {
    const phi = mid + half * (x[i] as number);
    const { area, momentZ } = sectionIntegrals(sectionAt(edges, phi));
    const ds = (edges.length / 2) * Math.sin(phi) * half * (w[i] as number);
    sum.volume += area * ds;
    sum.momentX -= area * stationOfPhi(phi, edges.length) * ds;
    sum.momentZ += momentZ * ds;
  }
}
