import type { Constraint } from "../constraint";
import type { Motion, Place } from "../integrator";
import type { EngineBodies } from "./bodies";

/**
 * Makes the engine move the bait as our own equations want it. The engine knows one scalar mass m_p and no added mass. So
 * it gets the force that takes its velocity to the wanted v*, less the constraint force λ that it will add by itself: m_p
 * (v* − v)/h − λ. Joints and contacts then add their own λ′. The velocity v′ that results gives the change: λ′ − λ = m_p
 * (v′ − v*)/h.
 */
export class Carrier {
  private readonly mass: number;
  private readonly inertia: number;
  private readonly force = { x: 0, y: 0 };
  private readonly motion: Motion = { x: 0, z: 0, q: 0 };

  constructor(
    private readonly bodies: EngineBodies,
    private readonly h: number,
  ) {
    this.mass = bodies.bait.getMass();
    this.inertia = bodies.bait.getInertia();
  }

  /** Where the engine has the bait. */
  place(): Place {
    const { bait } = this.bodies;
    const at = bait.getPosition();
    const turned = bait.getTransform().q;
    return { x: at.x, z: at.y, pitch: bait.getAngle(), sin: turned.s, cos: turned.c };
  }

  /** Velocity of the bait as the engine has it: half a step before the present moment. */
  velocity(): Readonly<Motion> {
    const { bait } = this.bodies;
    const { motion } = this;
    const v = bait.getLinearVelocity();
    motion.x = v.x;
    motion.z = v.y;
    motion.q = bait.getAngularVelocity();
    return motion;
  }

  /**
   * Gives every body the velocity that it had half a step before the start. Hooks and balls move with the place that holds
   * them.
   *
   * @param velocity of the bait at the start
   * @param acceleration of the bait at the start
   */
  begin(velocity: Motion, acceleration: Motion): void {
    const { bait, hooks, joints, balls } = this.bodies;
    const a = acceleration;
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

  /** Before the engine's step: the force that gives the bait the velocity `target`. */
  drive(target: Readonly<Motion>, { now }: Constraint): void {
    const { bait } = this.bodies;
    const { force, h } = this;
    const v = bait.getLinearVelocity();
    force.x = (this.mass * (target.x - v.x)) / h - now.x;
    force.y = (this.mass * (target.z - v.y)) / h - now.z;
    bait.applyForceToCenter(force, false);
    bait.applyTorque((this.inertia * (target.q - bait.getAngularVelocity())) / h - now.m, false);
  }

  /** After the engine's step: by how much λ was greater in it than in the one before. World axes, N and N·m about G. */
  change(target: Readonly<Motion>): { readonly x: number; readonly z: number; readonly m: number } {
    const { bait } = this.bodies;
    const { h, mass } = this;
    const v = bait.getLinearVelocity();
    return {
      x: (mass * (v.x - target.x)) / h,
      z: (mass * (v.y - target.z)) / h,
      m: (this.inertia * (bait.getAngularVelocity() - target.q)) / h,
    };
  }
}
