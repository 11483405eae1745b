import type { Load } from "./seats";
import type { PlanKind } from "./types";

/** A choice of loads whose net buoyancy is in reach of what is wanted. */
export interface Choice {
  readonly loads: readonly Load[];
  readonly pieces: number;
  readonly lead: boolean;
  /** All its kinds were weighed. */
  readonly weighed: boolean;
  /** Least difference between its pull and what is needed, over all its seats, kg. */
  readonly off: number;
  /** Kinds, counts and sides, whatever their order. */
  readonly signature: string;
}

/**
 * All choices of up to three loads from a box. A load's pull is what it takes off the net buoyancy. The loads are sorted by
 * pull, and the last load of a choice is found by bisection (Horowitz & Sahni 1974, J. ACM 21:277–292, meet in the middle).
 * The pull of a load differs a little from seat to seat, because a longer hole holds more filler: so each load has a span
 * of pulls.
 */
export class Choices {
  readonly #sorted: readonly Load[];
  /** Widest span of any load's pull, kg. */
  readonly #widest: number;

  /** @param needed what the loads are to take off the net buoyancy, kg */
  constructor(
    readonly loads: readonly Load[],
    readonly kinds: readonly PlanKind[],
    readonly needed: number,
    readonly places: number,
  ) {
    this.#sorted = [...loads].sort((a, b) => a.leastPull - b.leastPull);
    this.#widest = loads.reduce((w, l) => Math.max(w, l.mostPull - l.leastPull), 0);
  }

  /** Are there enough pieces of every kind? */
  #atHand(loads: readonly Load[]): boolean {
    for (const a of loads) {
      let wanted = 0;
      for (const b of loads) if (b.kind === a.kind) wanted += b.count;
      if (wanted > (this.kinds[a.kind]?.count ?? 0)) return false;
    }
    return true;
  }

  /** Calls back with every choice whose pull can be within `window` of what is needed. */
  #each(window: number, use: (loads: readonly Load[], least: number, most: number) => void): void {
    const list = this.#sorted;
    const low = this.needed - window;
    const high = this.needed + window;
    if (low <= 0 && high >= 0) use([], 0, 0);
    const close = (before: readonly Load[], from: number, least: number, most: number): void => {
      for (let i = Math.max(from, lowerBound(list, low - most - this.#widest)); i < list.length; i++) {
        const c = list[i] as Load;
        if (least + c.leastPull > high) return;
        if (most + c.mostPull < low) continue;
        const loads = [...before, c];
        if (this.#atHand(loads)) use(loads, least + c.leastPull, most + c.mostPull);
      }
    };
    close([], 0, 0, 0);
    if (this.places < 2) return;
    list.forEach((a, i) => {
      close([a], i, a.leastPull, a.mostPull);
    });
    if (this.places < 3) return;
    list.forEach((a, i) => {
      for (let j = i; j < list.length; j++) {
        const b = list[j] as Load;
        if (a.leastPull + 2 * b.leastPull > high) return;
        if (this.#atHand([a, b])) close([a, b], j, a.leastPull + b.leastPull, a.mostPull + b.mostPull);
      }
    });
  }

  /** Choices whose net buoyancy can be within `window` (kg) of the target. */
  within(window: number): Choice[] {
    const out: Choice[] = [];
    this.#each(window, (loads, least, most) => {
      out.push({
        loads,
        pieces: loads.reduce((n, c) => n + c.count, 0),
        lead: loads.some((c) => this.kinds[c.kind]?.lead === true),
        weighed: loads.every((c) => this.kinds[c.kind]?.weighed === true),
        off: Math.max(0, least - this.needed, this.needed - most),
        signature: loads
          .map((c) => `${c.kind} ${c.count} ${c.where}`)
          .sort()
          .join("; "),
      });
    });
    return out;
  }

  /**
   * Least difference between any choice's pull and what is needed, kg. With nothing to choose from: that of the bait as it
   * is.
   */
  closest(from: number): number {
    let best = Infinity;
    // The empty choice is always there, so that the window finds something once it is wide enough.
    for (let window = from, k = 0; k < 60 && best === Infinity; k++, window *= 4)
      this.#each(window, (_, least, most) => {
        best = Math.min(best, Math.max(0, least - this.needed, this.needed - most));
      });
    return best;
  }

  /** Greatest pull that the box can give within the places, kg. */
  greatest(): number {
    let most = 0;
    const list = [...this.loads].sort((a, b) => b.mostPull - a.mostPull);
    const go = (before: readonly Load[], from: number, sum: number): void => {
      most = Math.max(most, sum);
      if (before.length >= this.places) return;
      for (let i = from; i < list.length; i++) {
        const c = list[i] as Load;
        if (sum + (this.places - before.length) * c.mostPull <= most) return;
        const loads = [...before, c];
        if (this.#atHand(loads)) go(loads, i, sum + c.mostPull);
      }
    };
    go([], 0, 0);
    return most;
  }
}

/** First place in a list sorted by least pull whose least pull is not below `value`. */
function lowerBound(list: readonly Load[], value: number): number {
  let lo = 0;
  let hi = list.length;
  while (lo < hi) {
    const mid = (lo + hi) >> 1;
    if ((list[mid] as Load).leastPull < value) lo = mid + 1;
    else hi = mid;
  }
  return lo;
}
