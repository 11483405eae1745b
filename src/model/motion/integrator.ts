import type { Sym3, Vec, Wrench } from "../base";
import { cos, sin, wrench } from "../base";
import type { State } from "../forces";
import type { EyeMotion, LinePull } from "../line";
import { type Constraint, steadyPart } from "./constraint";
import { Momentum, type Nu } from "./momentum";

/** What drives the bait's motion (an `Evaluator` of the forces room); body axes about G. */
export interface Dynamics {
  /** Takes a state: the members below are then those of that state. */
  evaluate(state: State): void;
  readonly force: Wrench;
  /** Rigid + added mass, and the added mass of what has gone under since the last state. */
  readonly mass: Sym3;
  readonly entered: Sym3;
}

/** Velocity of G (world axes, m/s) and pitch rate (rad/s). */
export interface Motion {
  x: number;
  z: number;
  q: number;
}

/** Where the bait is: place of G in the world (m), pitch (rad), and the pitch's sine and cosine. */
export interface Place {
  readonly x: number;
  readonly z: number;
  readonly pitch: number;
  readonly sin: number;
  readonly cos: number;
}

/**
 * The bait's equations of motion in time (docs/model.md §8). Places belong to the moment t, momenta to the moment half a step
 * before it (leapfrog). It knows neither the engine nor the rod: places and the constraint λ come from the engine, the line's
 * pull from the rig.
 */
export class Integrator {
  /** The bait at the present moment: its state, the velocity of G in the world, sine and cosine of the pitch. */
  readonly state: State = { u: 0, w: 0, q: 0, pitch: 0, X: 0, Z: 0 };
  readonly velocity = { x: 0, z: 0 };
  sin = 0;
  cos = 1;
  /** Velocity that the bait shall have half a step after the present moment, apart from the change of λ. */
  readonly target: Motion = { x: 0, z: 0, q: 0 };
  /** Momentum half a step before the present moment; half a step after it between `predict` and `correct`. */
  readonly momentum = new Momentum();

  /** Velocity through the water at the present moment, body axes. */
  private readonly nu: Nu = { u: 0, w: 0, q: 0 };
  /** Rate of the momentum at the present moment, λ and the line's pull included: world axes, moment about G. */
  private readonly rate: Wrench = wrench();

  constructor(
    private readonly dynamics: Dynamics,
    private readonly current: Vec,
    private readonly h: number,
  ) {}

  /** Takes the place of the present moment. */
  stand({ x, z, pitch, sin: s, cos: c }: Place): void {
    const { state } = this;
    this.sin = s;
    this.cos = c;
    state.pitch = pitch;
    state.X = x;
    state.Z = z;
  }

  /** The first moment: momentum and mass matrix for a velocity. The momentum still belongs to that moment itself. */
  begin(velocity: Motion): void {
    const { state, momentum, dynamics, current, sin: s, cos: c } = this;
    const x = velocity.x - current.x;
    const z = velocity.z - current.z;
    const nu: Nu = { u: x * c + z * s, w: z * c - x * s, q: velocity.q };
    state.u = nu.u + current.x * c + current.z * s;
    state.w = nu.w + current.z * c - current.x * s;
    state.q = nu.q;
    dynamics.evaluate(state);
    momentum.start(dynamics.mass, s, c, nu);
  }

  /** Takes the momentum of the first moment half a step back, with the rates found there. */
  stepBack(): void {
    const { momentum: p, rate, h } = this;
    p.x -= (h / 2) * rate.x;
    p.z -= (h / 2) * rate.z;
    p.l -= (h / 2) * rate.m;
  }

  /** Velocity at the present moment: the momentum half a step on with its last rate, and with the steady part of λ. */
  read({ now, before }: Constraint): void {
    const { momentum: p, rate, nu, state, velocity, current, sin: s, cos: c } = this;
    const half = this.h / 2;
    const x = p.x + half * (rate.x + steadyPart(now.x, before.x) - before.x);
    const z = p.z + half * (rate.z + steadyPart(now.z, before.z) - before.z);
    const l = p.l + half * (rate.m + steadyPart(now.m, before.m) - before.m);
    p.velocity(s, c, x, z, l, nu);
    velocity.x = nu.u * c - nu.w * s + current.x;
    velocity.z = nu.u * s + nu.w * c + current.z;
    state.u = velocity.x * c + velocity.z * s;
    state.w = velocity.z * c - velocity.x * s;
    state.q = nu.q;
  }

  /** Rates of the momentum without the line: dp/dt = R·force + λ, dl/dt = moment − v × p + λ_m. */
  rates(held: Constraint): void {
    const { rate, dynamics, sin: s, cos: c } = this;
    dynamics.evaluate(this.state);
    const { force, mass, entered } = dynamics;
    if (this.momentum.change(mass, entered, s, c)) this.read(held);
    const { u, w, q } = this.nu;
    const pu = mass.a11 * u + mass.a13 * w + mass.a15 * q;
    const pw = mass.a13 * u + mass.a33 * w + mass.a35 * q;
    rate.x = force.x * c - force.z * s + held.now.x;
    rate.z = force.x * s + force.z * c + held.now.z;
    rate.m = force.m - (u * pw - w * pu) + held.now.m;
  }

  /** Adds the line's pull at the tie eye to the rates. `arm`: from G to the eye, world axes, m. */
  pullAt(arm: Vec, pull: LinePull): void {
    const { rate } = this;
    rate.x += pull.x;
    rate.z += pull.z;
    rate.m += arm.x * pull.z - arm.z * pull.x;
  }

  /** Acceleration of G in the world (m/s²) and in pitch (rad/s²) that goes with the present rates. */
  acceleration(): Motion {
    const { nu, rate, sin: s, cos: c } = this;
    const m = this.dynamics.mass;
    const { u, w, q } = nu;
    const x = rate.x * c + rate.z * s + q * (m.a13 * u + m.a33 * w + m.a35 * q);
    const z = rate.z * c - rate.x * s - q * (m.a11 * u + m.a13 * w + m.a15 * q);
    const { inverse: v } = this.momentum;
    const du = v.a11 * x + v.a13 * z + v.a15 * rate.m - q * w;
    const dw = v.a13 * x + v.a33 * z + v.a35 * rate.m + q * u;
    return {
      x: du * c - dw * s,
      z: du * s + dw * c,
      q: v.a15 * x + v.a35 * z + v.a55 * rate.m,
    };
  }

  /**
   * Writes what the line must know of the tie eye: place, velocity, acceleration without the line, inverse mass; all in world
   * axes. Gives the arm from G to the eye, m.
   *
   * @param tie the eye from G, body axes, m
   * @param before the bait's velocity half a step before the present moment
   */
  readEye(tie: Vec, before: Readonly<Motion>, eye: EyeMotion): Vec {
    const { state, sin: s, cos: c } = this;
    const { x: tx, z: tz } = tie;
    const rx = tx * c - tz * s;
    const rz = tx * s + tz * c;
    eye.x = state.X + rx;
    eye.z = state.Z + rz;
    eye.vx = before.x - before.q * rz;
    eye.vz = before.z + before.q * rx;
    // the eye's acceleration: that of G, that of the turning, and towards G q²·arm (centripetal)
    const a = this.acceleration();
    const q = state.q;
    eye.ax = a.x - a.q * rz - q * q * rx;
    eye.az = a.z + a.q * rx - q * q * rz;
    // W = J M⁻¹ Jᵀ with J = [1 0 −z_t; 0 1 x_t], then turned to world axes
    const { inverse: w } = this.momentum;
    const xx = w.a11 - 2 * tz * w.a15 + tz * tz * w.a55;
    const xz = w.a13 + tx * w.a15 - tz * w.a35 - tx * tz * w.a55;
    const zz = w.a33 + 2 * tx * w.a35 + tx * tx * w.a55;
    eye.wxx = c * c * xx - 2 * s * c * xz + s * s * zz;
    eye.wzz = s * s * xx + 2 * s * c * xz + c * c * zz;
    eye.wxz = s * c * (xx - zz) + (c * c - s * s) * xz;
    return { x: rx, z: rz };
  }

  /** The momentum half a step after the present moment, as if λ stayed; from it `target`, at the attitude it will have then. */
  predict(): void {
    const { momentum: p, rate, nu, h, target, state, current } = this;
    p.x += h * rate.x;
    p.z += h * rate.z;
    p.l += h * rate.m;
    const angle = state.pitch + (h / 2) * state.q;
    const s = sin(angle);
    const c = cos(angle);
    p.velocity(s, c, p.x, p.z, p.l, nu);
    target.x = nu.u * c - nu.w * s + current.x;
    target.z = nu.u * s + nu.w * c + current.z;
    target.q = nu.q;
  }

  /** λ has changed by this: the momentum gets the impulse of the change. */
  correct(x: number, z: number, m: number): void {
    const { momentum: p, h } = this;
    p.x += h * x;
    p.z += h * z;
    p.l += h * m;
  }
}
