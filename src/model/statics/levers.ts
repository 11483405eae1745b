import { cos as cosine, sin as sine } from "../base";
import { MID } from "../bait";
import type { Bait, BallSide } from "../bait";
import { cloudOf, Wettable } from "../hydrostatics";
import type { Cloud, Under } from "../hydrostatics";
import { Load } from "./balance";
import type { Sloped } from "./hollow";
import { hasBalls, sideAt } from "./rest";

/**
 * If the fast estimate of the righting lever (`cloud`) is smaller than this fraction of the length, its sign may be wrong, and
 * we compute it on the true geometry. The limit is the smaller of a fixed fraction and a multiple of the volume share above
 * water.
 *
 * Between two trims of the scan a wrong sign mostly moves a root to the next cell, where it is found as well. Two cases need
 * the right sign: two roots close together, of which both would be lost, and the ends of a quarter, where any root would be
 * lost (hence the wider limits there).
 *
 * Measured on 96 baits changed at random, at 24 trims each: the estimate's error, as a fraction of the length, has a median of
 * 4e-4; it is below 2e-3 in nine of ten and 1.2e-2 at most. Divided by the volume share above water: 1.6e-3, 8e-3 and 6.4e-2.
 */
const DOUBT = {
  between: { fixed: 4e-3, emergent: 0.07 },
  atEnd: { fixed: 1.5e-2, emergent: 0.15 },
  /** For the two trims beside a hollow, whose levers are not as small as the one in it. */
  besideHollow: { fixed: 5e-3, emergent: 0.07 },
};
/** Within some 11° of level or of belly-up what stands out of the water can be anywhere along the back: these limits are wider. */
const LEVEL = 0.2;
const WIDER = 4;
const level = (pitch: number): boolean => Math.abs(pitch - Math.PI * Math.round(pitch / Math.PI)) < LEVEL;
type Doubt = keyof typeof DOUBT;
/** With all or nothing under water, the next level tried is this fraction of the bracket inward from its end. */
const NEAR_END = 0.04;
/** Up to this fraction of the smaller volume (under or above water) a missing volume is corrected to first order. */
const NEARLY = 0.1;
/** If a rough lever is larger than this fraction of the length, its sign is right. */
const ROUGH = 1e-3;

/** The bait with its balls on one side: what the surface can cut, and the fast estimate of it. */
export interface Side {
  readonly wet: Wettable;
  readonly cloud: Cloud;
}

/** Lever (m) and level (m) at a trim of the scan (rad). */
export interface Estimate {
  readonly pitch: number;
  readonly lever: number;
  readonly level: number;
}

/** What is under water, nearly; `shift`: how far the first-order correction moved the lever, m. */
interface Rough {
  readonly under: Under;
  readonly shift: number;
}

/** Levels and righting levers of a bait that is held at a trim on the surface: fast estimates, rough ones, exact ones. */
export class Levers {
  readonly #sides = new Map<string, Side>();
  #points: Cloud | null = null;
  /** What is under water at trims already looked at. The key is the pitch as a fraction of a turn, × 1e10. */
  readonly #rough = new Map<number, Rough>();
  readonly balls: boolean;
  readonly load: Load;

  constructor(
    readonly bait: Bait,
    density: number,
  ) {
    const { mass, displaced } = bait.rigid(MID);
    this.balls = hasBalls(bait);
    this.load = new Load(mass / density, displaced);
  }

  side(side: BallSide): Side {
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

  /** The side on which the balls lie at a pitch; without balls there is only one. */
  sideAt(pitch: number): Side {
    return this.side(this.balls ? sideAt(pitch) : MID);
  }

  /**
   * Level at which weight and buoyancy balance at a trim: Newton's steps, then secant steps. If a step leaves the bracket, we
   * halve the bracket. `within`: the greatest error in volume, as a fraction of the smaller volume (under or above water).
   */
  level(side: Side, pitch: number, guess?: number, within = 1e-13): { level: number; under: Under } {
    const { wet } = side;
    const load = this.load;
    const sin = sine(pitch);
    const cos = cosine(pitch);
    let { low, high } = wet.reach(sin, cos);
    let level = guess ?? this.cloud(side, pitch).level;
    if (level >= high) level = high - NEAR_END * (high - low);
    else if (!(level > low)) level = low + NEAR_END * (high - low);
    const close = within * Math.min(this.load.needed, this.load.emergent) + 2e-15 * this.load.total;
    let lastLevel = NaN;
    let lastExcess = NaN;
    for (let k = 0; k < 200; k++) {
      const under = wet.under({ sin, cos, level });
      // A straight piece that lies along the surface goes under all at once: then the bracket shrinks to that level.
      if (Math.abs(under.volume - this.load.needed) <= close || high - low < 1e-15) return { level, under };
      const excess = load.excess(under.volume);
      if (excess < 0) low = level;
      else high = level;
      // Newton's slope leaves out a little of the coats; the secant's does not, so we change to it after two steps.
      const slope = k < 2 ? load.slope(under.volume, under.cut) : (excess - lastExcess) / (level - lastLevel);
      lastLevel = level;
      lastExcess = excess;
      level -= excess / slope;
      // If the body is fully in or fully out of the water the derivative is zero, so step inward from the bracket end with the
      // smaller error.
      if (!(level > low && level < high)) {
        const end = excess > 0 ? high : low;
        level = k < 3 ? end + NEAR_END * (low + high - 2 * end) : (low + high) / 2;
      } else if (k > 20) level = (low + high) / 2;
      if (level === lastLevel) return { level, under };
    }
    throw new Error(
      `no level found at a trim of ${pitch} rad: ${wet.always.volume} m³ always under, ${this.load.needed} m³ needed`,
    );
  }

  cloud(side: Side, pitch: number): Estimate {
    const { G } = side.wet.rigid;
    const { lever, level } = side.cloud.at(sine(pitch), cosine(pitch), this.load.needed, G.x, G.z);
    return { pitch, lever, level };
  }

  /** Righting lever X_B − X_G (m) at a trim, on the true geometry. */
  lever(side: Side, pitch: number): number {
    const { under } = this.level(side, pitch);
    return this.leverOf(side, pitch, under);
  }

  leverOf(side: Side, pitch: number, under: Under): number {
    const sin = sine(pitch);
    const cos = cosine(pitch);
    const { G } = side.wet.rigid;
    return (under.x * cos - under.z * sin) / under.volume - (G.x * cos - G.z * sin);
  }

  /** May the sign of an estimated lever be wrong? */
  doubtful(lever: number, pitch: number, where: Doubt = "between"): boolean {
    return Math.abs(lever) <= this.doubt(pitch, where);
  }

  /** How far an estimated lever may be wrong at a trim, m. */
  doubt(pitch: number, where: Doubt): number {
    const { fixed, emergent } = DOUBT[where];
    const share = ((level(pitch) ? WIDER : 1) * emergent * this.load.emergent) / this.load.total;
    return Math.min(fixed, share + 1e-6) * this.bait.shape.length;
  }

  /** Righting lever on the true geometry, exact enough for its sign. What is under does not depend on where the balls lie. */
  #roughLever(side: Side, pitch: number, guess: number): number {
    return this.leverOf(side, pitch, this.roughly(side, pitch, guess));
  }

  /** What is under water at a trim, exact enough for the lever's sign; from a guess of the level. */
  roughly(side: Side, pitch: number, guess: number): Under {
    const turns = pitch / (2 * Math.PI);
    const key = Math.round((turns - Math.floor(turns)) * 1e10) % 1e10;
    let found = this.#rough.get(key) ?? this.#nearly(side, pitch, guess);
    // If the correction is larger than the lever, it could have changed the sign: then we solve for the level.
    if (!(found && Math.abs(this.leverOf(side, pitch, found.under)) > found.shift))
      found = { under: this.level(side, pitch, guess, 1e-4).under, shift: 0 };
    this.#rough.set(key, found);
    return found.under;
  }

  /**
   * What is under water at a level that is nearly right, corrected to first order: the missing volume is added at the centroid of
   * the area that the surface cuts. `shift`: how far that moves the lever, m. Null if too much is missing for that.
   */
  #nearly(side: Side, pitch: number, level: number): Rough | null {
    const sin = sine(pitch);
    const cos = cosine(pitch);
    const under = side.wet.under({ sin, cos, level });
    const { needed, emergent } = this.load;
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

  /** Lever and slope at a trim by one look at a level that is nearly right. The lever's sign is mostly right. */
  glance(side: Side, pitch: number, level: number): Sloped | null {
    const found = Number.isFinite(level) ? this.#nearly(side, pitch, level) : null;
    return found && this.sloped(side, pitch, found.under);
  }

  /** Righting lever on the true geometry: the rough one if its sign is certain, else the exact one. */
  signedLever(side: Side, pitch: number): number {
    const rough = this.#roughLever(side, pitch, this.cloud(side, pitch).level);
    return Math.abs(rough) > ROUGH * this.bait.shape.length ? rough : this.lever(side, pitch);
  }

  /**
   * Righting levers at the trims of a scan. Their sign is right wherever it decides whether there is a stable trim. It does not
   * decide that if the neighbours' levers have different signs: then there is one root, and it is found from either cell.
   */
  scan(side: Side, trims: readonly number[]): Estimate[] {
    const quick = trims.map((pitch) => this.cloud(side, pitch));
    const last = trims.length - 1;
    return quick.map((here, i) => {
      const { pitch } = here;
      // Without balls the scan goes once round: its first trim is its last. With balls it covers one quarter, at whose ends the
      // balls run to the other side: there the next trim has another lever and is no neighbour.
      const before = quick[i > 0 ? i - 1 : this.balls ? -1 : last - 1];
      const after = quick[i < last ? i + 1 : this.balls ? -1 : 1];
      let matters: boolean;
      if (before && after)
        matters =
          this.doubtful(here.lever, pitch) &&
          (this.doubtful(before.lever, pitch) ||
            this.doubtful(after.lever, pitch) ||
            before.lever > 0 === after.lever > 0);
      else
        matters =
          this.doubtful(here.lever, pitch, "atEnd") &&
          (after ? after.lever <= 0 || this.doubtful(after.lever, pitch) : true) &&
          (before ? before.lever > 0 || this.doubtful(before.lever, pitch) : true);
      return matters ? { pitch, level: here.level, lever: this.#roughLever(side, pitch, here.level) } : here;
    });
  }

  /** The lever with what is under water at a trim, and its slope: less the longitudinal metacentric height. */
  sloped(side: Side, pitch: number, under: Under): Sloped {
    const { volume, x, z, cut, cutMoment, cutSecond } = under;
    const { G } = side.wet.rigid;
    const sin = sine(pitch);
    const cos = cosine(pitch);
    const above = G.x * sin + G.z * cos - (x * sin + z * cos) / volume;
    const slope = above - (cutSecond - (cutMoment * cutMoment) / cut) / volume;
    return { pitch, lever: this.leverOf(side, pitch, under), slope };
  }

  /** True where the loose balls lie on this side at that pitch. */
  agrees(side: Side, pitch: number): boolean {
    if (!this.balls) return true;
    const own = sideAt(pitch);
    return own.end === side.wet.side.end && own.face === side.wet.side.face;
  }
}
