import type { Edges } from "./types";
import { stationOfPhi } from "./edges";

/** The curves that a surface or a straight line can cross. */
export type Curve = "top" | "widest" | "bottom";

/**
 * Greatest gap of the scan, rad, and the number of extra points at both ends: a round tip turns within its last millimetre.
 */
const GAP = 0.08;
const TIP = [0.005, 0.02];

/**
 * Edge heights on a fixed scan of φ that is fine enough to see every crossing of a straight line. The scan has the breaks,
 * gaps of at most `GAP`, and smaller gaps at the tips.
 */
export interface ScanGrid {
  readonly n: number;
  readonly phi: Float64Array;
  /** x = −station, m. */
  readonly x: Float64Array;
  readonly top: Float64Array;
  readonly widest: Float64Array;
  readonly bottom: Float64Array;
}

const known = new WeakMap<Edges, ScanGrid>();

export function scanGrid(edges: Edges): ScanGrid {
  const found = known.get(edges);
  if (found) return found;
  const phis = [0];
  const add = (p: number): void => {
    if (p > (phis.at(-1) ?? 0) + 1e-9) phis.push(p);
  };
  for (let i = 0; i + 1 < edges.breaks.length; i++) {
    const a = edges.breaks[i] as number;
    const b = edges.breaks[i + 1] as number;
    const steps = Math.max(2, Math.ceil((b - a) / GAP));
    const inner = Array.from({ length: steps - 1 }, (_, k) => a + ((b - a) * (k + 1)) / steps);
    const tips = [...TIP, ...TIP.map((t) => Math.PI - t)].filter((t) => t > a && t < b);
    [...inner, ...tips].sort((p, q) => p - q).forEach(add);
    if (b > (phis.at(-1) ?? 0)) phis.push(b);
  }
  const phi = Float64Array.from(phis);
  const grid: ScanGrid = {
    n: phi.length,
    phi,
    x: phi.map((p) => -stationOfPhi(p, edges.length)),
    top: phi.map((p) => edges.top(p)),
    widest: phi.map((p) => edges.widest(p)),
    bottom: phi.map((p) => edges.bottom(p)),
  };
  known.set(edges, grid);
  return grid;
}

/**
 * The φ where one curve meets the straight line x·sin + z·cos = level, written to `out` from index `count` on; returns the
 * new count. Transversal crossings and lenses between two scan points are found, each to about 1e-13 rad. A value within
 * `dead` metres of the line counts as above it, so that an edge that runs along the line gives no crossings.
 */
export function lineCrossings(
  edges: Edges,
  curve: Curve,
  sin: number,
  cos: number,
  level: number,
  dead: number,
  out: number[],
  count: number,
): number {
  const grid = scanGrid(edges);
  const z = grid[curve];
  const { n, phi, x } = grid;
  const height = (p: number): number => -stationOfPhi(p, edges.length) * sin + edges[curve](p) * cos - level;
  let g0 = NaN;
  let g1 = (x[0] as number) * sin + (z[0] as number) * cos - level;
  for (let i = 1; i < n; i++) {
    const g2 = (x[i] as number) * sin + (z[i] as number) * cos - level;
    const a = phi[i - 1] as number;
    const b = phi[i] as number;
    const under1 = g1 < -dead;
    const under2 = g2 < -dead;
    if (under1 !== under2) out[count++] = refine(height, a, b, g1, g2, dead);
    else if (under1 === g0 < -dead) {
      // The last three values lie on one side. Does the parabola through them cross the line near their middle one?
      const s0 = Math.abs(g0);
      const s1 = Math.abs(g1);
      const s2 = Math.abs(g2);
      if (s1 <= s0 && s1 <= s2 && s1 > dead) {
        const before = phi[i - 2] as number;
        const peak = vertex(before, a, b, g0, g1, g2);
        const gp = height(peak);
        if (gp < -dead !== under1) {
          const [l, gl, r, gr] = peak < a ? [before, g0, a, g1] : [a, g1, b, g2];
          out[count++] = refine(height, l, peak, gl, gp, dead);
          out[count++] = refine(height, peak, r, gp, gr, dead);
        }
      }
    }
    g0 = g1;
    g1 = g2;
  }
  return count;
}

/** Where the parabola through three points has its vertex. */
function vertex(x0: number, x1: number, x2: number, y0: number, y1: number, y2: number): number {
  const p = (x1 - x0) * (y1 - y2);
  const q = (x1 - x2) * (y1 - y0);
  const v = x1 - (0.5 * ((x1 - x0) * p - (x1 - x2) * q)) / (p - q);
  return v > x0 && v < x2 ? v : x1;
}

/**
 * Root of g + dead between a and b, where it changes sign: false position with the Illinois rule (Dowell & Jarratt 1971,
 * BIT 11:168–174), a handful of steps on smooth curves.
 */
function refine(
  g: (p: number) => number,
  a: number,
  b: number,
  ga: number,
  gb: number,
  dead: number,
): number {
  let fa = ga + dead;
  let fb = gb + dead;
  let last = NaN;
  let side = 0;
  for (let k = 0; k < 100; k++) {
    const c = (fa * b - fb * a) / (fa - fb);
    const f = g(c) + dead;
    if (f === 0 || Math.abs(c - last) < 1e-14) return c;
    last = c;
    if (f > 0 === fb > 0) {
      b = c;
      fb = f;
      if (side === 1) fa /= 2;
      side = 1;
    } else {
      a = c;
      fa = f;
      if (side === -1) fb /= 2;
      side = -1;
    }
  }
  return (a + b) / 2;
}

/** Greatest value of a smooth curve from its scan: by parabolas through the best three points, or the end itself. */
export function peak(phi: Float64Array, values: Float64Array, f: (phi: number) => number): number {
  let best = 0;
  for (let i = 1; i < values.length; i++) if ((values[i] as number) > (values[best] as number)) best = i;
  const mid = Math.min(Math.max(best, 1), values.length - 2);
  let [x0, x1, x2] = [phi[mid - 1], phi[mid], phi[mid + 1]] as [number, number, number];
  let [y0, y1, y2] = [values[mid - 1], values[mid], values[mid + 1]] as [number, number, number];
  for (let k = 0; k < 16; k++) {
    const v = vertex(x0, x1, x2, y0, y1, y2);
    if (Math.abs(v - x1) < 1e-9) break;
    const y = f(v);
    if (y > y1) {
      if (v > x1) [x0, y0] = [x1, y1];
      else [x2, y2] = [x1, y1];
      [x1, y1] = [v, y];
    } else if (v > x1) [x2, y2] = [v, y];
    else [x0, y0] = [v, y];
  }
  return Math.max(y1, values[best] as number);
}
