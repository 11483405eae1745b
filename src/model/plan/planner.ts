import { cos, sin, square } from "../base";
import { assemble, MID } from "../bait";
import type { Bait, BaitSpec, BallSide } from "../bait";
import { floating, hasBalls, LEAST_BG, restTrim, sideAt } from "../statics";
import { chanceOf, spreadWithout, SURE_TRIM, Z95 } from "./chance";
import { Choices } from "./choices";
import type { Choice } from "./choices";
import { axesAt, fits, misfitOf } from "./goal";
import type { Goal, Sums } from "./goal";
import { Placing } from "./place";
import type { Found } from "./place";
import { compareRanks, Ranking } from "./rank";
import type { Rank } from "./rank";
import { loadsOf } from "./seats";
import type { PlanSettings, SeatedKinds } from "./seats";
import type { Plan, PlanKind, PlanOptions, PlanTarget, PlanZone } from "./types";
import { holeOf, withPlan } from "./with";

/** Defaults of places, pieces, grids and draws; common practice, no source. */
const DEFAULTS = {
  places: 3,
  pieces: 6,
  stationStep: 0.5e-3,
  heightStep: 0.1e-3,
  plans: 5,
  samples: 2000,
};
/** Of the choices with three places, this many have their seats tried: those with the best bounds. Chosen for speed. */
const THREES = 600;

/** A choice with its seats, and its linearised rank. */
interface Made {
  readonly choice: Choice;
  readonly found: Found;
  readonly rank: Rank;
}

function check(target: PlanTarget, zone: PlanZone, s: PlanSettings): void {
  const above0 = (what: string, v: number): void => {
    if (!(Number.isFinite(v) && v > 0)) throw new RangeError(`${what} ${v}: give a number above 0`);
  };
  above0("tolerance of net buoyancy", target.netTolerance);
  if (target.trim !== null) above0("tolerance of trim", target.trimTolerance);
  above0("grid of stations", s.stationStep);
  above0("steps of a plug's length", s.heightStep);
  if (target.leastBG !== null && !(target.leastBG >= 0))
    throw new RangeError(`least BG ${target.leastBG} m: give 0 or more`);
  if (!(zone.wall >= 0 && zone.clearance >= 0))
    throw new RangeError(`wall ${zone.wall} m and clearance ${zone.clearance} m: give 0 or more`);
  if (!(zone.to >= zone.from))
    throw new RangeError(`zone from ${zone.from} to ${zone.to} m: the second must not be less`);
  if (!(s.filler >= 0)) throw new RangeError(`filler density ${s.filler} kg/m³: give 0 or more`);
  for (const [what, v, least, most] of [
    ["places", s.places, 1, 3],
    ["pieces in one place", s.pieces, 1, 100],
    ["plans", s.plans, 1, 100],
    ["draws", s.samples, 100, 1e6],
  ] as const)
    if (!(Number.isInteger(v) && v >= least && v <= most))
      throw new RangeError(`${what} ${v}: give a whole number from ${least} to ${most}`);
}

/** Sums of the bait without the plan's loads, the balls on a side. */
function sumsOf(bait: Bait, side: BallSide): Sums {
  const { mass, G, displaced, B } = bait.rigid(side);
  return {
    mass,
    mx: mass * G.x,
    mz: mass * G.z,
    volume: displaced,
    vx: displaced * B.x,
    vz: displaced * B.z,
  };
}

/** Sides on which the loose balls may lie at the wanted trim. */
function sidesFor(bait: Bait, target: PlanTarget): BallSide[] {
  if (!hasBalls(bait)) return [MID];
  if (target.trim === null) return [restTrim(bait).side];
  const low = sideAt(target.trim - target.trimTolerance);
  const high = sideAt(target.trim + target.trimTolerance);
  return low.end === high.end && low.face === high.face ? [low] : [low, high];
}

/** One question for plans while it is worked out. */
export class Planner {
  readonly settings: PlanSettings;
  readonly bait: Bait;
  readonly goal: Goal;
  readonly seated: SeatedKinds;
  readonly choices: Choices;
  readonly bases: readonly Sums[];
  readonly ranking: Ranking;
  /** Pull that the target asks for, kg. */
  readonly needed: number;
  /** BG at which the trim's 95 % band is ±15°, with ballast of this mass in one place, m. */
  readonly ownBG: number;

  constructor(
    spec: BaitSpec,
    density: number,
    readonly target: PlanTarget,
    readonly kinds: readonly PlanKind[],
    readonly zone: PlanZone,
    options: PlanOptions,
    /** Seats above the lowest are looked at too. */
    higher = false,
  ) {
    const settings = { ...DEFAULTS, ...options };
    this.settings = settings;
    check(target, zone, settings);
    const bait = assemble(spec);
    this.bait = bait;
    this.goal = { density, ...target, leastBG: target.leastBG ?? 0, clearance: zone.clearance };
    this.seated = loadsOf(bait, density, kinds, zone, settings, higher);
    this.bases = sidesFor(bait, target).map((side) => sumsOf(bait, side));
    const base = this.base;
    this.needed = density * base.volume - base.mass - target.net;
    this.choices = new Choices(this.seated.loads, kinds, this.needed, settings.places);
    const axes = axesAt(target.trim);
    const lowest = this.seated.loads
      .flatMap((l) => l.seats)
      .reduce<{ x: number; z: number } | null>((a, b) => (a === null || b.z < a.z ? b : a), null);
    const spread = spreadWithout(bait, density, this.needed, lowest, axes);
    const body = { filler: settings.filler, density: bait.bodyDensity };
    this.ranking = new Ranking(
      base,
      this.goal,
      axes,
      spread,
      body,
      spec.uncertainty,
      this.bases.length === 1,
    );
    const share = Math.max(0, this.needed) / (base.mass + Math.max(0, this.needed));
    const place = square(spec.uncertainty.drawnLength * share);
    this.ownBG = Math.max(LEAST_BG, (Z95 * Math.sqrt(spread.pp + place) * cos(SURE_TRIM)) / sin(SURE_TRIM));
  }

  get base(): Sums {
    const [first] = this.bases;
    if (!first) throw new Error("no side for the loose balls");
    return first;
  }

  /** The best seats of a choice for a goal, with the figures of the whole bait. Null: there are none. */
  place(choice: Choice, placings: readonly Placing[]): Found | null {
    const spread = this.ranking.spreadAhead(choice.loads);
    let best: Found | null = null;
    for (const one of placings) {
      const found = one.best(choice.loads, spread);
      if (found && (!best || found.score > best.score)) best = found;
    }
    if (!best || !hasBalls(this.bait)) return best;
    // With loose balls the rest trim depends on where they roll: only the whole bait's own figures count.
    const rest = restTrim(this.build(best));
    if (rest.pitch === null) return null;
    const { goal } = placings[0] as Placing;
    const whole = { ...best, trim: rest.pitch, BG: rest.BG, misfit: misfitOf(goal, best.net, rest.pitch) };
    return fits(goal, whole) ? whole : null;
  }

  placings(goal: Goal, aim: Placing["aim"]): Placing[] {
    return this.bases.map((base) => new Placing(base, goal, this.ranking.axes, aim));
  }

  /** The bait with loads at seats; the body is as the bench found it before. */
  build(found: Pick<Found, "placed">): Bait {
    const { bait } = this;
    return assemble(withPlan(bait, found.placed, this.kinds, this.settings.filler), {
      drawn: bait.drawn,
      found: { bodyDensity: bait.bodyDensity, volumeFactor: bait.volumeFactor },
    });
  }

  /**
   * The best choices by linearised errors. Choices are opened in the order of the best rank that each can have.
   *
   * @param floor least BG, m, beyond what the target asks for
   */
  search(most: number, floor = 0): Made[] {
    const made = new Map<string, Made>();
    const kept = (): Made[] => [...made.values()].sort((a, b) => compareRanks(a.rank, b.rank)).slice(0, most);
    const goal = { ...this.goal, leastBG: Math.max(this.goal.leastBG, floor) };
    const placings = this.placings(goal, "chance");
    const open = this.choices
      .within(this.goal.netTolerance)
      .map((choice) => ({ choice, bound: this.ranking.bound(choice) }))
      .sort((a, b) => compareRanks(a.bound, b.bound));
    let last: Rank | null = null;
    let threes = 0;
    for (const { choice, bound } of open) {
      if (last && compareRanks(bound, last) >= 0) break;
      if (choice.loads.length === 3 && ++threes > THREES) continue;
      const found = this.place(choice, placings);
      if (!found) continue;
      const rank = this.ranking.rank(choice, found);
      const before = made.get(choice.signature);
      if (before && compareRanks(before.rank, rank) <= 0) continue;
      made.set(choice.signature, { choice, found, rank });
      if (made.size >= most) last = kept()[most - 1]?.rank ?? null;
    }
    return kept();
  }

  /** A plan whose every figure is that of the whole bait. */
  finish(choice: Choice, found: Found): Plan {
    const whole = this.build(found);
    const { density } = this.goal;
    const rest = restTrim(whole);
    const { mass, displaced } = whole.rigid(rest.side);
    const net = density * displaced - mass;
    const GM = net > 0 ? (floating(whole, density)?.GM ?? null) : null;
    const asked = this.target.trimGuides === true ? { ...this.goal, trim: null } : this.goal;
    // The bench readings are reconciled again: a body that was weighed is better known.
    const sure = chanceOf(assemble(whole.spec, { drawn: this.bait.drawn }), asked, this.settings.samples);
    const right = rest.pitch !== null && fits(this.goal, { net, trim: rest.pitch, BG: rest.BG });
    return {
      loads: found.placed.map(({ load, seat }) => {
        const kind = this.kinds[load.kind];
        return {
          kind: load.kind,
          name: kind?.name ?? "",
          count: load.count,
          mass: load.count * (kind?.mass ?? 0),
          where: load.where,
          at: { x: seat.x, z: seat.z },
          hole: seat.bore ? holeOf(this.bait, seat, seat.bore, load, this.settings.filler) : null,
        };
      }),
      leadFree: !choice.lead,
      weighed: choice.weighed,
      holes: found.placed.filter(({ seat }) => seat.bore !== null).length,
      pieces: choice.pieces,
      net,
      trim: rest.pitch,
      BG: rest.BG,
      GM,
      misfit: misfitOf(this.goal, net, rest.pitch),
      fits: right && (GM === null || GM > 0),
      sure,
      spec: whole.spec,
    };
  }
}
