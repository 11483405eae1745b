import { log } from "../base";
import { linearChance, SURE_TRIM, withLoads, Z95 } from "./chance";
import type { Spread } from "./chance";
import type { Choice } from "./choices";
import type { Axes, Goal, Sums } from "./goal";
import type { Found } from "./place";
import type { Load } from "./seats";

/**
 * What plans are ordered by, the least first: a trim that is sure to ±15° before one that is not; lead-free; the chance to
 * meet the target in steps of a twentieth; weighed pieces before unweighed ones; fewer places; fewer pieces; the chance
 * itself.
 */
export type Rank = readonly [
  unsure: number,
  lead: number,
  chance: number,
  unweighed: number,
  places: number,
  pieces: number,
  exactly: number,
];

/** Two chances count as equal where they differ by less than a twentieth of themselves. */
const ALIKE = 0.05;
/** All chances below this count as equal. */
const HOPELESS = 1e-9;
/** A linearised band may be at most this share of ±15°, so that the drawn band stays within ±15°. */
const CAREFUL = 0.97;
const step = (chance: number): number => Math.ceil(-log(Math.max(chance, HOPELESS)) / ALIKE - 1e-9);

export const rankOf = (
  choice: Pick<Choice, "lead" | "weighed" | "pieces" | "loads">,
  chance: number,
  trimHalfWidth: number,
): Rank => [
  trimHalfWidth <= SURE_TRIM ? 0 : 1,
  choice.lead ? 1 : 0,
  step(chance),
  choice.weighed ? 0 : 1,
  choice.loads.length,
  choice.pieces,
  -chance,
];

export function compareRanks(a: Rank, b: Rank): number {
  for (let i = 0; i < a.length; i++) {
    const d = (a[i] as number) - (b[i] as number);
    if (d !== 0) return d;
  }
  return 0;
}

/** What a load can bring, whatever its seat. */
interface Ends {
  readonly mass: number;
  readonly displaced: number;
  /** Ends of its seats' places, in axes at the wanted trim, m. */
  readonly acrossLeast: number;
  readonly acrossMost: number;
  readonly alongLeast: number;
  readonly alongMost: number;
}

/** Bounds and linearised chances of choices, for one bait, target and box. */
export class Ranking {
  readonly #ends = new Map<Load, Ends>();

  constructor(
    readonly base: Sums,
    readonly goal: Goal,
    readonly axes: Axes,
    /** Of everything but the plan's loads. */
    readonly spread: Spread,
    readonly body: { readonly filler: number; readonly density: number },
    readonly uncertainty: Parameters<typeof withLoads>[5],
    /** False where the base is one of several (loose balls at either end): then the trim gives no bound. */
    readonly bounded: boolean,
  ) {}

  /** The spread of the finished bait with a choice's loads. */
  spreadOf(placed: Parameters<typeof withLoads>[1]): Spread {
    const mass = placed.reduce((m, p) => m + p.seat.mass, this.base.mass);
    return withLoads(this.spread, placed, mass, this.body.filler, this.body.density, this.uncertainty);
  }

  /** The spread of a choice before its seats are known. */
  spreadAhead(loads: readonly Load[]): Spread {
    return this.spreadOf(loads.flatMap((load) => (load.seats[0] ? [{ load, seat: load.seats[0] }] : [])));
  }

  #endsOf(load: Load): Ends {
    let ends = this.#ends.get(load);
    if (ends) return ends;
    const { cos, sin } = this.axes;
    let [acrossLeast, acrossMost, alongLeast, alongMost] = [Infinity, -Infinity, Infinity, -Infinity];
    for (const { x, z } of load.seats) {
      const across = x * cos - z * sin;
      const along = x * sin + z * cos;
      acrossLeast = Math.min(acrossLeast, across);
      acrossMost = Math.max(acrossMost, across);
      alongLeast = Math.min(alongLeast, along);
      alongMost = Math.max(alongMost, along);
    }
    const { mass, displaced } = load.seats[0] ?? { mass: 0, displaced: 0 };
    ends = { mass, displaced, acrossLeast, acrossMost, alongLeast, alongMost };
    this.#ends.set(load, ends);
    return ends;
  }

  /** The best rank that a choice can have: net as near as its pulls allow, and every load where it is best for trim and BG. */
  bound(choice: Choice): Rank {
    const { base, goal, axes } = this;
    const all = choice.loads.map((l) => this.#endsOf(l));
    const mass = all.reduce((m, e) => m + e.mass, base.mass);
    const volume = all.reduce((v, e) => v + e.displaced, base.volume);
    const bx = base.vx / volume - base.mx / mass;
    const bz = base.vz / volume - base.mz / mass;
    let low = bx * axes.cos - bz * axes.sin;
    let high = low;
    let along = bx * axes.sin + bz * axes.cos;
    for (const e of all) {
      const share = e.displaced / volume - e.mass / mass;
      low += Math.min(share * e.acrossLeast, share * e.acrossMost);
      high += Math.max(share * e.acrossLeast, share * e.acrossMost);
      along += Math.max(share * e.alongLeast, share * e.alongMost);
    }
    const across = !this.bounded || (low <= 0 && high >= 0) ? 0 : low > 0 ? low : -high;
    const spread = this.spreadAhead(choice.loads);
    const chance = linearChance(goal, spread, goal.net + choice.off, across, along);
    return rankOf(choice, chance, halfWidth(spread, along) / CAREFUL);
  }

  /** The rank of a choice at its seats, linearised. */
  rank(choice: Choice, found: Found): Rank {
    const spread = this.spreadOf(found.placed);
    return rankOf(choice, found.score - found.BG, halfWidth(spread, found.BG) / CAREFUL);
  }
}

/** Half the width of the trim's 95 % band, linearised, rad. */
const halfWidth = (s: Spread, BG: number): number => (BG > 0 ? (Z95 * Math.sqrt(s.pp)) / BG : Infinity);
