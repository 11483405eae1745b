import type { Under, Wettable } from "./wet";

/** Relative size of force and moment at which an equilibrium counts as found. */
const FOUND = 1e-11;

/**
 * A step from residuals below this needs no look at its end: each step leaves some thousandth of them, by what the slopes miss
 * of the coats.
 */
const LAST_STEP = 1e-8;

/** What has to be under water to carry a bait, m³. */
export class Load {
  /** What then stays above the water, m³; below 0 for a sinker. */
  readonly emergent: number;

  /** @param needed mass over the water's density; @param total everything displaced when all is under */
  constructor(
    readonly needed: number,
    readonly total: number,
  ) {
    this.emergent = total - needed;
  }

  /**
   * Force out of balance, below 0 where too little is under, in a form that is nearly linear in the level right up to the last
   * tip under or above water: the difference of the square roots of the smaller volume, that under or that above.
   */
  excess(volume: number): number {
    return this.needed > this.emergent
      ? Math.sqrt(this.emergent) - Math.sqrt(Math.max(0, this.total - volume))
      : Math.sqrt(Math.max(0, volume)) - Math.sqrt(this.needed);
  }

  /** Its slope by the level, from the waterline's area (m²). */
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
 * Polishes a trim and level until force and moment balance: Newton's method in two unknowns. What the surface cuts
 * gives their slopes; what is missing in them (a little of the coats) is kept up by Broyden's rule. Null where that does not
 * settle, or settles on a trim that is not stable.
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
  /** Force (in the form of `Load.excess`, without unit) and moment over weight × length, with their slopes. */
  const look = (p: number, l: number): Look => {
    const sin = Math.sin(p);
    const cos = Math.cos(p);
    const under = wet.under({ sin, cos, level: l });
    const { volume, x, z, cut: A, cutMoment: S, cutSecond: I } = under;
    const Gx = G.x * cos - G.z * sin;
    const Gz = G.x * sin + G.z * cos;
    // Higher by dl, A·dl more is under. Turned by dp, what is at X rises by X·dp: S·dp less is under.
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
  // what is missing in the slopes
  let [efl, efp, eml, emp] = [0, 0, 0, 0];
  for (let k = 0; k < 20; k++) {
    const { f, m, under } = here;
    const Jfl = here.fl + efl;
    const Jfp = here.fp + efp;
    const Jml = here.ml + eml;
    const Jmp = here.mp + emp;
    // Stable: at balanced force the moment falls as the nose rises.
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
    // Not so far that all or nothing is under: there is no slope to come back by.
    for (let half = 0; half < 6 && !(next.fl > 0); half++) {
      stepL /= 2;
      stepP /= 2;
      next = look(pitch + stepP, level + stepL);
    }
    level += stepL;
    pitch += stepP;
    // Broyden 1965, Math. Comp. 19:577–593, with unknowns scaled by height and 1 rad, for the part that is not known; the
    // known part by the mean of its slopes at both ends.
    const rf = next.f - f - ((here.fl + next.fl) / 2 + efl) * stepL - ((here.fp + next.fp) / 2 + efp) * stepP;
    const rm = next.m - m - ((here.ml + next.ml) / 2 + eml) * stepL - ((here.mp + next.mp) / 2 + emp) * stepP;
    const norm = (stepL / height) ** 2 + stepP ** 2;
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

/** What is under after a small step in trim and level, to first order: a wedge dl − X·dp thick on what the surface cuts. */
function stepped(under: Under, pitch: number, level: number, dp: number, dl: number): Under {
  const sin = Math.sin(pitch);
  const cos = Math.cos(pitch);
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
