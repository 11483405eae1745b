import { brent } from "../base";
import type { SurfacePlane } from "../base";
import { MID } from "../bait";
import type { Bait, BallSide } from "../bait";
import { balance, Load } from "./balance";
import type { Balance } from "./balance";
import { cloudOf } from "./cloud";
import type { Cloud } from "./cloud";
import { draftOf } from "./draft";
import { metacentre } from "./metacentre";
import { hasBalls, restTrim, sideAt, wrap } from "./rest";
import type { Afloat, Floating, RestTrim } from "./types";
import { Wettable } from "./wet";
import type { Under } from "./wet";

/** Trims of the scan over the whole circle. */
const SCAN = 72;
const STEP = (2 * Math.PI) / SCAN;
/**
 * Lever, as a share of the length, below which the cloud is not trusted for its sign: the least of a fixed share and one of
 * the emergent share of the volume (what is wholly under is exact). Between two trims of the scan a wrong sign mostly moves a
 * root to the next cell; it loses a pair of roots that lie in one hollow, and at the end of a quarter any. Measured on 96
 * baits bent at random, 24 trims each: the cloud's error has a median of 4e-4 and is 2e-3 at 9 of 10, 1.2e-2 at most; as a
 * share of the emergent one 1.6e-3, 8e-3 and 6.4e-2.
 */
const CLOUD_DOUBT = { fixed: 2e-3, emergent: 0.07 };
const CLOUD_DOUBT_AT_END = { fixed: 1.5e-2, emergent: 0.15 };
/** Where a level is looked for next when all or nothing is under: so far in, as a share of the way to the other end. */
const NEAR_END = 0.04;
/** Share of the smaller volume, under or above, that may be missing for what is under to be put right to first order. */
const NEARLY = 0.1;
/** Share of the length above which a rough lever's sign is trusted. */
const ROUGH = 1e-3;
/** One side of the balls, ready to float. */
interface Side {
  readonly wet: Wettable;
  readonly cloud: Cloud;
}

/** What is under, nearly; `shift`: how much of the lever was put right to first order, m. */
interface Rough {
  readonly under: Under;
  readonly shift: number;
}

/** An equilibrium, and the side on which its balls lie. */
interface Root extends Balance {
  readonly side: Side;
}

/** A bait on the surface of a given water: held at any trim, or let go. */
export class Floater {
  readonly #sides = new Map<string, Side>();
  readonly #balls: boolean;
  #points: Cloud | null = null;
  /** What is under at trims of the scan, by the pitch as a share of a turn × 1e10. */
  readonly #rough = new Map<number, Rough>();
  readonly #load: Load;
  /** kg, above 0 floats. */
  readonly netBuoyancy: number;

  constructor(
    readonly bait: Bait,
    readonly density: number,
    readonly rest: RestTrim = restTrim(bait),
  ) {
    if (!(density > 0)) throw new RangeError(`water density ${density} kg/m³: give a number above 0`);
    const { mass, displaced } = bait.rigid(MID);
    this.#balls = hasBalls(bait);
    this.#load = new Load(mass / density, displaced);
    this.netBuoyancy = density * displaced - mass;
  }

  /** Volume that carries the bait, m³. */
  get needed(): number {
    return this.#load.needed;
  }

  get floats(): boolean {
    return this.netBuoyancy > 0;
  }

  #side(side: BallSide): Side {
    const key = `${side.end} ${side.face}`;
    let found = this.#sides.get(key);
    if (!found) {
      const wet = new Wettable(this.bait, side);
      // Balls displace nothing: one cloud serves all their sides.
      found = { wet, cloud: (this.#points ??= cloudOf(wet)) };
      this.#sides.set(key, found);
    }
    return found;
  }

  /** The balls' side at a pitch; one for all where nothing is loose. */
  #sideAt(pitch: number): Side {
    return this.#side(this.#balls ? sideAt(pitch) : MID);
  }

  /** The bait held at a trim (rad); null where it sinks. */
  at(pitch: number): Afloat | null {
    if (!this.floats) return null;
    const side = this.#sideAt(pitch);
    const { level, under } = this.#level(side, pitch);
    return this.#afloat(side, pitch, level, under);
  }

  /**
   * Level at which the force balances at a trim, by bracketing; Newton's and secant steps where they stay inside.
   * `within`: the greatest error in volume, as a share of the smaller volume, that under or that above.
   */
  #level(side: Side, pitch: number, guess?: number, within = 1e-13): { level: number; under: Under } {
    const { wet } = side;
    const load = this.#load;
    const sin = Math.sin(pitch);
    const cos = Math.cos(pitch);
    let { low, high } = wet.reach(sin, cos);
    let level = guess ?? this.#cloud(side, pitch).level;
    if (level >= high) level = high - NEAR_END * (high - low);
    else if (!(level > low)) level = low + NEAR_END * (high - low);
    const close = within * Math.min(this.#load.needed, this.#load.emergent) + 2e-15 * this.#load.total;
    let lastLevel = NaN;
    let lastExcess = NaN;
    for (let k = 0; k < 200; k++) {
      const under = wet.under({ sin, cos, level });
      // A straight piece that lies along the surface goes under all at once: then the bracket closes on that level.
      if (Math.abs(under.volume - this.#load.needed) <= close || high - low < 1e-15) return { level, under };
      const excess = load.excess(under.volume);
      if (excess < 0) low = level;
      else high = level;
      // Newton's step, then the secant's: what is missing in the slope of the coats' part does not slow that.
      const slope = k < 2 ? load.slope(under.volume, under.cut) : (excess - lastExcess) / (level - lastLevel);
      lastLevel = level;
      lastExcess = excess;
      level -= excess / slope;
      // With all or nothing under there is no slope: in from the end of the bracket, whose excess is small.
      if (!(level > low && level < high)) {
        const end = excess > 0 ? high : low;
        level = k < 3 ? end + NEAR_END * (low + high - 2 * end) : (low + high) / 2;
      } else if (k > 20) level = (low + high) / 2;
      if (level === lastLevel) return { level, under };
    }
    throw new Error(
      `no level found at a trim of ${pitch} rad: ${wet.always.volume} m³ always under, ${this.#load.needed} m³ needed`,
    );
  }

  #cloud(side: Side, pitch: number): { lever: number; level: number } {
    const { G } = side.wet.rigid;
    return side.cloud.at(Math.sin(pitch), Math.cos(pitch), this.#load.needed, G.x, G.z);
  }

  /** Righting lever X_B − X_G (m) at a trim, on the true geometry. */
  #lever(side: Side, pitch: number): number {
    const { under } = this.#level(side, pitch);
    return this.#leverOf(side, pitch, under);
  }

  #leverOf(side: Side, pitch: number, under: Under): number {
    const sin = Math.sin(pitch);
    const cos = Math.cos(pitch);
    const { G } = side.wet.rigid;
    return (under.x * cos - under.z * sin) / under.volume - (G.x * cos - G.z * sin);
  }

  /** Does the cloud leave a doubt about a lever's sign? */
  #doubtful(lever: number, doubt = CLOUD_DOUBT): boolean {
    const emergent = (doubt.emergent * this.#load.emergent) / this.#load.total + 1e-6;
    return Math.abs(lever) <= Math.min(doubt.fixed, emergent) * this.bait.shape.length;
  }

  /** Righting lever on the true geometry, near enough for its sign. What is under does not depend on the balls' side. */
  #roughLever(side: Side, pitch: number, guess: number): number {
    const turns = pitch / (2 * Math.PI);
    const key = Math.round((turns - Math.floor(turns)) * 1e10) % 1e10;
    let found = this.#rough.get(key) ?? this.#nearly(side, pitch, guess);
    // What was put right must not decide the sign.
    if (!(found && Math.abs(this.#leverOf(side, pitch, found.under)) > found.shift))
      found = { under: this.#level(side, pitch, guess, 1e-4).under, shift: 0 };
    this.#rough.set(key, found);
    return this.#leverOf(side, pitch, found.under);
  }

  /**
   * What is under at a level that is nearly right, put right to first order: the water that is missing stands at the middle of
   * what the surface cuts. `shift`: how far that moves the lever, m. Null where much is missing.
   */
  #nearly(side: Side, pitch: number, level: number): Rough | null {
    const sin = Math.sin(pitch);
    const cos = Math.cos(pitch);
    const under = side.wet.under({ sin, cos, level });
    const { needed, emergent } = this.#load;
    const missing = needed - under.volume;
    if (!(Math.abs(missing) < NEARLY * Math.min(needed, emergent) && under.cut > 0)) return null;
    const X = under.cutMoment / under.cut;
    const x = under.x + missing * (X * cos + level * sin);
    const z = under.z + missing * (level * cos - X * sin);
    const lever = (under.x * cos - under.z * sin) / under.volume;
    return {
      under: { ...under, volume: needed, x, z },
      shift: Math.abs((x * cos - z * sin) / needed - lever),
    };
  }

  /** Righting lever on the true geometry: rough where that leaves no doubt of its sign, else exact. */
  #signedLever(side: Side, pitch: number): number {
    const rough = this.#roughLever(side, pitch, this.#cloud(side, pitch).level);
    return Math.abs(rough) > ROUGH * this.bait.shape.length ? rough : this.#lever(side, pitch);
  }

  /**
   * Righting levers at the trims of a scan, right in sign wherever that decides whether there is a stable trim. Between
   * neighbours of different sign it does not: the one root is found from either cell.
   */
  #scan(side: Side, trims: readonly number[]): { lever: number; level: number }[] {
    const quick = trims.map((pitch) => this.#cloud(side, pitch));
    const last = trims.length - 1;
    return quick.map((here, i) => {
      const pitch = trims[i] ?? NaN;
      // Once round, the first trim is the last; at a quarter's ends the balls run over, and there is no neighbour.
      const before = quick[i > 0 ? i - 1 : this.#balls ? -1 : last - 1];
      const after = quick[i < last ? i + 1 : this.#balls ? -1 : 1];
      let matters: boolean;
      if (before && after)
        matters =
          this.#doubtful(here.lever) &&
          (this.#doubtful(before.lever) ||
            this.#doubtful(after.lever) ||
            before.lever > 0 === after.lever > 0);
      else
        matters =
          this.#doubtful(here.lever, CLOUD_DOUBT_AT_END) &&
          (after ? after.lever <= 0 || this.#doubtful(after.lever) : true) &&
          (before ? before.lever > 0 || this.#doubtful(before.lever) : true);
      return matters ? { level: here.level, lever: this.#roughLever(side, pitch, here.level) } : here;
    });
  }

  #afloat(side: Side, pitch: number, level: number, under: Under): Afloat {
    const sin = Math.sin(pitch);
    const cos = Math.cos(pitch);
    const surface: SurfacePlane = { sin, cos, level };
    const { wet } = side;
    const { G, displaced } = wet.rigid;
    const B = { x: under.x / under.volume, z: under.z / under.volume };
    return {
      pitch: wrap(pitch),
      surface,
      side: wet.side,
      G,
      B,
      volume: under.volume,
      immersedFraction: under.volume / displaced,
      draft: draftOf(wet.shape.edges, surface),
      waterplaneIT: under.waterplaneIT,
      waterplaneArea: under.waterplaneArea,
      GM: metacentre({
        I_T: under.waterplaneIT,
        V: under.volume,
        Z_B: B.x * sin + B.z * cos,
        Z_G: G.x * sin + G.z * cos,
      }),
      lever: this.#leverOf(side, pitch, under),
    };
  }

  /**
   * All stable trims afloat, on the true geometry. The moment is bracketed over the whole circle; where balls are loose,
   * in the four quarters apart, since they run to the lower end (and the roof) as it changes: there the moment jumps
   * away from balance, so that no stable trim is lost between two quarters.
   */
  #stable(exact: boolean): Root[] {
    const quarters = this.#balls ? 4 : 1;
    const cells = SCAN / quarters;
    const roots: Root[] = [];
    for (let q = 0; q < quarters; q++) {
      // Half a step off without balls, so that no scan point falls on a symmetric bait's own equilibrium.
      const from = this.#balls ? -Math.PI + q * (Math.PI / 2) : -Math.PI + STEP / 2;
      const side = this.#sideAt(from + (cells * STEP) / 2);
      const trims = Array.from({ length: cells + 1 }, (_, i) => from + i * STEP);
      const levers = exact
        ? trims.map((pitch) => ({ lever: this.#lever(side, pitch), level: NaN }))
        : this.#scan(side, trims);
      for (let i = 1; i <= cells; i++) {
        const before = levers[i - 1];
        const here = levers[i];
        if (!before || !here || !(before.lever > 0 && here.lever <= 0)) continue;
        const root = this.#polish(side, from + (i - 1) * STEP, from + i * STEP, before, here);
        if (root) roots.push(root);
      }
    }
    return roots.filter(
      (r, i) => roots.findIndex((other) => Math.abs(wrap(other.pitch - r.pitch)) < 1e-7) === i,
    );
  }

  /**
   * The stable equilibrium between two trims: Newton's method on level and trim (Jacobian by differences, then kept up
   * by Broyden's rule), or, where that does not settle inside, bracketing on the true geometry. Null where the true
   * lever does not change sign there.
   */
  #polish(
    side: Side,
    a: number,
    b: number,
    atA: { lever: number; level: number },
    atB: { lever: number; level: number },
  ): Root | null {
    const t = atA.lever / (atA.lever - atB.lever);
    const guess = { pitch: a + t * (b - a), level: atA.level + t * (atB.level - atA.level) };
    const quick = this.#balance(side, guess.pitch, guess.level);
    if (quick && quick.pitch >= a - STEP && quick.pitch <= b + STEP && this.#agrees(side, quick.pitch))
      return { side, ...quick };
    const lever = (pitch: number): number => this.#lever(side, pitch);
    for (const [low, high] of [
      [a, b],
      [a - STEP, b],
      [a, b + STEP],
    ] as const) {
      const fl = lever(low);
      const fh = lever(high);
      if (!(fl > 0 && fh <= 0)) continue;
      const pitch = brent(lever, low, high, 1e-13, fl, fh);
      if (!this.#agrees(side, pitch)) return null;
      return { side, pitch, ...this.#level(side, pitch) };
    }
    return null;
  }

  /** Newton's method from a guess; from the true level at its pitch where the guess has all or nothing under water. */
  #balance(side: Side, pitch: number, level: number): Balance | null {
    const guessed = Number.isFinite(level) ? balance(side.wet, this.#load, pitch, level, 2 * STEP) : null;
    if (guessed) return guessed;
    return balance(side.wet, this.#load, pitch, this.#level(side, pitch, level, 1e-2).level, 2 * STEP);
  }

  /** Do the loose balls lie on this side at that pitch? */
  #agrees(side: Side, pitch: number): boolean {
    if (!this.#balls) return true;
    const own = sideAt(pitch);
    return own.end === side.wet.side.end && own.face === side.wet.side.face;
  }

  /**
   * Equilibrium afloat: the first stable trim met by following the moment from the rest trim (from level where that is
   * undefined), the others listed. Null where it sinks.
   */
  equilibrium(): Floating | null {
    if (!this.floats) return null;
    let roots = this.#stable(false);
    if (roots.length === 0) roots = this.#stable(true);
    const start = this.rest.pitch ?? 0;
    if (roots.length === 0) {
      // A ball with its weight in the middle floats at any trim: then it stays as it comes.
      const held = this.at(start);
      if (held && Math.abs(held.lever) < 1e-9 * this.bait.shape.length) return { ...held, others: [] };
      throw new Error(
        `no stable trim afloat found for "${this.bait.spec.name}" in water of ${this.density} kg/m³`,
      );
    }
    const side = this.#balls && this.rest.pitch !== null ? this.#side(this.rest.side) : this.#sideAt(start);
    // By the cloud where it leaves no doubt; of one trim alone the way to it does not matter.
    const quick = roots.length > 1 ? this.#cloud(side, start).lever : Infinity;
    const lever = this.#doubtful(quick, CLOUD_DOUBT_AT_END) ? this.#signedLever(side, start) : quick;
    const turn = (pitch: number): number => {
      // How far the moment has to turn the bait from its rest trim to a trim, rad; the near way where it rests already.
      const up = wrap(pitch - start);
      if (Math.abs(up) < 1e-7) return 0;
      if (Math.abs(lever) < 1e-9 * this.bait.shape.length) return Math.abs(up);
      const positive = up > 0 ? up : up + 2 * Math.PI;
      return lever > 0 ? positive : 2 * Math.PI - positive;
    };
    const [first, ...others] = [...roots].sort((a, b) => turn(a.pitch) - turn(b.pitch));
    if (!first) throw new Error("no stable trim");
    const held = (r: Root): Afloat => this.#afloat(r.side, r.pitch, r.level, r.under);
    const far = (r: Root): number => Math.abs(wrap(r.pitch - first.pitch));
    return { ...held(first), others: others.sort((a, b) => far(a) - far(b)).map(held) };
  }
}

/**
 * The bait held at a trim (rad) on water of a density (kg/m³), free in height; null where it sinks. For a curve of many
 * trims keep one `Floater`.
 */
export function floatAt(bait: Bait, density: number, pitch: number): Afloat | null {
  return new Floater(bait, density).at(pitch);
}

/** Equilibrium afloat on water of a density (kg/m³); null where the bait sinks (docs/model.md §5). */
export function floating(bait: Bait, density: number): Floating | null {
  return new Floater(bait, density).equilibrium();
}
