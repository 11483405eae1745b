import { cos, sin } from "../base";
import { Waterline } from "../hydrostatics";
import { cylinderTable } from "./coefficients";
import type { Swimmer, State, Surroundings } from "./types";

/**
 * A swimmer in its surroundings at one moment: the numbers that several forces share, worked out once by `enter`.
 * Scratch of one evaluation; the swimmer and the surroundings themselves are never written to.
 */
export class Situation {
  readonly swimmer: Swimmer;
  readonly around: Surroundings;
  readonly density: number;
  /** m²/s */
  readonly kinematic: number;
  readonly drag: Float64Array;
  /** Strips: x (m), ½ρ η f(r) 2hw ds (kg/m) and 2hw/ν (s/m). */
  readonly stripX: Float64Array;
  readonly stripDrag: Float64Array;
  readonly stripReynolds: Float64Array;

  sin = 0;
  cos = 1;
  /** Velocity of G through the water in body axes, m/s, and pitch rate. */
  u = 0;
  w = 0;
  q = 0;
  /** The current in body axes, m/s. */
  currentU = 0;
  currentW = 0;
  /** Height of G, m. */
  Z = 0;
  /** True: nothing is out of the water, every share is 1. */
  allUnder = true;
  readonly water: Waterline;

  constructor(swimmer: Swimmer, around: Surroundings) {
    const { density, viscosity, gravity, current } = around;
    for (const [name, value] of [
      ["density", density],
      ["viscosity", viscosity],
    ] as const)
      if (!(value > 0 && value < Infinity))
        throw new RangeError(`water ${name} ${value}: give a number above 0`);
    for (const [name, value] of [
      ["gravity", gravity],
      ["current along X", current.x],
      ["current along Z", current.z],
    ] as const)
      if (!Number.isFinite(value)) throw new RangeError(`${name} is ${value}: give a number`);
    if (around.surface && current.z !== 0)
      throw new RangeError(
        `a current of ${current.z} m/s upwards under a still surface cannot be: give 0, or no surface`,
      );
    this.swimmer = swimmer;
    this.around = around;
    this.density = density;
    this.kinematic = viscosity / density;
    this.drag = cylinderTable();
    const eta = swimmer.hull.endEffect;
    this.stripX = Float64Array.from(swimmer.strips, (s) => s.x);
    this.stripDrag = Float64Array.from(
      swimmer.strips,
      (s) => 0.5 * density * eta * s.shapeFactor * 2 * s.halfBreadth * s.ds,
    );
    this.stripReynolds = Float64Array.from(swimmer.strips, (s) => (2 * s.halfBreadth) / this.kinematic);
    this.water = new Waterline(swimmer);
    this.water.under(0, 0, 1);
  }

  /** Takes a state: axes, velocity through the water, what is under. */
  enter(state: State): void {
    const { pitch, u, w, q, Z } = state;
    const s = sin(pitch);
    const c = cos(pitch);
    const { current, surface } = this.around;
    this.sin = s;
    this.cos = c;
    // world to body axes: u = V_X cos θ + V_Z sin θ, w = −V_X sin θ + V_Z cos θ
    this.currentU = current.x * c + current.z * s;
    this.currentW = current.z * c - current.x * s;
    this.u = u - this.currentU;
    this.w = w - this.currentW;
    this.q = q;
    this.Z = Z;
    if (!(Number.isFinite(this.u) && Number.isFinite(this.w) && Number.isFinite(q) && Number.isFinite(Z)))
      throw new RangeError(
        `state of ${this.swimmer.bait.spec.name} is no longer a number: u ${u}, w ${w}, q ${q}, pitch ${pitch}, Z ${Z}; take smaller steps`,
      );
    const { reach } = this.water;
    if (!surface || Z + reach < 0) {
      this.water.under(Z, s, c);
      this.allUnder = true;
    } else {
      this.allUnder = false;
      if (Z - reach > 0) this.water.dry();
      else this.water.cut(Z, s, c);
    }
  }
}
