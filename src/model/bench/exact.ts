import { atan2, brent, cos, sin } from "../base";
import type { Vec } from "../base";
import type { Bait } from "../bait";
import { phiOfStation } from "../shape";
import { restTrim } from "../statics";
import { netOf } from "./net";
import type { ExactGrams, SwapGoal } from "./types";

/** How far angle a lies from angle b, the near way round, rad. */
export const angleFrom = (a: number, b: number): number => atan2(sin(a - b), cos(a - b));

/** The bottom edge at a station, body frame. */
export function bottomAt(bait: Bait, s: number): Vec {
  return { x: 0 - s, z: bait.drawn.edges.bottom(phiOfStation(s, bait.drawn.length)) };
}

/**
 * Grams of a stuff fixed outside on the belly (below 0: to be taken off there) that bring the net buoyancy exactly, and the
 * trim where a station does: m (1 − ρ/ρ_s) = net − goal.
 */
export function exactGrams(
  bait: Bait,
  density: number,
  goal: SwapGoal,
  stuffDensity: number,
  station?: number,
): ExactGrams {
  if (!(stuffDensity > density))
    throw new RangeError(`a stuff of ${stuffDensity} kg/m³ does not sink in this water: take a denser one`);
  const rest = restTrim(bait);
  const { mass, G, displaced, B } = bait.rigid(rest.side);
  const more = (netOf(bait, density) - goal.net) / (1 - density / stuffDensity);
  const volume = more / stuffDensity;
  const trimAt = (s: number): number => {
    const at = bottomAt(bait, s);
    const M = mass + more;
    const V = displaced + volume;
    const part = (axis: "x" | "z"): number =>
      (displaced * B[axis] + volume * at[axis]) / V - (mass * G[axis] + more * at[axis]) / M;
    return atan2(part("x"), part("z"));
  };
  const answer = (s: number, reachesTrim: boolean): ExactGrams => ({
    mass: more,
    at: bottomAt(bait, s),
    net: goal.net,
    trim: trimAt(s),
    reachesTrim,
  });
  const { trim } = goal;
  if (station !== undefined || trim === null) {
    const s = station ?? Math.max(0, Math.min(bait.drawn.length, 0 - G.x));
    return answer(s, trim === null || Math.abs(angleFrom(trimAt(s), trim)) <= goal.trimTolerance);
  }
  const off = (s: number): number => angleFrom(trimAt(s), trim);
  const n = 200;
  const grid = Array.from({ length: n + 1 }, (_, i) => (i / n) * bait.drawn.length);
  for (let i = 1; i <= n; i++) {
    const a = grid[i - 1] as number;
    const b = grid[i] as number;
    const fa = off(a);
    const fb = off(b);
    if (fa > 0 !== fb > 0 && Math.abs(fa - fb) < 1) return answer(brent(off, a, b, 1e-9, fa, fb), true);
  }
  const best = grid.reduce((at, s) => (Math.abs(off(s)) < Math.abs(off(at)) ? s : at), grid[0] as number);
  return answer(best, false);
}
