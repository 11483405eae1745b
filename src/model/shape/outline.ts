import { hypot, type Vec } from "../base";
import type { Shape } from "./solid";
import { phiOfStation, stationOfPhi } from "./edges";
import { lineCrossings } from "./grid";

/** φ of about n points from nose to tail, all breaks among them. */
function samples(shape: Shape, n: number): number[] {
  if (!(n >= 2)) throw new RangeError(`an outline of ${n} points a side: use 2 or more`);
  const { breaks } = shape.edges;
  const phis = [0];
  for (let i = 0; i + 1 < breaks.length; i++) {
    const a = breaks[i] as number;
    const b = breaks[i + 1] as number;
    const steps = Math.max(1, Math.round(((b - a) / Math.PI) * (n - 1)));
    for (let k = 1; k <= steps; k++) phis.push(k === steps ? b : a + ((b - a) * k) / steps);
  }
  return phis;
}

/**
 * The side view as a closed polygon in the body frame (m; the last point is not repeated): from the nose over the top to the
 * tail and back under, about n points a side, blunt ends included. Clockwise when drawn with the nose to the left.
 */
export function outline(shape: Shape, n = 96): Vec[] {
  const phis = samples(shape, n);
  const side =
    (z: (phi: number) => number) =>
    (phi: number): Vec => ({
      x: -stationOfPhi(phi, shape.length),
      z: z(phi),
    });
  const over = phis.map(side((phi) => shape.edges.top(phi)));
  const under = phis.map(side((phi) => shape.edges.bottom(phi))).reverse();
  return withoutRepeats([...over, ...under]);
}

function withoutRepeats(points: readonly Vec[]): Vec[] {
  return points.filter((p, i) => {
    const before = points[(i + points.length - 1) % points.length];
    return !before || p.x !== before.x || p.z !== before.z;
  });
}

/** Whether a point of the plane of symmetry lies within the side outline or on it. */
export function insideOutline(shape: Shape, p: Vec): boolean {
  const s = -p.x;
  if (!(s >= 0 && s <= shape.length)) return false;
  const phi = phiOfStation(s, shape.length);
  return p.z <= shape.edges.top(phi) && p.z >= shape.edges.bottom(phi);
}

/**
 * Where the straight piece from `a` to `b` meets the side outline, edges and blunt end faces, as parameters t in [0, 1] from
 * `a`, rising, each to about 1e-12 of the body's length. Touching points may be among them; a piece that runs along an edge
 * gives no crossings with that edge.
 */
export function outlineCrossings(shape: Shape, a: Vec, b: Vec): number[] {
  const { edges, length } = shape;
  const dx = b.x - a.x;
  const dz = b.z - a.z;
  const size = hypot(dx, dz);
  if (!(size > 0)) return [];
  // The line as x·sin + z·cos = level, its direction (cos, −sin).
  const cos = dx / size;
  const sin = -dz / size;
  const level = a.x * sin + a.z * cos;
  const found: number[] = [];
  const meet = (x: number, z: number): void => {
    const t = ((x - a.x) * cos - (z - a.z) * sin) / size;
    const slack = (1e-12 * length) / size;
    if (t >= -slack && t <= 1 + slack) found.push(Math.min(Math.max(t, 0), 1));
  };
  const phis: number[] = [];
  for (const curve of ["top", "bottom"] as const) {
    const n = lineCrossings(edges, curve, sin, cos, level, 1e-13 * length, phis, 0);
    for (const phi of phis.slice(0, n)) meet(-stationOfPhi(phi, length), edges[curve](phi));
  }
  for (const phi of [0, Math.PI]) {
    const x = -stationOfPhi(phi, length);
    if (cos === 0) continue; // parallel to the faces
    const z = (level - x * sin) / cos;
    const slack = 1e-12 * length;
    if (z >= edges.bottom(phi) - slack && z <= edges.top(phi) + slack) meet(x, z);
  }
  found.sort((p, q) => p - q);
  return found.filter((t, i) => i === 0 || t - (found[i - 1] ?? 0) > (1e-10 * length) / size);
}
