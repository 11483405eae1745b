import type { Sym3, Vec, Wrench } from "../base";
import { sym3, wrench } from "../base";
import type { Acceleration, State, Surroundings } from "../forces";
import type { EyeMotion, LinePull, MovingLine, RodEnd } from "../line";
import type { RodState, Timeline } from "./cadence";
import type { Scene } from "./engine/scene";
import type { HangingHook } from "./types";

/** What the bait's motion obeys (an `Evaluator` of the forces room): M·ν̇ = τ in body axes about G. */
export interface Dynamics {
  /** Takes a state: the rest is then of that state. */
  evaluate(state: State): void;
  readonly mass: Sym3;
  /** Rates of the state's u, w, q with a further wrench on the bait. */
  accelerate(more: Wrench, out: Acceleration): Acceleration;
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

/** A ball that crosses more than this share of its radius in one step is swept through it by the engine. */
const SWEPT = 0.25;

/**
 * Passes of the engine's solver over velocities and places. Hooks are light and meet only in the bait: few are enough
 * (impulses and places agree with 8 and 3 passes within 1e-6). Balls that touch need more.
 */
const PASSES = { hooks: [4, 2], balls: [8, 3] } as const;

/**
 * Takes the engine through time, one fixed step after the other (docs/model.md §8):
 *
 *  1. `read`: place, and velocity at the same moment. The engine's velocity is that of half a step ago (leapfrog), so half
 *     a step of the last acceleration is added.
 *  2. `accelerate` and `haul`: M and τ for that state; τ also gets λ, the wrench with which joints and contacts held the
 *     bait in the last step; then the line, which reckons with the eye's inverse mass.
 *  3. `advance`: the acceleration a = M⁻¹τ is given to the engine as the force m_p·a − λ; in its step the engine adds this
 *     step's constraint forces, divided by its own scalar mass m_p. Afterwards λ = m_p·Δv/h − force.
 *
 * So over the steps every constraint impulse goes through the full mass matrix, one step late. The change from
 * one step to the next obeys λ′ − λ* = (1 − m_p/M)(λ − λ*) at a wall, which shrinks for m_p < 2M in every direction.
 */
export class Stepper {
  readonly scene: Scene;
  readonly h: number;
  /** Steps done. */
  step = 0;

  /** The bait at the present moment, and its inverse mass matrix. */
  readonly state: State = { u: 0, w: 0, q: 0, pitch: 0, X: 0, Z: 0 };
  readonly velocity = { x: 0, z: 0 };
  sin = 0;
  cos = 1;
  readonly acceleration: Acceleration = [0, 0, 0];
  /** Wrench of joints and contacts on the bait in the last step: world axes, moment about G. */
  readonly held: Wrench = wrench();
  /** Rod and line at the present moment. */
  readonly rod: RodState = { x: 0, z: 0, vx: 0, vz: 0, wound: 0, winding: 0, free: false, gone: true };
  readonly rodEnd: RodEnd = { x: 0, z: 0, vx: 0, vz: 0, length: 0, lengthRate: 0, free: false };
  readonly eye: EyeMotion = { x: 0, z: 0, vx: 0, vz: 0, ax: 0, az: 0, wxx: 0, wxz: 0, wzz: 0 };
  readonly pull: LinePull = { x: 0, z: 0, tension: 0, slack: true };

  private readonly parts: StepperParts;
  private readonly inverse: Sym3 = sym3();
  private readonly heldInBody: Wrench = wrench();
  /** Wrench given to the engine for the coming step. */
  private readonly applied: Wrench = wrench();
  /** Change of the engine's velocity over the last step, per second: bait (x, z, angle) and each hook (x, z). */
  private readonly last = { x: 0, z: 0, q: 0 };
  private readonly lastHooks: Float64Array;
  /** Line drawn off the reel, m. */
  private paidOut = 0;
  private readonly force = { x: 0, y: 0 };
  private readonly passes: readonly [number, number];

  constructor(parts: StepperParts) {
    this.parts = parts;
    this.scene = parts.scene;
    this.h = parts.h;
    this.lastHooks = new Float64Array(2 * parts.hooks.length);
    this.passes = parts.balls.length > 0 ? PASSES.balls : PASSES.hooks;
    this.guessHeld();
    this.start(parts.velocity ?? { x: 0, z: 0, q: 0 });
  }

  /** s */
  get time(): number {
    return this.step * this.h;
  }

  /** λ before the first step: hooks hang and balls lie still. */
  private guessHeld(): void {
    const { scene, around, hooks, balls } = this.parts;
    const { x: X } = scene.bait.getPosition();
    const add = (x: number, weight: number): void => {
      this.held.z -= weight;
      this.held.m -= (x - X) * weight;
    };
    scene.hooks.forEach((body, i) => {
      const hook = hooks[i];
      if (hook === undefined) return;
      const { x, y } = body.getPosition();
      add(x, around.gravity * (hook.mass - around.density * hook.displaced * this.underWater(y, hook)));
    });
    scene.balls.forEach((body, i) => {
      add(body.getPosition().x, around.gravity * (balls[i]?.mass ?? 0));
    });
  }

  /**
   * The engine starts half a step early: v₀ − h/2·a₀. Hooks and balls start with the velocity of the place where they
   * are held.
   */
  private start(velocity: { readonly x: number; readonly z: number; readonly q: number }): void {
    const { bait, hooks, joints, balls } = this.scene;
    bait.setLinearVelocity({ x: velocity.x, y: velocity.z });
    bait.setAngularVelocity(velocity.q);
    this.evaluate();
    const { x: ax, z: az } = this.worldAcceleration();
    const alpha = this.acceleration[2];
    this.last.x = ax;
    this.last.z = az;
    this.last.q = alpha;
    const half = this.h / 2;
    const q = velocity.q;
    const centre = bait.getPosition();
    const along = (at: { x: number; y: number }): { x: number; y: number } => {
      const rx = at.x - centre.x;
      const rz = at.y - centre.y;
      return {
        x: velocity.x - q * rz - half * (ax - alpha * rz - q * q * rx),
        y: velocity.z + q * rx - half * (az + alpha * rx - q * q * rz),
      };
    };
    bait.setLinearVelocity(along(centre));
    bait.setAngularVelocity(q - half * alpha);
    hooks.forEach((body, i) => {
      const eye = joints[i]?.getAnchorA();
      if (eye !== undefined) body.setLinearVelocity(along(eye));
    });
    for (const ball of balls) {
      ball.setLinearVelocity(along(ball.getPosition()));
      ball.setAngularVelocity(q - half * alpha);
    }
  }

  /** Goes on to the next moment. */
  advance(): void {
    this.push();
    this.pushHooks();
    this.sweepFastBalls();
    const { bait, hooks, world } = this.scene;
    const before = bait.getLinearVelocity();
    const vx = before.x;
    const vz = before.y;
    const q = bait.getAngularVelocity();
    for (let i = 0; i < hooks.length; i++) {
      const v = (hooks[i] as (typeof hooks)[number]).getLinearVelocity();
      this.lastHooks[2 * i] = v.x;
      this.lastHooks[2 * i + 1] = v.y;
    }

    world.step(this.h, this.passes[0], this.passes[1]);

    const after = bait.getLinearVelocity();
    this.last.x = (after.x - vx) / this.h;
    this.last.z = (after.y - vz) / this.h;
    this.last.q = (bait.getAngularVelocity() - q) / this.h;
    const mass = bait.getMass();
    this.held.x = mass * this.last.x - this.applied.x;
    this.held.z = mass * this.last.z - this.applied.z;
    this.held.m = bait.getInertia() * this.last.q - this.applied.m;
    for (let i = 0; i < hooks.length; i++) {
      const v = (hooks[i] as (typeof hooks)[number]).getLinearVelocity();
      this.lastHooks[2 * i] = (v.x - (this.lastHooks[2 * i] as number)) / this.h;
      this.lastHooks[2 * i + 1] = (v.y - (this.lastHooks[2 * i + 1] as number)) / this.h;
    }
    this.step++;
    this.evaluate();
  }

  /** Reads the present moment and finds the acceleration at it. */
  private evaluate(): void {
    this.read();
    this.accelerate();
    this.haul();
  }

  private read(): void {
    const { bait } = this.scene;
    const { state, last } = this;
    const half = this.h / 2;
    const at = bait.getPosition();
    const v = bait.getLinearVelocity();
    const turned = bait.getTransform().q;
    const s = turned.s;
    const c = turned.c;
    const VX = v.x + half * last.x;
    const VZ = v.y + half * last.z;
    this.sin = s;
    this.cos = c;
    this.velocity.x = VX;
    this.velocity.z = VZ;
    state.u = VX * c + VZ * s;
    state.w = VZ * c - VX * s;
    state.q = bait.getAngularVelocity() + half * last.q;
    state.pitch = bait.getAngle();
    state.X = at.x;
    state.Z = at.y;
  }

  /** ν̇ = M⁻¹(τ + λ), body axes. */
  private accelerate(): void {
    const { dynamics } = this.parts;
    const { held, heldInBody, sin: s, cos: c } = this;
    heldInBody.x = held.x * c + held.z * s;
    heldInBody.z = held.z * c - held.x * s;
    heldInBody.m = held.m;
    dynamics.evaluate(this.state);
    dynamics.accelerate(heldInBody, this.acceleration);
  }

  /** Lets the line pull at the tie eye. */
  private haul(): void {
    const { rig } = this.parts;
    const { rod, rodEnd, pull, eye } = this;
    pull.x = 0;
    pull.z = 0;
    pull.tension = 0;
    pull.slack = true;
    if (rig === null) return;
    rig.rod.at(this.time, rod);
    if (rod.gone) return;
    invert(this.parts.dynamics.mass, this.inverse);
    this.readEye(rig.tie);
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
      const short = Math.sqrt(dx * dx + dz * dz) - rodEnd.length;
      if (short > 0) {
        this.paidOut += short;
        rodEnd.length += short;
      }
    }
    rig.line.pull(this.h, eye, rodEnd, pull);
    if (pull.tension === 0) return;
    const { sin: s, cos: c, inverse: w, acceleration: a } = this;
    const x = pull.x * c + pull.z * s;
    const z = pull.z * c - pull.x * s;
    const m = rig.tie.x * z - rig.tie.z * x;
    a[0] += w.a11 * x + w.a13 * z + w.a15 * m;
    a[1] += w.a13 * x + w.a33 * z + w.a35 * m;
    a[2] += w.a15 * x + w.a35 * z + w.a55 * m;
  }

  /** Place, velocity, free acceleration and inverse mass of the tie eye, world axes. */
  private readEye(tie: Vec): void {
    const { eye, state, velocity, sin: s, cos: c, inverse: w, acceleration: a } = this;
    const { x: tx, z: tz } = tie;
    const rx = tx * c - tz * s;
    const rz = tx * s + tz * c;
    const q = state.q;
    eye.x = state.X + rx;
    eye.z = state.Z + rz;
    eye.vx = velocity.x - q * rz;
    eye.vz = velocity.z + q * rx;
    const ax = a[0] - q * state.w;
    const az = a[1] + q * state.u;
    eye.ax = ax * c - az * s - a[2] * rz - q * q * rx;
    eye.az = ax * s + az * c + a[2] * rx - q * q * rz;
    // W = J M⁻¹ Jᵀ with J = [1 0 −z_t; 0 1 x_t], then turned to world axes.
    const xx = w.a11 - 2 * tz * w.a15 + tz * tz * w.a55;
    const xz = w.a13 + tx * w.a15 - tz * w.a35 - tx * tz * w.a55;
    const zz = w.a33 + 2 * tx * w.a35 + tx * tx * w.a55;
    eye.wxx = c * c * xx - 2 * s * c * xz + s * s * zz;
    eye.wzz = s * s * xx + 2 * s * c * xz + c * c * zz;
    eye.wxz = s * c * (xx - zz) + (c * c - s * s) * xz;
  }

  /** Acceleration of G in the world: R(u̇ − q w, ẇ + q u). */
  worldAcceleration(): { x: number; z: number } {
    const { state, acceleration: a, sin: s, cos: c } = this;
    const x = a[0] - state.q * state.w;
    const z = a[1] + state.q * state.u;
    return { x: x * c - z * s, z: x * s + z * c };
  }

  private push(): void {
    const { bait } = this.scene;
    const { applied, held, force } = this;
    const a = this.worldAcceleration();
    const mass = bait.getMass();
    applied.x = mass * a.x - held.x;
    applied.z = mass * a.z - held.z;
    applied.m = bait.getInertia() * this.acceleration[2] - held.m;
    force.x = applied.x;
    force.y = applied.z;
    bait.applyForceToCenter(force, false);
    bait.applyTorque(applied.m, false);
  }

  /** Share of a hook under water, its middle taken for the whole: rises evenly with depth over its length. */
  private underWater(z: number, hook: HangingHook): number {
    if (!this.parts.around.surface) return 1;
    return Math.min(1, Math.max(0, 0.5 - z / hook.length));
  }

  /** Share of hook `i` under water, 0–1. */
  hookUnderWater(i: number): number {
    const hook = this.parts.hooks[i];
    const body = this.scene.hooks[i];
    return hook === undefined || body === undefined ? 0 : this.underWater(body.getPosition().y, hook);
  }

  /** Buoyancy and drag of the hooks at their centres; their weight is the engine's. */
  private pushHooks(): void {
    const { hooks, around } = this.parts;
    const { force, lastHooks } = this;
    const half = this.h / 2;
    for (let i = 0; i < hooks.length; i++) {
      const hook = hooks[i] as HangingHook;
      const body = this.scene.hooks[i] as Scene["hooks"][number];
      const under = this.underWater(body.getPosition().y, hook);
      if (under === 0) continue;
      const v = body.getLinearVelocity();
      const vx = v.x + half * (lastHooks[2 * i] as number) - around.current.x;
      const vz = v.y + half * (lastHooks[2 * i + 1] as number) - around.current.z;
      // −½ρ (C_d A) |v| v (docs/model.md §6.8)
      const drag = 0.5 * around.density * hook.dragArea * under * Math.sqrt(vx * vx + vz * vz);
      force.x = -drag * vx;
      force.y = -drag * vz + around.density * around.gravity * hook.displaced * under;
      body.applyForceToCenter(force, false);
    }
  }

  private sweepFastBalls(): void {
    const { balls } = this.parts;
    if (balls.length === 0) return;
    const { bait } = this.scene;
    const at = bait.getPosition();
    const v = bait.getLinearVelocity();
    const q = bait.getAngularVelocity();
    for (let i = 0; i < balls.length; i++) {
      const ball = this.scene.balls[i] as Scene["balls"][number];
      const p = ball.getPosition();
      const u = ball.getLinearVelocity();
      const dx = u.x - (v.x - q * (p.y - at.y));
      const dz = u.y - (v.y + q * (p.x - at.x));
      const reach = (SWEPT * (balls[i]?.diameter ?? 0)) / 2;
      ball.setBullet((dx * dx + dz * dz) * this.h * this.h > reach * reach);
    }
  }
}

/** Inverse of a symmetric positive definite matrix by cofactors. */
function invert(m: Sym3, out: Sym3): void {
  const c11 = m.a33 * m.a55 - m.a35 * m.a35;
  const c13 = m.a15 * m.a35 - m.a13 * m.a55;
  const c15 = m.a13 * m.a35 - m.a15 * m.a33;
  const k = 1 / (m.a11 * c11 + m.a13 * c13 + m.a15 * c15);
  out.a11 = k * c11;
  out.a13 = k * c13;
  out.a15 = k * c15;
  out.a33 = k * (m.a11 * m.a55 - m.a15 * m.a15);
  out.a35 = k * (m.a13 * m.a15 - m.a11 * m.a35);
  out.a55 = k * (m.a11 * m.a33 - m.a13 * m.a13);
}
