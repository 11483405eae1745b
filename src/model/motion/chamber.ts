import type { Random, Vec } from "../base";
import type { Bait, BallSide, ChamberSpec } from "../bait";

/** At the start balls lie apart by a random share of their diameter, up to this: no two sets of balls lie exactly alike. */
const START_GAP = 0.1;

/** A loose ball and where it starts. Body frame, m, kg. */
export interface LooseBall {
  readonly chamber: number;
  /** Balls side by side across the chamber roll in lanes of their own: only balls of one lane meet. */
  readonly lane: number;
  readonly diameter: number;
  readonly mass: number;
  readonly start: Vec;
}

/** Lanes across a chamber: ⌊wide/d⌋ balls lie side by side (a quotient that is whole but for round-off counts as whole). */
const lanesOf = (chamber: ChamberSpec, diameter: number): number =>
  Math.max(1, Math.floor(chamber.wide / diameter + 1e-9));

/**
 * The loose balls of all chambers, in the order of `bait.balls`: packed at the given side. Where the chamber leaves
 * room, the ranks lie a small random distance apart.
 */
export function looseBalls(bait: Bait, side: BallSide, chance: Random): LooseBall[] {
  const centres = bait.balls(side).map(({ at }) => at);
  const found: LooseBall[] = [];
  bait.spec.chambers.forEach((chamber, index) => {
    const { balls } = chamber;
    if (balls === null) return;
    const { count, diameter, stuff } = balls;
    const mass = (stuff.density * Math.PI * diameter * diameter * diameter) / 6;
    const lanes = lanesOf(chamber, diameter);
    const ranks = Math.max(1, Math.floor((chamber.to - chamber.from) / diameter + 1e-9));
    const used = Math.min(ranks, Math.ceil(count / lanes));
    const room = chamber.to - chamber.from - used * diameter;
    // Gaps before each rank, away from the lower end; ranks of an upper layer lie over the lower ones.
    const gap = Math.max(0, Math.min(START_GAP * diameter, room / used));
    const shifts: number[] = [];
    let shift = 0;
    for (let rank = 0; rank < used; rank++) shifts.push((shift += gap * chance.uniform()));
    const away = side.end === "nose" ? -1 : 1;
    for (let i = 0; i < count; i++) {
      const centre = centres[found.length];
      if (centre === undefined) throw new RangeError(`${bait.spec.name}: ball ${found.length} has no place`);
      const rank = Math.floor(i / lanes) % ranks;
      found.push({
        chamber: index,
        lane: i % lanes,
        diameter,
        mass,
        start: { x: centre.x + away * (shifts[rank] ?? 0), z: centre.z },
      });
    }
  });
  return found;
}
