import type { Sym3, Vec, Wrench } from "../base";
import { cos, sin, wrench } from "../base";
import type { State, Surroundings } from "../forces";
import type { EyeMotion, LinePull, MovingLine, RodEnd } from "../line";
import { BallWatch, PASSES } from "./ball-watch";
import type { RodState, Timeline } from "./cadence";
import type { Scene } from "./engine/scene";
import { HookDrive } from "./hook-drive";
import { Momentum, type Nu } from "./momentum";
import type { HangingHook } from "./types";

/** What the bait's motion obeys (an `Evaluator` of the forces room); body axes about G. */
export interface Dynamics {
  /** Takes a state: the rest is then of that state. */
  evaluate(state: State): void;
  readonly force: Wrench;
  /** Rigid + added mass, and the added mass of what has gone under since the last state. */
  readonly mass: Sym3;
  readonly entered: Sym3;
}

/** Rod, reel and line at work. */
export interface Rig {
  readonly line: MovingLine;
  readonly rod: Timeline;
  /** Line out at the start, m. */
  readonly lineOut: number;
  /** Tie eye relative to G, body axes, m. */
  readonly tie: Vec;
}

export interface StepperParts {
  readonly scene: Scene;
  readonly dynamics: Dynamics;
  readonly around: Surroundings;
  readonly hooks: readonly HangingHook[];
  readonly balls: readonly { readonly diameter: number; readonly mass: number }[];
  readonly rig: Rig | null;
  /** Step, s. */
  readonly h: number;
  /** Velocity of G (world, m/s) and pitch rate (rad/s) at the start. */
  readonly velocity?: { readonly x: number; readonly z: number; readonly q: number };
}

/**
 * Takes the engine through time, one fixed step h after the other (docs/model.md §8). Places are at t, momenta and the
 * engine's velocities half a step before (leapfrog):
 *
 *  1. `read`: the momentum at t is p(t − h/2) + h/2·(its last rate); from it the velocity, at the present place.
 *  2. `rates`: force on the bait; with it λ, the wrench with which joints and contacts held the bait in the last step.
 *  3. `haul`: the pull of the line, which reckons with the eye's inverse mass.
 *  4. `advance`: p* = p + h·rate, and v* = R M⁻¹ Rᵀ p* at the attitude of t + h/2, is what the engine is to have: it gets the
 *     force m_p (v* − v)/h − λ. In its step it adds this step's constraint forces λ′, divided by its own scalar mass m_p; so
 *     λ′ = λ + m_p (v′ − v*)/h is read off, and p(t + h/2) = p* + h (λ′ − λ).
 *
 * The momentum thus gets every constraint impulse whole and in its own step. The engine's velocity differs from v* by
 * h (1/m_p − 1/M)(λ′ − λ) for one step, which cancels out over the steps. With m_p and I_p those of the bait without added
 * mass, M_p ≤ M in every direction: an error in λ dies out (z² − 2gz + g = 0 with 0 ≤ g = 1 − m_p/M < 1, |z| = √g), and no
 * impact gains energy.
 */
export class Stepper {
  readonly scene: Scene;
  readonly h: number;
  /** Steps done. */
  step = 0;

  /** The bait at the present moment: state of its G, velocity in the world, sine and cosine of the pitch. */
  readonly state: State = { u: 0, w: 0, q: 0, pitch: 0, X: 0, Z: 0 };
  readonly velocity = { x: 0, z: 0 };
  sin = 0;
  cos = 1;
  /** λ: wrench of joints and contacts on the bait in the last step; world axes, moment about G. */
  readonly held: Wrench = wrench();
  /** Rod and line at the present moment. */
  readonly rod: RodState = { x: 0, z: 0, vx: 0, vz: 0, wound: 0, winding: 0, free: false, gone: true };
  readonly rodEnd: RodEnd = { x: 0, z: 0, vx: 0, vz: 0, length: 0, lengthRate: 0, free: false };
  readonly eye: EyeMotion = { x: 0, z: 0, vx: 0, vz: 0, ax: 0, az: 0, wxx: 0, wxz: 0, wzz: 0 };
  readonly pull: LinePull = { x: 0, z: 0, tension: 0, slack: true };
  readonly hooks: HookDrive;

  private readonly balls: BallWatch;
  private readonly parts: StepperParts;
  private readonly momentum = new Momentum();
  private readonly nu: Nu = { u: 0, w: 0, q: 0 };
  /** Rate of momentum: world axes, moment about G. Of the present moment, λ and line included. */
  private readonly rate: Wrench = wrench();
  /** λ of the step before the last. */
  private readonly heldBefore: Wrench = wrench();
  /** Line drawn off the reel, m. */
  private paidOut = 0;
  private readonly force = { x: 0, y: 0 };
  private readonly mass: number;
  private readonly inertia: number;

  constructor(parts: StepperParts) {
    const { scene, hooks, balls, around, h } = parts;
    this.parts = parts;
    this.scene = scene;
    this.h = h;
    this.hooks = new HookDrive(hooks, scene.hooks, around, h);
    this.balls = new BallWatch(balls, scene.balls, h);
    this.mass = scene.bait.getMass();
    this.inertia = scene.bait.getInertia();
    this.guessHeld();
    this.start(parts.velocity ?? { x: 0, z: 0, q: 0 });
  }

  /** s */
  get time(): number {
    return this.step * this.h;
  }

  /** The bait's momentum half a step ago, with that of the water it moves: world axes, N·s, and about G, N·m·s. */
  carried(): { readonly x: number; readonly z: number; readonly l: number } {
    const { x, z, l } = this.momentum;
    return { x, z, l };
  }

  /** λ before the first step: hooks hang and balls lie still. */
  private guessHeld(): void {
    const { scene, around, balls } = this.parts;
    const { x: X } = scene.bait.getPosition();
    const add = (x: number, weight: number): void => {
      this.held.z -= weight;
      this.held.m -= (x - X) * weight;
    };
    scene.hooks.forEach((body, i) => {
      add(body.getPosition().x, this.hooks.weightInWater(i));
    });
    scene.balls.forEach((body, i) => {
      add(body.getPosition().x, around.gravity * (balls[i]?.mass ?? 0));
    });
    Object.assign(this.heldBefore, this.held);
  }

  /** Momenta and the engine's velocities start half a step early. Hooks and balls move with the place that holds them. */
  private start(velocity: { readonly x: number; readonly z: number; readonly q: number }): void {
    const { bait, hooks, joints, balls } = this.scene;
    const { momentum, rate, state, parts } = this;
    const { current } = parts.around;
    const turned = bait.getTransform().q;
    const x = velocity.x - current.x;
    const z = velocity.z - current.z;
    const nu: Nu = { u: x * turned.c + z * turned.s, w: z * turned.c - x * turned.s, q: velocity.q };
    this.place();
    state.u = nu.u + current.x * turned.c + current.z * turned.s;
    state.w = nu.w + current.z * turned.c - current.x * turned.s;
    state.q = nu.q;
    parts.dynamics.evaluate(state);
    momentum.start(parts.dynamics.mass, turned.s, turned.c, nu);
    // the acceleration at the start, from the rates of momentum there
    this.evaluate();
    const a = this.acceleration();
    momentum.x -= (this.h / 2) * rate.x;
    momentum.z -= (this.h / 2) * rate.z;
    momentum.l -= (this.h / 2) * rate.m;
    const half = this.h / 2;
    const { q } = velocity;
    const centre = bait.getPosition();
    const along = (at: { x: number; y: number }): { x: number; y: number } => {
      const rx = at.x - centre.x;
      const rz = at.y - centre.y;
      return {
        x: velocity.x - q * rz - half * (a.x - a.q * rz - q * q * rx),
        y: velocity.z + q * rx - half * (a.z + a.q * rx - q * q * rz),
      };
    };
    bait.setLinearVelocity(along(centre));
    bait.setAngularVelocity(q - half * a.q);
    hooks.forEach((body, i) => {
      const eye = joints[i]?.getAnchorA();
      if (eye !== undefined) body.setLinearVelocity(along(eye));
    });
    for (const ball of balls) {
      ball.setLinearVelocity(along(ball.getPosition()));
      ball.setAngularVelocity(q - half * a.q);
    }
  }

  /** Goes on to the next moment. */
  advance(): void {
    this.drive();
    this.hooks.push();
    this.scene.world.step(this.h, this.balls.passes(this.target, this.state), PASSES.places);
    this.hooks.after();
    this.takeHeld();
    this.step++;
    this.evaluate();
  }

  /** Reads the present moment and finds the rates at it. */
  private evaluate(): void {
    this.place();
    this.read();
    this.rates();
    this.haul();
  }

  private place(): void {
    const { bait } = this.scene;
    const { state } = this;
    const at = bait.getPosition();
    const turned = bait.getTransform().q;
    this.sin = turned.s;
    this.cos = turned.c;
    state.pitch = bait.getAngle();
    state.X = at.x;
    state.Z = at.y;
  }

  /** The part of λ that lasts: what the last two steps have in common, so that one hit is not taken for a pull. */
  private lasting(now: number, before: number): number {
    if (now > 0) return before > 0 ? Math.min(now, before) : 0;
    return before < 0 ? Math.max(now, before) : 0;
  }

  /** Velocity at the present moment. */
  private read(): void {
    const { momentum: p, rate, held, heldBefore, nu, state, velocity, sin: s, cos: c } = this;
    const { current } = this.parts.around;
    const half = this.h / 2;
    const x = p.x + half * (rate.x + this.lasting(held.x, heldBefore.x) - heldBefore.x);
    const z = p.z + half * (rate.z + this.lasting(held.z, heldBefore.z) - heldBefore.z);
    const l = p.l + half * (rate.m + this.lasting(held.m, heldBefore.m) - heldBefore.m);
    p.velocity(s, c, x, z, l, nu);
    velocity.x = nu.u * c - nu.w * s + current.x;
    velocity.z = nu.u * s + nu.w * c + current.z;
    state.u = velocity.x * c + velocity.z * s;
    state.w = velocity.z * c - velocity.x * s;
    state.q = nu.q;
  }

  /** Rates of momentum without the line: dp/dt = R·force + λ, dl/dt = moment − v × p + λ_m. */
  private rates(): void {
    const { rate, held, sin: s, cos: c } = this;
    const { dynamics } = this.parts;
    dynamics.evaluate(this.state);
    const { force, mass, entered } = dynamics;
    if (this.momentum.change(mass, entered, s, c)) this.read();
    const { u, w, q } = this.nu;
    const pu = mass.a11 * u + mass.a13 * w + mass.a15 * q;
    const pw = mass.a13 * u + mass.a33 * w + mass.a35 * q;
    rate.x = force.x * c - force.z * s + held.x;
    rate.z = force.x * s + force.z * c + held.z;
    rate.m = force.m - (u * pw - w * pu) + held.m;
  }

  /** Acceleration of G in the world (m/s²) and in pitch (rad/s²) that goes with the present rates. */
  private acceleration(): { x: number; z: number; q: number } {
    const { nu, rate, sin: s, cos: c } = this;
    const m = this.parts.dynamics.mass;
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

  /** Lets the line pull at the tie eye. */
  private haul(): void {
    const { rig } = this.parts;
    const { rod, rodEnd, pull, eye, rate } = this;
    pull.x = 0;
    pull.z = 0;
    pull.tension = 0;
    pull.slack = true;
    if (rig === null) return;
    rig.rod.at(this.time, rod);
    if (rod.gone) return;
    const arm = this.readEye(rig.tie);
    rodEnd.x = rod.x;
    rodEnd.z = rod.z;
    rodEnd.vx = rod.vx;
    rodEnd.vz = rod.vz;
    rodEnd.free = rod.free;
    rodEnd.length = rig.lineOut + this.paidOut - rod.wound;
    rodEnd.lengthRate = -rod.winding;
    if (rod.free) {
      const dx = rod.x - eye.x;
      const dz = rod.z - eye.z;
      const drawn = Math.max(0, Math.sqrt(dx * dx + dz * dz) - rodEnd.length);
      this.paidOut += drawn;
      rodEnd.length += drawn;
    }
    rig.line.pull(this.h, eye, rodEnd, pull);
    rate.x += pull.x;
    rate.z += pull.z;
    rate.m += arm.x * pull.z - arm.z * pull.x;
  }

  /** Place, velocity, free acceleration and inverse mass of the tie eye, world axes; gives its arm from G. */
  private readEye(tie: Vec): Vec {
    const { eye, state, sin: s, cos: c } = this;
    const { bait } = this.scene;
    const { x: tx, z: tz } = tie;
    const rx = tx * c - tz * s;
    const rz = tx * s + tz * c;
    const v = bait.getLinearVelocity();
    const spin = bait.getAngularVelocity();
    eye.x = state.X + rx;
    eye.z = state.Z + rz;
    eye.vx = v.x - spin * rz;
    eye.vz = v.y + spin * rx;
    const a = this.acceleration();
    const q = state.q;
    eye.ax = a.x - a.q * rz - q * q * rx;
    eye.az = a.z + a.q * rx - q * q * rz;
    // W = J M⁻¹ Jᵀ with J = [1 0 −z_t; 0 1 x_t], then turned to world axes.
    const { inverse: w } = this.momentum;
    const xx = w.a11 - 2 * tz * w.a15 + tz * tz * w.a55;
    const xz = w.a13 + tx * w.a15 - tz * w.a35 - tx * tz * w.a55;
    const zz = w.a33 + 2 * tx * w.a35 + tx * tx * w.a55;
    eye.wxx = c * c * xx - 2 * s * c * xz + s * s * zz;
    eye.wzz = s * s * xx + 2 * s * c * xz + c * c * zz;
    eye.wxz = s * c * (xx - zz) + (c * c - s * s) * xz;
    return { x: rx, z: rz };
  }

  /** Momentum half a step on, but for the change of λ; the engine gets what makes its velocity fit. */
  private drive(): void {
    const { momentum: p, rate, held, nu, h, force, target, state } = this;
    const { current } = this.parts.around;
    const { bait } = this.scene;
    p.x += h * rate.x;
    p.z += h * rate.z;
    p.l += h * rate.m;
    // the attitude half a step on
    const angle = state.pitch + (h / 2) * state.q;
    const s = sin(angle);
    const c = cos(angle);
    p.velocity(s, c, p.x, p.z, p.l, nu);
    target.x = nu.u * c - nu.w * s + current.x;
    target.z = nu.u * s + nu.w * c + current.z;
    target.q = nu.q;
    const v = bait.getLinearVelocity();
    force.x = (this.mass * (target.x - v.x)) / h - held.x;
    force.y = (this.mass * (target.z - v.y)) / h - held.z;
    bait.applyForceToCenter(force, false);
    bait.applyTorque((this.inertia * (target.q - bait.getAngularVelocity())) / h - held.m, false);
  }

  /** Velocity that the engine is to have half a step on, world axes. */
  private readonly target = { x: 0, z: 0, q: 0 };

  /** After the engine's step: λ of that step, and with it the momentum. */
  private takeHeld(): void {
    const { momentum: p, held, heldBefore, target, h, mass } = this;
    const { bait } = this.scene;
    const v = bait.getLinearVelocity();
    const x = (mass * (v.x - target.x)) / h;
    const z = (mass * (v.y - target.z)) / h;
    const m = (this.inertia * (bait.getAngularVelocity() - target.q)) / h;
    p.x += h * x;
    p.z += h * z;
    p.l += h * m;
    heldBefore.x = held.x;
    heldBefore.z = held.z;
    heldBefore.m = held.m;
    held.x += x;
    held.z += z;
    held.m += m;
  }
}
