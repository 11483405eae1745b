import type { Under, Wettable } from "./wet";

/** Relative size of force and moment at which an equilibrium counts as found. */
const FOUND = 1e-11;

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
 * Polishes a trim and level until force and moment balance: Newton's method in two unknowns, its Jacobian by differences and
 * then kept up by Broyden's rule. Null where that does not settle, or settles on a trim that is not stable.
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
  const length = wet.shape.length;
  const root = Math.sqrt(load.needed);
  /** Force (in the form of `Load.excess`, without unit) and moment over weight × length. */
  const residual = (p: number, l: number): [number, number, Under] => {
    const sin = Math.sin(p);
    const cos = Math.cos(p);
    const u = wet.under({ sin, cos, level: l });
    const moment = u.x * cos - u.z * sin - u.volume * (G.x * cos - G.z * sin);
    return [load.excess(u.volume) / root, moment / (load.needed * length), u];
  };
  let [f, m, under] = residual(pitch, level);
  // Steps for the slopes: small against the height that is still above (or under) the water.
  const slope = load.slope(under.volume, under.waterplaneArea) / root;
  if (!(slope > 0)) return null;
  const dl = -1e-3 * Math.min(height / 10, 1 / slope);
  const dp = 1e-4;
  const [fl, ml] = residual(pitch, level + dl);
  const [fp, mp] = residual(pitch + dp, level);
  let Jfl = (fl - f) / dl;
  let Jfp = (fp - f) / dp;
  let Jml = (ml - m) / dl;
  let Jmp = (mp - m) / dp;
  for (let k = 0; k < 16; k++) {
    const force = under.volume / load.needed - 1;
    if (Math.abs(force) <= FOUND && Math.abs(m) <= FOUND) {
      // Stable: at balanced force the moment falls as the nose rises.
      return Jmp - (Jml * Jfp) / Jfl < 0 ? { pitch, level, under } : null;
    }
    const det = Jfl * Jmp - Jfp * Jml;
    let stepL = (-f * Jmp + m * Jfp) / det;
    let stepP = (-m * Jfl + f * Jml) / det;
    const most = Math.max(Math.abs(stepP) / mostTurn, Math.abs(stepL) / (height / 2));
    if (!Number.isFinite(most)) return null;
    if (most > 1) {
      stepL /= most;
      stepP /= most;
    }
    let next = residual(pitch + stepP, level + stepL);
    // Not so far that all or nothing is under: there is no slope to come back by.
    for (let half = 0; half < 6 && !(load.slope(next[2].volume, next[2].waterplaneArea) > 0); half++) {
      stepL /= 2;
      stepP /= 2;
      next = residual(pitch + stepP, level + stepL);
    }
    level += stepL;
    pitch += stepP;
    const [f1, m1, u1] = next;
    // Broyden 1965, Math. Comp. 19:577–593, with unknowns scaled by height and 1 rad.
    const rf = f1 - f - Jfl * stepL - Jfp * stepP;
    const rm = m1 - m - Jml * stepL - Jmp * stepP;
    const norm = (stepL / height) ** 2 + stepP ** 2;
    const sl = stepL / (height * height) / norm;
    const sp = stepP / norm;
    Jfl += rf * sl;
    Jfp += rf * sp;
    Jml += rm * sl;
    Jmp += rm * sp;
    f = f1;
    m = m1;
    under = u1;
  }
  return null;
}
