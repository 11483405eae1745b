import { brent, cos as cosine, sin as sine } from "../base";
import type { SurfacePlane } from "../base";
import { MID } from "../bait";
import type { Bait } from "../bait";
import type { Under } from "../hydrostatics";
import { balance } from "./balance";
import type { Balance } from "./balance";
import { draftOf } from "./draft";
import { canReach, mayTurn, otherSign, type Sloped } from "./hollow";
import { type Estimate, Levers, type Side } from "./levers";
import { metacentre } from "./metacentre";
import { restTrim, wrap } from "./rest";
import type { Afloat, Floating, RestTrim } from "./types";

/** How many trims the scan over the whole circle looks at. */
const SCAN = 72;
const STEP = (2 * Math.PI) / SCAN;
/** An equilibrium, and the side on which its balls lie. */
interface Root extends Balance {
  readonly side: Side;
}

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
        ? trims.map((pitch) => ({ lever: this.#held.lever(side, pitch), level: NaN }))
        : this.#held.scan(side, trims);
      for (let i = 1; i <= cells; i++) {
        const before = levers[i - 1];
        const here = levers[i];
        if (!before || !here) continue;
        const [a, b] = [from + (i - 1) * STEP, from + i * STEP];
        const falls = before.lever > 0 && here.lever <= 0;
        const root =
          (falls ? this.#polish(side, a, b, before, here) : null) ?? this.#hidden(side, levers, i, a, b);
        if (root) roots.push(root);
      }
    }
    return roots.filter(
      (r, i) => roots.findIndex((other) => Math.abs(wrap(other.pitch - r.pitch)) < 1e-7) === i,
    );
  }

  /** A stable equilibrium in a hollow of the lever between two trims of the scan, i − 1 and i (`a` and `b`, rad). */
  #hidden(side: Side, levers: readonly Estimate[], i: number, a: number, b: number): Root | null {
    const last = levers.length - 1;
    const at = (k: number): Estimate | undefined =>
      levers[this.#held.balls || (k >= 0 && k <= last) ? k : (k + last) % last];
    const [before, atA, atB, after] = [at(i - 2), at(i - 1), at(i), at(i + 1)];
    if (!atA || !atB) return null;
    if (!mayTurn(before?.lever, atA.lever, atB.lever, after?.lever, this.#held.doubt("besideHollow")))
      return null;
    const exact = (pitch: number): Sloped =>
      this.#held.sloped(side, pitch, this.#held.level(side, pitch).under);
    const rough = (pitch: number, { level }: Estimate): Sloped =>
      Number.isFinite(level)
        ? this.#held.sloped(side, pitch, this.#held.roughly(side, pitch, level))
        : exact(pitch);
    // Roughly first, from the end that is nearer to zero: mostly the lever leads away from zero there.
    const fromA = Math.abs(atA.lever) < Math.abs(atB.lever);
    const near = fromA ? rough(a, atA) : rough(b, atB);
    const sure = near.lever > 0 === (fromA ? atA : atB).lever > 0;
    if (sure && near.slope * near.lever > 0 === fromA) return null;
    const [left, right] = fromA ? [near, rough(b, atB)] : [rough(a, atA), near];
    if (left.lever > 0 === right.lever > 0 && !canReach(left, right)) return null;
    return this.#between(side, exact(a), exact(b), exact);
  }

  /** The stable equilibrium between two trims whose levers are exact; in a hollow where they have the same sign. */
  #between(side: Side, a: Sloped, b: Sloped, exact: (pitch: number) => Sloped): Root | null {
    const inside = a.lever > 0 === b.lever > 0 ? otherSign(a, b, exact) : null;
    const left = inside && inside.lever > 0 ? inside : a;
    const right = inside && inside.lever <= 0 ? inside : b;
    if (!(left.lever > 0 && right.lever <= 0)) return null;
    const lever = (pitch: number): number => this.#held.lever(side, pitch);
    const pitch = brent(lever, left.pitch, right.pitch, 1e-13, left.lever, right.lever);
    return this.#held.agrees(side, pitch) ? { side, pitch, ...this.#held.level(side, pitch) } : null;
  }

  /**
   * The stable equilibrium between two trims: Newton's method on level and trim (`balance`). If that does not settle between
   * them, we bracket the lever on the true geometry. Null if the true lever does not change its sign there.
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
    const lever = this.#held.doubtful(quick, "atEnd") ? this.#held.signedLever(side, start) : quick;
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
