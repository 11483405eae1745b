import type { Base, Candidate, SearchTarget } from "./plan-search";
import type { PlanKind } from "./plan-types";

/** A choice of loads whose net buoyancy is in reach of the target. */
export interface Choice {
  readonly loads: readonly Candidate[];
  readonly pieces: number;
  /** No seats can give less misfit. */
  readonly least: number;
  /** Kinds, counts and sides, whatever their order and height. */
  readonly signature: string;
}

/** Ends of what a candidate's seats give in axes at the wanted trim. */
interface Reach {
  readonly acrossLeast: number;
  readonly acrossMost: number;
  readonly alongLeast: number;
  readonly alongMost: number;
}

/**
 * All choices of up to three loads from a box, by the sum of what they take off the net buoyancy: candidates sorted by pull,
 * the last of a choice looked up by bisection (Horowitz & Sahni 1974, J. ACM 21:277–292, meet in the middle).
 */
export class Selections {
  readonly #sorted: readonly Candidate[];
  readonly #reach: ReadonlyMap<Candidate, Reach>;
  /** Pull that the target asks for, kg. */
  readonly needed: number;

  constructor(
    readonly candidates: readonly Candidate[],
    readonly kinds: readonly PlanKind[],
    readonly base: Base,
    readonly target: SearchTarget,
    readonly places: number,
    /** False where the base is one of several (loose balls at either end): then the trim bounds nothing. */
    readonly bounded: boolean,
  ) {
    this.#sorted = [...candidates].sort((a, b) => a.pull - b.pull);
    this.needed = target.density * base.volume - base.mass - target.net;
    const cos = Math.cos(target.trim ?? 0);
    const sin = Math.sin(target.trim ?? 0);
    this.#reach = new Map(
      candidates.map((c) => {
        const reach = {
          acrossLeast: Infinity,
          acrossMost: -Infinity,
          alongLeast: Infinity,
          alongMost: -Infinity,
        };
        for (const { x, z } of c.seats) {
          const across = x * cos - z * sin;
          const along = x * sin + z * cos;
          reach.acrossLeast = Math.min(reach.acrossLeast, across);
          reach.acrossMost = Math.max(reach.acrossMost, across);
          reach.alongLeast = Math.min(reach.alongLeast, along);
          reach.alongMost = Math.max(reach.alongMost, along);
        }
        return [c, reach];
      }),
    );
  }

  /** Enough pieces of every kind? */
  #atHand(loads: readonly Candidate[]): boolean {
    for (const a of loads) {
      let wanted = 0;
      for (const b of loads) if (b.kind === a.kind) wanted += b.count;
      if (wanted > (this.kinds[a.kind]?.count ?? 0)) return false;
    }
    return true;
  }

  /** Calls back with every choice whose pull is within `window` of what is needed, places in use rising. */
  #each(window: number, use: (loads: readonly Candidate[], pull: number) => void): void {
    const list = this.#sorted;
    const low = this.needed - window;
    const high = this.needed + window;
    if (low <= 0 && high >= 0) use([], 0);
    const close = (before: readonly Candidate[], from: number, sum: number): void => {
      for (let i = Math.max(from, lowerBound(list, low - sum)); i < list.length; i++) {
        const c = list[i] as Candidate;
        if (sum + c.pull > high) return;
        const loads = [...before, c];
        if (this.#atHand(loads)) use(loads, sum + c.pull);
      }
    };
    close([], 0, 0);
    if (this.places < 2) return;
    list.forEach((a, i) => {
      close([a], i, a.pull);
    });
    if (this.places < 3) return;
    list.forEach((a, i) => {
      for (let j = i; j < list.length; j++) {
        const b = list[j] as Candidate;
        if (this.#atHand([a, b])) close([a, b], j, a.pull + b.pull);
      }
    });
  }

  /**
   * Choices whose net buoyancy is within `window` (kg) of the target.
   *
   * @param lead true: those with lead in them; false: those without
   */
  within(window: number, lead: boolean): Choice[] {
    const out: Choice[] = [];
    this.#each(window, (loads) => {
      if (loads.some((c) => this.kinds[c.kind]?.lead === true) !== lead) return;
      const least = this.#least(loads);
      out.push({
        loads,
        least,
        pieces: loads.reduce((n, c) => n + c.count, 0),
        signature: loads
          .map((c) => `${c.kind} ${c.count} ${c.where}`)
          .sort()
          .join("; "),
      });
    });
    return out;
  }

  /** Least distance of any choice's net buoyancy from the target, kg; null where there is nothing to choose from. */
  closest(): number | null {
    let best = Infinity;
    let window = this.target.netTolerance;
    // The empty choice is always there, so that the window finds something once it is wide enough.
    for (let k = 0; k < 60 && best === Infinity; k++, window *= 4)
      this.#each(window, (_, pull) => {
        best = Math.min(best, Math.abs(pull - this.needed));
      });
    return best === Infinity ? null : best;
  }

  /** Greatest pull that the box can give within the places, kg. */
  greatest(): number {
    let most = 0;
    const list = [...this.#sorted].reverse();
    const go = (before: readonly Candidate[], from: number, sum: number): void => {
      most = Math.max(most, sum);
      if (before.length >= this.places) return;
      for (let i = from; i < list.length; i++) {
        const c = list[i] as Candidate;
        if (sum + (this.places - before.length) * c.pull <= most) return;
        const loads = [...before, c];
        if (this.#atHand(loads)) go(loads, i, sum + c.pull);
      }
    };
    go([], 0, 0);
    return most;
  }

  /** A misfit that no seats can fall below: net exactly, trim by the ends of what each load's seats give. */
  #least(loads: readonly Candidate[]): number {
    const { base, target } = this;
    let { mass, volume } = base;
    for (const c of loads) {
      mass += c.mass;
      volume += c.displaced;
    }
    const off = (target.density * volume - mass - target.net) / target.netTolerance;
    if (target.trim === null) return Math.abs(off);
    const cos = Math.cos(target.trim);
    const sin = Math.sin(target.trim);
    const bx = base.vx / volume - base.mx / mass;
    const bz = base.vz / volume - base.mz / mass;
    let low = bx * cos - bz * sin;
    let high = low;
    let along = bx * sin + bz * cos;
    for (const c of loads) {
      const share = c.displaced / volume - c.mass / mass;
      const r = this.#reach.get(c);
      if (!r) continue;
      low += Math.min(share * r.acrossLeast, share * r.acrossMost);
      high += Math.max(share * r.acrossLeast, share * r.acrossMost);
      along += Math.max(share * r.alongLeast, share * r.alongMost);
    }
    const across = low > 0 ? low : high < 0 ? -high : 0;
    return Math.hypot(off, (this.bounded ? Math.atan2(across, along) : 0) / target.trimTolerance);
  }
}

function lowerBound(list: readonly Candidate[], value: number): number {
  let lo = 0;
  let hi = list.length;
  while (lo < hi) {
    const mid = (lo + hi) >> 1;
    if ((list[mid] as Candidate).pull < value) lo = mid + 1;
    else hi = mid;
  }
  return lo;
}
