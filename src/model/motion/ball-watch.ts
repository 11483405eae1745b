import type { Body } from "./engine/planck";

/**
 * Where a ball would cross more than this share of its radius in one step, the engine follows its whole path (continuous
 * collision).
 */
const SWEPT = 0.25;

/**
 * Passes of the engine's solver over velocities and places. Hooks are light and meet only in the bait: with 16 and 6 passes
 * a swim that touches nothing is the same within 1e-11 m and rad. Balls that lie or roll together need no more passes than
 * the calm number, because a step starts from the forces of the last step. Where balls strike, more passes are needed: with
 * 6, a pile gains up to 5e-4 of the energy that a violent tumble loses; with 12 less than 1e-6. A second pass over places
 * changes nothing.
 */
export const PASSES = { calm: 4, strikes: 12, places: 1 } as const;

/** Balls strike when one of them moves against its chamber by more than this, m/s. */
const CALM = 0.015;

/** Watches how fast loose balls move against their chamber. */
export class BallWatch {
  constructor(
    private readonly balls: readonly { readonly diameter: number }[],
    private readonly bodies: readonly Body[],
    private readonly h: number,
  ) {}

  /**
   * Before a step: tells the engine to follow the whole path of balls that will be fast at its end. Returns the passes over
   * velocities that the step needs.
   *
   * @param target the bait's velocity (m/s) and pitch rate (rad/s) at the step's end, world axes
   * @param state place of the bait's G, m
   */
  passes(
    target: { readonly x: number; readonly z: number; readonly q: number },
    state: { readonly X: number; readonly Z: number },
  ): number {
    let fastest = 0;
    for (let i = 0; i < this.balls.length; i++) {
      const body = this.bodies[i];
      if (body === undefined) continue;
      const p = body.getPosition();
      const u = body.getLinearVelocity();
      const dx = u.x - (target.x - target.q * (p.y - state.Z));
      const dz = u.y - (target.z + target.q * (p.x - state.X));
      const speed = Math.sqrt(dx * dx + dz * dz);
      const reach = (SWEPT * (this.balls[i]?.diameter ?? 0)) / 2;
      body.setBullet(speed * this.h > reach);
      if (speed > fastest) fastest = speed;
    }
    return fastest > CALM ? PASSES.strikes : PASSES.calm;
  }
}
