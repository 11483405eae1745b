import { brent, cos as cosine, sin as sine } from "../base";
import type { SurfacePlane } from "../base";
import { MID } from "../bait";
import type { Bait } from "../bait";
import type { Under } from "../hydrostatics";
import { balance } from "./balance";
import type { Balance } from "./balance";
import { draftOf } from "./draft";
import { canReach, fallsIn, FLAT, mayTurn, plain, type Fall, type Sloped } from "./hollow";
import { type Estimate, Levers, type Side } from "./levers";
import { metacentre } from "./metacentre";
import { restTrim, wrap } from "./rest";
import type { Afloat, Floating, RestTrim } from "./types";

/** How many trims the scan over the whole circle looks at. */
const SCAN = 72;
const STEP = (2 * Math.PI) / SCAN;
/** Where turning points may be hidden between two trims of the scan, as many smaller steps are looked at. */
const FINER = 4;
/** Two stable trims this close count as one, rad. */
const SAME = 2e-5;

/** What a scan shows: stable trims, and the cells that need a closer look. */
interface Scanned {
  readonly roots: readonly Root[];
  readonly doubted: ReadonlySet<number>;
}

/** An equilibrium, and the side on which its balls lie. */
interface Root extends Balance {
  readonly side: Side;
}

/** How far two trims are apart, rad. */
const apart = (a: number, b: number): number => Math.abs(wrap(a - b));

/** A bait on the surface of a given water, held at any trim or free. */
export class Floater {
  readonly #held: Levers;
  /** kg, above 0 floats. */
  readonly netBuoyancy: number;

  constructor(
    readonly bait: Bait,
    readonly density: number,
    readonly rest: RestTrim = restTrim(bait),
  ) {
    if (!(density > 0)) throw new RangeError(`water density ${density} kg/m³: give a number above 0`);
    const { mass, displaced } = bait.rigid(MID);
    this.#held = new Levers(bait, density);
    this.netBuoyancy = density * displaced - mass;
  }

  /** Volume that carries the bait, m³. */
  get needed(): number {
    return this.#held.load.needed;
  }

  get floats(): boolean {
    return this.netBuoyancy > 0;
  }

  /** The bait held at a trim (rad); null where it sinks. */
  at(pitch: number): Afloat | null {
    if (!this.floats) return null;
    const side = this.#held.sideAt(pitch);
    const { level, under } = this.#held.level(side, pitch);
    return this.#afloat(side, pitch, level, under);
  }

  #afloat(side: Side, pitch: number, level: number, under: Under): Afloat {
    const sin = sine(pitch);
    const cos = cosine(pitch);
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
      lever: this.#held.leverOf(side, pitch, under),
    };
  }

  /**
   * All stable trims afloat, on the true geometry. We scan the lever over the whole circle for changes of its sign. A bait with
   * loose balls is scanned in four quarters, since the balls run to the other end or face between two quarters. The lever jumps
   * away from balance there, so no stable trim is lost between two quarters.
   */
  #stable(exact: boolean): Root[] {
    const quarters = this.#held.balls ? 4 : 1;
    const cells = SCAN / quarters;
    const roots: Root[] = [];
    for (let q = 0; q < quarters; q++) {
      // Without balls we begin half a step off: else a trim of the scan would be the equilibrium of a symmetric bait.
      const from = this.#held.balls ? -Math.PI + q * (Math.PI / 2) : -Math.PI + STEP / 2;
      const side = this.#held.sideAt(from + (cells * STEP) / 2);
      const trims = Array.from({ length: cells + 1 }, (_, i) => from + i * STEP);
      const levers = exact
        ? trims.map((pitch) => ({ pitch, lever: this.#held.lever(side, pitch), level: NaN }))
        : this.#held.scan(side, trims);
      const found = this.#scanned(side, levers);
      for (const i of found.doubted) {
        const [a, b] = [trims[i - 1] ?? NaN, trims[i] ?? NaN];
        roots.push(...this.#within(side, a, b, found.roots));
      }
      roots.push(...found.roots);
    }
    return roots.filter((r, i) => roots.findIndex((other) => apart(other.pitch, r.pitch) < SAME) === i);
  }

  /**
   * The stable trims that the scan shows at once, and between which of its trims (i − 1 and i) there may be others: where a
   * turning point of the lever may reach zero.
   */
  #scanned(side: Side, levers: readonly Estimate[]): Scanned {
    const last = levers.length - 1;
    const doubted = new Set<number>();
    const roots: Root[] = [];
    const lever = (k: number): number => {
      const inside = levers[this.#held.balls || (k >= 0 && k <= last) ? k : (k + last) % last];
      return (inside ?? this.#held.cloud(side, (levers[0]?.pitch ?? NaN) + k * STEP)).lever;
    };
    for (let i = 1; i <= last; i++) {
      const a = levers[i - 1];
      const b = levers[i];
      if (!a || !b) continue;
      if (a.lever > 0 === b.lever > 0) {
        const run = { before: lever(i - 2), a: a.lever, b: b.lever, after: lever(i + 1) };
        if (mayTurn(run, this.#held.doubt(a.pitch, "besideHollow")) && this.#turns(side, a, b))
          doubted.add(i);
        continue;
      }
      const root = a.lever > 0 ? this.#polish(side, a, b) : null;
      if (root) roots.push(root);
      if (this.#crossesOnce(side, a, b, root)) continue;
      for (const k of [i - 1, i, i + 1])
        if (k >= 1 && k <= last) doubted.add(k);
        else if (!this.#held.balls) doubted.add(k < 1 ? last : 1);
    }
    return { roots, doubted };
  }

  /** Two trims of the scan have levers of different signs, and `root` is the stable trim found there: is there no other? */
  #crossesOnce(side: Side, a: Estimate, b: Estimate, root: Root | null): boolean {
    const mean = (b.lever - a.lever) / (b.pitch - a.pitch);
    if (root) return plain(this.#held.sloped(side, root.pitch, root.under).slope, mean);
    if (a.lever > 0) return false;
    if (this.#rises(side, a, b)) return true;
    const near = Math.abs(a.lever) < Math.abs(b.lever) ? a : b;
    const seen = this.#held.glance(side, near.pitch, near.level) ?? this.#rough(side, near);
    return seen.lever > 0 === near.lever > 0 && plain(seen.slope, mean);
  }

  /** By the fast estimate: does the lever rise in even steps between two trims of the scan? */
  #rises(side: Side, a: Estimate, b: Estimate): boolean {
    const step = (b.pitch - a.pitch) / FINER;
    const mean = (b.lever - a.lever) / FINER;
    let before = a.lever;
    for (let k = 1; k <= FINER; k++) {
      const here = k < FINER ? this.#held.cloud(side, a.pitch + k * step).lever : b.lever;
      if (!plain(here - before, mean)) return false;
      before = here;
    }
    return true;
  }

  #exact(side: Side, pitch: number): Sloped {
    return this.#held.sloped(side, pitch, this.#held.level(side, pitch).under);
  }

  #rough(side: Side, { pitch, level }: Estimate): Sloped {
    if (!Number.isFinite(level)) return this.#exact(side, pitch);
    return this.#held.sloped(side, pitch, this.#held.roughly(side, pitch, level));
  }

  /** By rough levers: may the lever reach zero between two trims of the scan at which it has the same sign? */
  #turns(side: Side, a: Estimate, b: Estimate): boolean {
    // First the end that is nearer to zero: mostly the lever leads away from zero there.
    const fromA = Math.abs(a.lever) < Math.abs(b.lever);
    const near = this.#rough(side, fromA ? a : b);
    const sure = near.lever > 0 === (fromA ? a : b).lever > 0;
    if (sure && near.slope * near.lever > 0 === fromA) {
      // A slope that is flat for the way to the other end says little of what is between.
      const way = Math.abs(b.lever - a.lever);
      return Math.abs(near.slope) * STEP < FLAT * way && Math.abs(near.lever) < way;
    }
    // A tangent that reaches zero before the other end: the lever turns at least once on the way.
    if (Math.abs(near.lever) < Math.abs(near.slope) * STEP) return true;
    const [left, right] = fromA ? [near, this.#rough(side, b)] : [this.#rough(side, a), near];
    return left.lever > 0 !== right.lever > 0 || canReach(left, right);
  }

  /** Falls of the lever between two trims of the scan, by smaller steps. */
  #falls(a: number, b: number, exact: (pitch: number) => Sloped): Fall[] {
    const at = Array.from({ length: FINER + 1 }, (_, k) => exact(a + (k * (b - a)) / FINER));
    return at.flatMap((left, k) => {
      const right = at[k + 1];
      return right ? fallsIn(left, right, exact) : [];
    });
  }

  /** All stable trims between two trims, but those that are known. */
  #within(side: Side, a: number, b: number, known: readonly Root[]): Root[] {
    const exact = (pitch: number): Sloped => this.#exact(side, pitch);
    const roots: Root[] = [];
    for (const [left, right] of this.#falls(a, b, exact)) {
      const [middle, half] = [(left.pitch + right.pitch) / 2, (right.pitch - left.pitch) / 2];
      if (known.some((root) => apart(root.pitch, middle) <= half)) continue;
      const lever = (pitch: number): number => this.#held.lever(side, pitch);
      const pitch = brent(lever, left.pitch, right.pitch, 1e-13, left.lever, right.lever);
      if (this.#held.agrees(side, pitch)) roots.push({ side, pitch, ...this.#held.level(side, pitch) });
    }
    return roots;
  }

  /**
   * The stable equilibrium between two trims: Newton's method on level and trim (`balance`). If that does not settle between
   * them, we bracket the lever on the true geometry. Null if the true lever does not change its sign there.
   */
  #polish(side: Side, atA: Estimate, atB: Estimate): Root | null {
    const [a, b] = [atA.pitch, atB.pitch];
    const t = atA.lever / (atA.lever - atB.lever);
    const guess = { pitch: a + t * (b - a), level: atA.level + t * (atB.level - atA.level) };
    const quick = this.#balance(side, guess.pitch, guess.level);
    if (quick && quick.pitch >= a - STEP && quick.pitch <= b + STEP && this.#held.agrees(side, quick.pitch))
      return { side, ...quick };
    const lever = (pitch: number): number => this.#held.lever(side, pitch);
    for (const [low, high] of [
      [a, b],
      [a - STEP, b],
      [a, b + STEP],
    ] as const) {
      const fl = lever(low);
      const fh = lever(high);
      if (!(fl > 0 && fh <= 0)) continue;
      const pitch = brent(lever, low, high, 1e-13, fl, fh);
      if (!this.#held.agrees(side, pitch)) return null;
      return { side, pitch, ...this.#held.level(side, pitch) };
    }
    return null;
  }

  /** Newton's method from a guess. If the guess has all or nothing under water, it starts from the true level at that pitch. */
  #balance(side: Side, pitch: number, level: number): Balance | null {
    const guessed = Number.isFinite(level)
      ? balance(side.wet, this.#held.load, pitch, level, 2 * STEP)
      : null;
    if (guessed) return guessed;
    return balance(
      side.wet,
      this.#held.load,
      pitch,
      this.#held.level(side, pitch, level, 1e-2).level,
      2 * STEP,
    );
  }

  /**
   * Equilibrium afloat: the stable trim to which the moment turns the bait from its rest trim (from level if that is undefined).
   * The other stable trims are listed with it. Null if the bait sinks.
   */
  equilibrium(): Floating | null {
    if (!this.floats) return null;
    let roots = this.#stable(false);
    if (roots.length === 0) roots = this.#stable(true);
    const start = this.rest.pitch ?? 0;
    if (roots.length === 0) {
      // A ball with its weight in the middle floats at any trim: then it stays as it is put in.
      const held = this.at(start);
      if (held && Math.abs(held.lever) < 1e-9 * this.bait.shape.length) return { ...held, others: [] };
      throw new Error(
        `no stable trim afloat found for "${this.bait.spec.name}" in water of ${this.density} kg/m³`,
      );
    }
    const side =
      this.#held.balls && this.rest.pitch !== null
        ? this.#held.side(this.rest.side)
        : this.#held.sideAt(start);
    // Use the fast lever when its sign is certain. With a single stable trim the direction of turning is irrelevant.
    const quick = roots.length > 1 ? this.#held.cloud(side, start).lever : Infinity;
    const lever = this.#held.doubtful(quick, start, "atEnd") ? this.#held.signedLever(side, start) : quick;
    const turn = (pitch: number): number => {
      // How far the moment has to turn the bait from its rest trim to a trim, rad. Without a moment: the shorter way.
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

/** Equilibrium afloat on water of a density (kg/m³); null where the bait sinks (docs/model.md §5). */
export function floating(bait: Bait, density: number): Floating | null {
  return new Floater(bait, density).equilibrium();
}
