import { cos as cosine, sin as sine, square } from "../base";
import type { Under, Wettable } from "../hydrostatics";

/** Relative size of force and moment at which an equilibrium counts as found. */
const FOUND = 1e-11;

/**
 * Below this residual we skip re-evaluating after the last Newton step: each step shrinks the residual about a thousandfold (the
 * Jacobian omits only the coats).
 */
const LAST_STEP = 1e-8;

/** The volume that has to be under water to carry a bait, m³. */
export class Load {
  /** Volume that then stays above the water, m³; below 0 if the bait sinks. */
  readonly emergent: number;

  /** @param needed mass over the water's density; @param total volume displaced when all is under water */
  constructor(
    readonly needed: number,
    readonly total: number,
  ) {
    this.emergent = total - needed;
  }

  /**
   * How far the force is out of balance; below 0 if too little is under water. It is the difference between the square roots of
   * two volumes, those under water or those above, whichever are smaller. The root makes it nearly linear in the level, even
   * when only a tip is under or above water.
   */
  excess(volume: number): number {
    return this.needed > this.emergent
      ? Math.sqrt(this.emergent) - Math.sqrt(Math.max(0, this.total - volume))
      : Math.sqrt(Math.max(0, volume)) - Math.sqrt(this.needed);
  }

  /** Derivative of `excess` with respect to the level, from the area that the surface cuts (m²). */
  slope(volume: number, area: number): number {
    const smaller = this.needed > this.emergent ? this.total - volume : volume;
    return smaller > 0 ? area / (2 * Math.sqrt(smaller)) : 0;
  }
}

/** A trim and level at which force and moment balance, and what is under there. */
export interface Balance {
  readonly pitch: number;
  readonly level: number;
  readonly under: Under;
}

/**
 * Solves for the trim and level at which force and moment balance: Newton's method in two unknowns. The area that the surface
 * cuts, with its moments, gives the derivatives. They leave out a little of the coats, which Broyden's rule adds. Null if the
 * steps do not settle, or settle on a trim that is not stable.
 *
 * @param mostTurn greatest turn in one step, rad
 */
export function balance(
  wet: Wettable,
  load: Load,
  pitch: number,
  level: number,
  mostTurn: number,
): Balance | null {
  const { G } = wet.rigid;
  const height = wet.shape.maxHeight;
  const root = Math.sqrt(load.needed);
  const whole = load.needed * wet.shape.length;
  /** Force (as `Load.excess`, without unit) and moment (divided by weight × length), with their derivatives. */
  const look = (p: number, l: number): Look => {
    const sin = sine(p);
    const cos = cosine(p);
    const under = wet.under({ sin, cos, level: l });
    const { volume, x, z, cut: A, cutMoment: S, cutSecond: I } = under;
    const Gx = G.x * cos - G.z * sin;
    const Gz = G.x * sin + G.z * cos;
    // If the level rises by dl, A·dl more is under water. If the bait turns by dp, a point at X rises by X·dp, and S·dp less is.
    return {
      under,
      f: load.excess(volume) / root,
      m: (x * cos - z * sin - volume * Gx) / whole,
      fl: load.slope(volume, A) / root,
      fp: -load.slope(volume, S) / root,
      ml: (S - A * Gx) / whole,
      mp: (volume * Gz - (x * sin + z * cos) - I + S * Gx) / whole,
    };
  };
  let here = look(pitch, level);
  if (!(here.fl > 0)) return null;
  // What Broyden's rule adds to the four derivatives.
  let [efl, efp, eml, emp] = [0, 0, 0, 0];
  for (let k = 0; k < 20; k++) {
    const { f, m, under } = here;
    const Jfl = here.fl + efl;
    const Jfp = here.fp + efp;
    const Jml = here.ml + eml;
    const Jmp = here.mp + emp;
    // Stable: with the force kept in balance, the moment falls as the nose rises.
    const stable = Jmp - (Jml * Jfp) / Jfl < 0;
    const off = Math.max(Math.abs(under.volume / load.needed - 1), Math.abs(m));
    if (off <= FOUND) return stable ? { pitch, level, under } : null;
    const det = Jfl * Jmp - Jfp * Jml;
    let stepL = (-f * Jmp + m * Jfp) / det;
    let stepP = (-m * Jfl + f * Jml) / det;
    if (off <= LAST_STEP) {
      if (!stable) return null;
      const last = { pitch: pitch + stepP, level: level + stepL };
      return { ...last, under: stepped(under, pitch, level, stepP, stepL) };
    }
    const most = Math.max(Math.abs(stepP) / mostTurn, Math.abs(stepL) / (height / 2));
    if (!Number.isFinite(most)) return null;
    if (most > 1) {
      stepL /= most;
      stepP /= most;
    }
    let next = look(pitch + stepP, level + stepL);
    // A step must not take all or nothing under water: the derivative is zero there. Then we halve the step.
    for (let half = 0; half < 6 && !(next.fl > 0); half++) {
      stepL /= 2;
      stepP /= 2;
      next = look(pitch + stepP, level + stepL);
    }
    level += stepL;
    pitch += stepP;
    // Broyden 1965, Math. Comp. 19:577–593, with the unknowns scaled by the height and 1 rad. It corrects only the part that our
    // derivatives leave out: the known part is taken with the mean of its derivatives at both ends of the step.
    const rf = next.f - f - ((here.fl + next.fl) / 2 + efl) * stepL - ((here.fp + next.fp) / 2 + efp) * stepP;
    const rm = next.m - m - ((here.ml + next.ml) / 2 + eml) * stepL - ((here.mp + next.mp) / 2 + emp) * stepP;
    const norm = square(stepL / height) + square(stepP);
    const sl = stepL / (height * height) / norm;
    const sp = stepP / norm;
    efl += rf * sl;
    efp += rf * sp;
    eml += rm * sl;
    emp += rm * sp;
    here = next;
  }
  return null;
}

/** What is under water after a small step, to first order: a wedge of thickness dl − X·dp is added on the area that the surface cuts. */
function stepped(under: Under, pitch: number, level: number, dp: number, dl: number): Under {
  const sin = sine(pitch);
  const cos = cosine(pitch);
  const { cut, cutMoment, cutSecond } = under;
  const dV = cut * dl - cutMoment * dp;
  const dX = cutMoment * dl - cutSecond * dp;
  return {
    ...under,
    volume: under.volume + dV,
    x: under.x + dX * cos + dV * level * sin,
    z: under.z + dV * level * cos - dX * sin,
  };
}

/** Force and moment at a trim and level, and their slopes by the level (l) and the trim (p). */
interface Look {
  readonly under: Under;
  readonly f: number;
  readonly m: number;
  readonly fl: number;
  readonly fp: number;
  readonly ml: number;
  readonly mp: number;
}
