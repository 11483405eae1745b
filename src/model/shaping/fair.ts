import { distanceToSegment, hypot, pchip, sin } from "../base";
import type { Cubic, Vec } from "../base";
import type { Knot } from "../shape";
import { phiOfStation, stationOfPhi } from "../shape";
import { leastSquares } from "./least-squares";

/** An edge fitted to many points. */
export interface FairEdge {
  readonly knots: readonly Knot[];
  /** Greatest distance from a traced point to the fitted curve, m. */
  readonly worst: number;
  /** Root mean square of these distances, m. */
  readonly rms: number;
}

/** What is settled about an edge before it is fitted. */
export interface FairOptions {
  /** Greatest number of points; where they do not suffice, the best edge of that many comes back and `worst` says so. */
  readonly most?: number;
  /** Values at the nose and at the tail that are given, m; absent: fitted like the others. */
  readonly nose?: number;
  readonly tail?: number;
}

/** Two points of the edge stay at least this far apart in φ, rad. */
const APART = 0.04;
/** Traced points that are looked at: more say nothing new about a dozen points of an edge. */
const LOOKED_AT = 240;
/** Pieces into which a curve is cut where distances from it are measured. */
const PIECES = 300;

/** An edge on trial: φ and value of each of its points. */
interface Trial {
  readonly phi: readonly number[];
  readonly v: readonly number[];
  readonly worst: number;
  readonly rms: number;
  /** φ of the traced point that it misses most. */
  readonly worstAt: number;
}

/**
 * The edge with as few points as `tolerance` allows through a traced outline. For each number of points, from three up, heights
 * and stations of the points are fitted by least squares, once from points spread evenly in φ and once from the edge before
 * with a point added where it was worst; the first edge that is good enough is taken.
 *
 * Distances are those in the plane of the drawing. Across the length an end that is round would miss every traced point by much:
 * it stands upright there. So each miss across the length is taken times dx/√(dx² + dz²) of the curve at that place, and the
 * greatest distance is then measured to the curve itself.
 *
 * @param points station and height of the traced outline, m, stations from 0 to `length`, in any order, many
 * @param tolerance greatest distance that is good enough, m
 * @throws RangeError where the points do not reach both ends or are too few
 */
export function fairEdge(
  points: readonly Knot[],
  length: number,
  tolerance: number,
  { most = 40, nose, tail }: FairOptions = {},
): FairEdge {
  if (!(length > 0 && tolerance > 0))
    throw new RangeError(`length ${length} m and tolerance ${tolerance} m: give numbers above 0`);
  if (!(Number.isInteger(most) && most >= 3)) throw new RangeError(`${most} points at most: give 3 or more`);
  const sorted = points.filter((p) => p.s >= 0 && p.s <= length).sort((a, b) => a.s - b.s);
  const first = sorted[0];
  const last = sorted.at(-1);
  if (!first || !last || sorted.length < 8)
    throw new RangeError(`${sorted.length} points along the outline: give 8 or more`);
  if (Math.max(first.s, length - last.s) > 0.1 * length)
    throw new RangeError(
      `the points run from ${first.s} to ${last.s} m of ${length} m: trace the outline to both ends`,
    );
  const stride = Math.max(1, Math.floor(sorted.length / LOOKED_AT));
  const traced = sorted
    .filter((_, i) => i % stride === 0 || i === sorted.length - 1)
    .map((p) => ({ phi: phiOfStation(p.s, length), s: p.s, v: p.v }));
  const size = Math.max(tolerance, ...traced.map((p) => Math.abs(p.v)));

  const fit = (phi: readonly number[], v: readonly number[]): Trial => {
    const n = phi.length;
    // Unknowns: all values, and by how much each inner point stands along its own room between its neighbours.
    const inner = phi.slice(1, -1);
    const room = inner.map((p, k) => {
      const before = phi[k] ?? 0;
      const after = phi[k + 2] ?? Math.PI;
      return { low: (before + p) / 2 + APART / 2, high: (p + after) / 2 - APART / 2 };
    });
    const places = (at: readonly number[]): number[] => [0, ...at.slice(n), Math.PI];
    // dx/dφ of the station, L/2·sin φ.
    const runs = traced.map((p) => (length / 2) * sin(p.phi));
    const misses = (at: readonly number[]): number[] => {
      const curve = pchip(places(at), at.slice(0, n));
      return traced.map((p, i) => {
        const run = runs[i] ?? 0;
        return ((p.v - curve.at(p.phi)) * run) / (hypot(run, curve.slopeAt(p.phi)) + Number.MIN_VALUE);
      });
    };
    const { at } = leastSquares(
      misses,
      [...v, ...inner],
      [...v.map(() => size), ...inner.map(() => 0.3)],
      [...bound(v, -Infinity), ...room.map((r) => r.low)],
      [...bound(v, Infinity), ...room.map((r) => r.high)],
    );
    const off = distances(traced, pchip(places(at), at.slice(0, n)), length);
    const worst = Math.max(...off);
    return {
      phi: places(at),
      v: at.slice(0, n),
      worst,
      rms: Math.sqrt(off.reduce((sum, d) => sum + d * d, 0) / off.length),
      worstAt: traced[off.indexOf(worst)]?.phi ?? 0,
    };
  };
  // An end that is given may not move.
  const bound = (v: readonly number[], free: number): number[] =>
    v.map((value, k) => {
      const given = k === 0 ? nose : k === v.length - 1 ? tail : undefined;
      return given === undefined ? free : value;
    });
  const valueNear = (phi: number): number => {
    const given = phi === 0 ? nose : phi === Math.PI ? tail : undefined;
    const near = traced.reduce((best, p) => (Math.abs(p.phi - phi) < Math.abs(best.phi - phi) ? p : best));
    return given ?? near.v;
  };
  const spread = (n: number): Trial => {
    const phi = Array.from({ length: n }, (_, i) => (Math.PI * i) / (n - 1));
    return fit(phi, phi.map(valueNear));
  };
  const withOneMore = (trial: Trial): Trial | null => {
    const near = trial.phi.some((p) => Math.abs(p - trial.worstAt) < 2 * APART);
    // Beside a point there is no room: halve the wider of the two neighbouring gaps instead.
    const k = Math.min(trial.phi.filter((p) => p <= trial.worstAt).length, trial.phi.length - 1);
    const middle = ((trial.phi[k - 1] ?? 0) + (trial.phi[k] ?? Math.PI)) / 2;
    const place = near ? middle : trial.worstAt;
    if (trial.phi.some((p) => Math.abs(p - place) < 2 * APART)) return null;
    const phi = [...trial.phi, place].sort((a, b) => a - b);
    return fit(
      phi,
      phi.map((p) => trial.v[trial.phi.indexOf(p)] ?? valueNear(p)),
    );
  };

  let best = spread(3);
  for (let n = 4; n <= most && best.worst > tolerance; n++) {
    const more = withOneMore(best);
    // Points spread evenly serve short edges; where many are needed, they are needed at certain places.
    const even = n <= 12 ? spread(n) : null;
    const next = [more, even].filter((t) => t !== null).sort((a, b) => a.worst - b.worst)[0];
    if (next === undefined) break;
    if (next.worst < best.worst || next.phi.length > best.phi.length) best = next;
  }
  const end = best.phi.length - 1;
  return {
    knots: best.phi.map((phi, i): Knot => ({
      s: i === 0 ? 0 : i === end ? length : stationOfPhi(phi, length),
      v: best.v[i] ?? 0,
    })),
    worst: best.worst,
    rms: best.rms,
  };
}

/** Distance of each traced point from the curve, which is cut into straight pieces for it, m. */
function distances(
  traced: readonly { readonly phi: number; readonly s: number; readonly v: number }[],
  curve: Cubic,
  length: number,
): number[] {
  const line = Array.from({ length: PIECES + 1 }, (_, i): Vec => {
    const phi = (Math.PI * i) / PIECES;
    return { x: stationOfPhi(phi, length), z: curve.at(phi) };
  });
  return traced.map((p) => {
    // The curve lies no nearer than along the length alone: pieces farther off than what is found need no look.
    const own = Math.round((p.phi / Math.PI) * PIECES);
    let least = Infinity;
    for (const way of [-1, 1])
      for (let i = own; i >= 0 && i <= PIECES; i += way) {
        const [a, b] = [line[i], line[i + 1] ?? line[i]];
        if (a === undefined || b === undefined) break;
        if (Math.min(Math.abs(a.x - p.s), Math.abs(b.x - p.s)) > least) break;
        least = Math.min(least, distanceToSegment({ x: p.s, z: p.v }, a, b));
      }
    return least;
  });
}
