import { atan2, hypot } from "../base";
import { linearChance } from "./chance";
import type { Spread } from "./chance";
import { figuresOf, fits, misfitOf } from "./goal";
import type { Axes, Figures, Goal, Placed, Sums } from "./goal";
import type { Load, Seat } from "./seats";

/** A choice of loads at its best seats, and the figures there. */
export interface Found extends Figures {
  readonly placed: readonly Placed[];
  readonly misfit: number;
  /** The value by which the seats were chosen: the greatest is best. */
  readonly score: number;
}

/**
 * By which value the seats of a choice are chosen, among those that meet the goal: the linearised chance to meet it, the
 * greatest BG, or the trim nearest to the wanted one.
 */
export type Aim = "chance" | "BG" | "trim";

/** Seats tried on either side of the one that gives the wanted trim. */
const BESIDE = 3;
/** Seats of the first two of three loads that are tried at first, each. Chosen for speed. */
const COARSE = 24;
/** Steps of the grid by which the coarse result is then moved, as long as a move makes it better. */
const MOVES = [1, -1, 3, -3] as const;

/** Puts the loads of choices at their seats. */
export class Placing {
  readonly #placed: Placed[] = [];
  #best: Found | null = null;
  #spread: Spread | null = null;

  constructor(
    readonly base: Sums,
    readonly goal: Goal,
    readonly axes: Axes,
    readonly aim: Aim,
  ) {}

  /**
   * The best seats of a choice; null where none meet the goal.
   *
   * - One load: every seat is looked at.
   * - Two loads: every seat of the heavier one. For each of them, the lighter one stands where the trim comes nearest to
   *   the wanted one, or up to three clear seats to either side.
   * - Three loads: the first two have up to 24 seats each, and the last is placed as above. The best result is then moved
   *   seat by seat until no move makes it better.
   *
   * Where any trim is allowed, the last load takes its three lowest clear seats instead.
   */
  best(loads: readonly Load[], spread: Spread): Found | null {
    this.#best = null;
    this.#spread = spread;
    this.#placed.length = 0;
    // The last load sets the trim: the lightest does it most finely.
    const order = [...loads].sort((a, b) => b.leastPull - a.leastPull);
    const last = order[order.length - 1];
    if (!last) {
      this.#offer();
      return this.#best;
    }
    const first = order.slice(0, -1);
    const stride = first.length < 2 ? 1 : 0;
    this.#descend(first, last, 0, stride);
    if (first.length === 2) this.#refine(first, last);
    return this.#best;
  }

  #descend(first: readonly Load[], last: Load, level: number, stride: number): void {
    const load = first[level];
    if (!load) {
      this.#close(last);
      return;
    }
    const step = stride || Math.max(1, Math.ceil(load.seats.length / COARSE));
    for (let i = 0; i < load.seats.length; i += step) {
      const seat = load.seats[i] as Seat;
      if (!this.#clear(load, seat)) continue;
      this.#placed.push({ load, seat });
      this.#descend(first, last, level + 1, stride);
      this.#placed.pop();
    }
  }

  /** Moves the first two loads of the best result seat by seat; the last one follows. */
  #refine(first: readonly Load[], last: Load): void {
    for (let better = this.#best !== null; better;) {
      better = false;
      const at = this.#best;
      if (!at) return;
      const seats = first.map((load, i) => load.seats.indexOf((at.placed[i] as Placed).seat));
      for (let k = 0; k < first.length; k++)
        for (const move of MOVES) {
          const moved = seats.map((s, i) => s + (i === k ? move : 0));
          const score: number = this.#best?.score ?? -Infinity;
          this.#placed.length = 0;
          const there = first.every((load, i) => {
            const seat = load.seats[moved[i] ?? -1];
            if (!seat || !this.#clear(load, seat)) return false;
            this.#placed.push({ load, seat });
            return true;
          });
          if (there) this.#close(last);
          if ((this.#best?.score ?? -Infinity) > score + 1e-12) better = true;
        }
      this.#placed.length = 0;
    }
  }

  #clear(load: Load, seat: Seat): boolean {
    for (const other of this.#placed)
      if (Math.abs(other.seat.x - seat.x) < load.half + other.load.half + this.goal.clearance - 1e-12)
        return false;
    return true;
  }

  /** Puts the last load at its most promising seats, while the others stay where they are. */
  #close(last: Load): void {
    const { seats } = last;
    if (this.goal.trim === null) {
      let left = BESIDE;
      for (const seat of lowestFirst(last)) {
        if (!this.#clear(last, seat)) continue;
        this.#try(last, seat);
        if (--left === 0) return;
      }
      return;
    }
    // Seats are listed from nose to tail. A weight further aft turns the nose up, so P rises: bisect for P = 0.
    const across = this.#acrossWith();
    let lo = 0;
    let hi = seats.length;
    while (lo < hi) {
      const mid = (lo + hi) >> 1;
      if (across(seats[mid] as Seat) < 0) lo = mid + 1;
      else hi = mid;
    }
    for (const way of [1, -1]) {
      let left = BESIDE;
      for (let i = way > 0 ? lo : lo - 1; i >= 0 && i < seats.length && left > 0; i += way) {
        const seat = seats[i] as Seat;
        if (!this.#clear(last, seat)) continue;
        this.#try(last, seat);
        left--;
      }
    }
  }

  /** P of B − G as a function of the last load's seat. */
  #acrossWith(): (seat: Seat) => number {
    let { mass, mx, mz, volume, vx, vz } = this.base;
    for (const { seat } of this.#placed) {
      mass += seat.mass;
      mx += seat.mass * seat.x;
      mz += seat.mass * seat.z;
      volume += seat.displaced;
      vx += seat.displaced * seat.x;
      vz += seat.displaced * seat.z;
    }
    const { cos, sin } = this.axes;
    return (seat) => {
      const m = mass + seat.mass;
      const V = volume + seat.displaced;
      const x = (vx + seat.displaced * seat.x) / V - (mx + seat.mass * seat.x) / m;
      const z = (vz + seat.displaced * seat.z) / V - (mz + seat.mass * seat.z) / m;
      return x * cos - z * sin;
    };
  }

  #try(load: Load, seat: Seat): void {
    this.#placed.push({ load, seat });
    this.#offer();
    this.#placed.pop();
  }

  #offer(): void {
    const { base, goal, axes, aim } = this;
    let { mass, mx, mz, volume, vx, vz } = base;
    for (const { seat } of this.#placed) {
      mass += seat.mass;
      mx += seat.mass * seat.x;
      mz += seat.mass * seat.z;
      volume += seat.displaced;
      vx += seat.displaced * seat.x;
      vz += seat.displaced * seat.z;
    }
    const net = goal.density * volume - mass;
    if (Math.abs(net - goal.net) > goal.netTolerance) return;
    const x = vx / volume - mx / mass;
    const z = vz / volume - mz / mass;
    const across = x * axes.cos - z * axes.sin;
    const along = x * axes.sin + z * axes.cos;
    const off = Math.abs(atan2(across, along));
    if (goal.trim === null ? z <= 0 : off > goal.trimTolerance) return;
    if (hypot(x, z) < goal.leastBG) return;
    const spread = this.#spread;
    if (!spread) return;
    const score =
      aim === "trim"
        ? -off
        : aim === "BG"
          ? along
          : // Of equal chances (all but certain ones are alike) the greater BG: 1e-3 of the chance for each mm.
            linearChance(goal, spread, net, across, along) + along;
    if (this.#best && score <= this.#best.score) return;
    const figures = figuresOf(base, goal.density, this.#placed);
    // Round-off at the very edge of a tolerance: the figures themselves decide.
    if (!fits(goal, figures)) return;
    this.#best = { ...figures, placed: [...this.#placed], misfit: misfitOf(goal, net, figures.trim), score };
  }
}

const lowest = new WeakMap<Load, readonly Seat[]>();
/** The seats of a load, the lowest first. */
function lowestFirst(load: Load): readonly Seat[] {
  let seats = lowest.get(load);
  if (!seats) lowest.set(load, (seats = [...load.seats].sort((a, b) => a.z - b.z)));
  return seats;
}
