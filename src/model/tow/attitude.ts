import { atan2, brent, cos, hypot, sin, rotate, type Vec, type Wrench } from "../base";
import { lowSide } from "../bait";
import type { Bait, BallSide } from "../bait";
import {
  type SwimmerOptions,
  type Swimmer,
  type State,
  type Surroundings,
  prepareSwimmer,
  towWrench,
} from "../forces";
import type { TowRoot } from "./types";

/** Forces on a towed bait, world axes (N), and the moment about the tie eye (N·m), all but the line. */
export interface TowLoad {
  readonly force: Vec;
  readonly momentAboutEye: number;
}

/** Swimmers of one bait by the side on which its balls lie; one swimmer for all sides where there are no loose balls. */
export class Swimmers {
  readonly #made = new Map<string, Swimmer>();
  readonly #hasBalls: boolean;
  constructor(
    readonly bait: Bait,
    readonly options: Partial<SwimmerOptions> = {},
  ) {
    this.#hasBalls = bait.spec.chambers.some((c) => c.balls !== null && c.balls.count > 0);
  }
  get hasBalls(): boolean {
    return this.#hasBalls;
  }
  on(side: BallSide): Swimmer {
    const key = this.#hasBalls ? `${side.end} ${side.face}` : "any";
    let swimmer = this.#made.get(key);
    if (!swimmer) {
      swimmer = prepareSwimmer(this.bait, { ...this.options, side, hooksApart: false, ballsApart: false });
      this.#made.set(key, swimmer);
    }
    return swimmer;
  }
  at(pitch: number): Swimmer {
    return this.on(lowSide(sin(pitch), cos(pitch)));
  }
}

/**
 * Loads in a steady tow at speed U (m/s) along the world's X, at a pitch (rad), under water, without roll:
 * u = U cos θ, w = −U sin θ; all forces but the line, less the steady Kirchhoff couple u·p_w − w·p_u
 * (docs/model.md §7). About the eye at (x_e, z_e) from G: M_e = M − x_e Z + z_e X.
 */
export function towLoad(swimmer: Swimmer, around: Surroundings, speed: number, pitch: number): TowLoad {
  const s = sin(pitch);
  const c = cos(pitch);
  const state: State = { u: speed * c, w: -speed * s, q: 0, pitch, X: 0, Z: 0 };
  const f: Wrench = towWrench(swimmer, state, around);
  const { x, z } = swimmer.tie;
  return {
    force: rotate(f, s, c),
    momentAboutEye: f.m - x * f.z + z * f.x,
  };
}

const SCAN = Math.PI / 180;

/**
 * All steady attitudes at one speed over the whole circle, nose-up positive, in (−π, π]. A root is stable where the moment
 * about the eye falls with the pitch. With loose balls the moment jumps where they roll over (at level, and with the datum
 * line upright). A fall through zero in such a jump is an attitude too: the balls hold it.
 *
 * @throws RangeError for a speed that is not above 0
 */
export function towRoots(swimmers: Swimmers, around: Surroundings, speed: number): TowRoot[] {
  if (!(speed > 0) || !Number.isFinite(speed))
    throw new RangeError(`A tow needs a speed above 0 m/s, not ${speed}.`);
  const moment = (swimmer: Swimmer) => (pitch: number) =>
    towLoad(swimmer, around, speed, pitch).momentAboutEye;
  const roots: TowRoot[] = [];
  const keep = (swimmer: Swimmer, pitch: number, stable: boolean) => {
    const { force } = towLoad(swimmer, around, speed, pitch);
    roots.push({
      pitch,
      stable,
      tension: hypot(force.x, force.z),
      lineAngle: atan2(-force.z, -force.x),
    });
  };
  // In each quadrant the balls lie on one side, so the moment is continuous inside it.
  let before: number | null = null;
  let first: number | null = null;
  for (let quadrant = -2; quadrant < 2; quadrant++) {
    const from = (quadrant * Math.PI) / 2;
    const swimmer = swimmers.at(from + Math.PI / 4);
    const m = moment(swimmer);
    let m0 = m(from);
    first ??= m0;
    if (before !== null && before * m0 < 0 && swimmers.hasBalls) keep(swimmer, from, before > 0);
    for (let i = 0; i < 90; i++) {
      const a = from + i * SCAN;
      const b = i === 89 ? from + Math.PI / 2 : from + (i + 1) * SCAN;
      const m1 = m(b);
      if (m0 === 0) keep(swimmer, a, m1 < 0);
      else if (m0 * m1 < 0) keep(swimmer, brent(m, a, b, 1e-10), m0 > 0);
      m0 = m1;
    }
    before = m0;
  }
  if (swimmers.hasBalls && before !== null && first !== null && before * first < 0)
    keep(swimmers.at(-Math.PI * 0.75), Math.PI, before > 0);
  return roots.sort((a, b) => a.pitch - b.pitch);
}

/**
 * The running attitude: the first stable root met when the pitch moves from the rest trim in the direction of the sign of
 * the moment there. Null where there is none on the whole circle.
 */
export function runningRoot(
  swimmers: Swimmers,
  around: Surroundings,
  speed: number,
  restTrim: number,
  roots: readonly TowRoot[],
): TowRoot | null {
  const direction = towLoad(swimmers.at(restTrim), around, speed, restTrim).momentAboutEye >= 0 ? 1 : -1;
  let best: TowRoot | null = null;
  let nearest = Infinity;
  for (const root of roots) {
    if (!root.stable) continue;
    const angle = ((((root.pitch - restTrim) * direction) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
    if (angle < nearest) {
      nearest = angle;
      best = root;
    }
  }
  return best;
}
