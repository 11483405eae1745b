import { atan2, cos, hypot, sin } from "../base";
import { wrap } from "../statics";
import type { Load, Seat } from "./seats";

/** The bait without the plan's loads: mass, displaced volume, first moments (kg·m, m⁴). */
export interface Sums {
  readonly mass: number;
  readonly mx: number;
  readonly mz: number;
  readonly volume: number;
  readonly vx: number;
  readonly vz: number;
}

/** What the search looks for. An infinite tolerance asks for nothing. */
export interface Goal {
  readonly density: number;
  readonly net: number;
  readonly netTolerance: number;
  /** rad; null: any trim with the belly down. */
  readonly trim: number | null;
  readonly trimTolerance: number;
  readonly leastBG: number;
  readonly clearance: number;
}

/** A load at a seat. */
export interface Placed {
  readonly load: Load;
  readonly seat: Seat;
}

export interface Figures {
  readonly net: number;
  readonly trim: number;
  readonly BG: number;
}

/**
 * B − G in axes at the wanted trim θ*: P across it and Q along it, so that tan(θ − θ*) = P/Q. Both are linear in the
 * moments; Q is the height of B above G at that trim.
 */
export interface Axes {
  readonly cos: number;
  readonly sin: number;
}
export const axesAt = (trim: number | null): Axes => ({ cos: cos(trim ?? 0), sin: sin(trim ?? 0) });

/** Net, trim and BG of the base with loads at their seats. */
export function figuresOf(base: Sums, density: number, placed: readonly Placed[]): Figures {
  let { mass, mx, mz, volume, vx, vz } = base;
  for (const { seat } of placed) {
    mass += seat.mass;
    mx += seat.mass * seat.x;
    mz += seat.mass * seat.z;
    volume += seat.displaced;
    vx += seat.displaced * seat.x;
    vz += seat.displaced * seat.z;
  }
  const x = vx / volume - mx / mass;
  const z = vz / volume - mz / mass;
  return { net: density * volume - mass, trim: atan2(x, z), BG: hypot(x, z) };
}

/** Misfit in net and trim, each divided by its tolerance. */
export const misfitOf = (goal: Goal, net: number, trim: number | null): number =>
  hypot(
    (net - goal.net) / goal.netTolerance,
    goal.trim === null ? 0 : (trim === null ? Math.PI : wrap(trim - goal.trim)) / goal.trimTolerance,
  );

/** True where each figure is within the target and the belly is down. */
export const fits = (goal: Goal, { net, trim, BG }: Figures): boolean =>
  Math.abs(net - goal.net) <= goal.netTolerance &&
  (goal.trim === null ? cos(trim) > 0 : Math.abs(wrap(trim - goal.trim)) <= goal.trimTolerance) &&
  BG >= goal.leastBG;
