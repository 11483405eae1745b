import type { Vec } from "../base";
import type { Surroundings } from "../forces";
import type { EyeMotion } from "../line";
import { BallWatch, PASSES } from "./ball-watch";
import { Constraint } from "./constraint";
import type { EngineBodies } from "./engine/bodies";
import { Carrier } from "./engine/carrier";
import { HookDrive } from "./hook-drive";
import { type Dynamics, Integrator, type Motion } from "./integrator";
import { Rig, type RigParts } from "./rig";
import type { HangingHook } from "./types";

export interface StepperParts {
  readonly bodies: EngineBodies;
  readonly dynamics: Dynamics;
  readonly around: Surroundings;
  readonly hooks: readonly HangingHook[];
  readonly balls: readonly { readonly diameter: number; readonly mass: number }[];
  /** Null: no tackle. */
  readonly rig: RigParts | null;
  /** Step, s. */
  readonly h: number;
  /** Velocity at the start; default rest. */
  readonly velocity?: Motion;
}

/**
 * Moves bait, hooks, balls and line through time, one fixed step h after the other (docs/model.md §8):
 *
 *  1. The integrator predicts the momentum p* half a step ahead, and the velocity v* = R M⁻¹ Rᵀ p* that belongs to it.
 *  2. The carrier makes the engine bring the bait to v*. In this step the engine holds joints and contacts, with the wrench
 *     λ′.
 *  3. The carrier reads the change λ′ − λ from the engine: p = p* + h (λ′ − λ).
 *  4. At the new place the integrator finds velocity, forces and the rate of the momentum; the line pulls at the eye.
 *
 * So the momentum gets every impulse of a constraint whole and in its own step. The engine's velocity differs from v* by h
 * (1/m_p − 1/M)(λ′ − λ) for one step, which cancels over the steps. m_p and I_p are those of the bait without added mass,
 * so M_p ≤ M in every direction. Therefore an error in λ dies out (z² − 2gz + g = 0 with 0 ≤ g = 1 − m_p/M < 1, |z| = √g),
 * and no impact gains energy.
 */
export class Stepper {
  readonly bodies: EngineBodies;
  readonly h: number;
  /** Steps done. */
  step = 0;

  readonly bait: Integrator;
  readonly held = new Constraint();
  readonly rig: Rig;
  readonly hooks: HookDrive;

  private readonly carrier: Carrier;
  private readonly balls: BallWatch;
  private readonly eye: EyeMotion = { x: 0, z: 0, vx: 0, vz: 0, ax: 0, az: 0, wxx: 0, wxz: 0, wzz: 0 };

  constructor({ bodies, dynamics, hooks, balls, around, rig, h, velocity }: StepperParts) {
    this.bodies = bodies;
    this.h = h;
    this.bait = new Integrator(dynamics, around.current, h);
    this.carrier = new Carrier(bodies, h);
    this.hooks = new HookDrive(hooks, bodies.hooks, around, h);
    this.balls = new BallWatch(balls, bodies.balls, h);
    this.rig = new Rig(rig, h);
    this.guessHeld(balls.map(({ mass }) => around.gravity * mass));
    this.begin(velocity ?? { x: 0, z: 0, q: 0 });
  }

  /** s */
  get time(): number {
    return this.step * this.h;
  }

  /** Goes on to the next moment. */
  advance(): void {
    const { bait, carrier, hooks, bodies, held } = this;
    bait.predict();
    carrier.drive(bait.target, held);
    hooks.push();
    bodies.world.step(this.h, this.balls.passes(bait.target, bait.state), PASSES.places);
    hooks.after();
    const { x, z, m } = carrier.change(bait.target);
    bait.correct(x, z, m);
    held.take(x, z, m);
    this.step++;
    this.evaluate();
  }

  /** Finds velocity and rates at the present moment. */
  private evaluate(): void {
    const { bait, carrier, held } = this;
    bait.stand(carrier.place());
    bait.read(held);
    bait.rates(held);
    this.haul();
  }

  /** Lets the line pull, if there is one. */
  private haul(): void {
    const { bait, rig, eye, carrier } = this;
    const tie: Vec | null = rig.moveTo(this.time);
    if (tie === null) return;
    const arm = bait.readEye(tie, carrier.velocity(), eye);
    rig.haul(eye);
    bait.pullAt(arm, rig.pull);
  }

  /** λ before the first step: hooks hang still and balls lie still. */
  private guessHeld(ballWeights: readonly number[]): void {
    const { bodies, held, hooks } = this;
    const { x: X } = bodies.bait.getPosition();
    bodies.hooks.forEach((body, i) => held.hang(body.getPosition().x - X, hooks.weightInWater(i)));
    bodies.balls.forEach((body, i) => held.hang(body.getPosition().x - X, ballWeights[i] ?? 0));
    held.settle();
  }

  /** Momenta and the engine's velocities start half a step early, by the acceleration at the start. */
  private begin(velocity: Motion): void {
    const { bait, carrier } = this;
    bait.stand(carrier.place());
    bait.begin(velocity);
    this.evaluate();
    const acceleration = bait.acceleration();
    bait.stepBack();
    carrier.begin(velocity, acceleration);
  }
}
