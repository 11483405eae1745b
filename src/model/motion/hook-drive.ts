import type { Surroundings } from "../forces";
import { hookUnder } from "../hydrostatics";
import type { Body } from "./engine/planck";
import { MotionError } from "./error";
import type { HangingHook } from "./types";

interface Swinging {
  readonly hook: HangingHook;
  readonly body: Body;
  /** The engine's velocity before the step. */
  x: number;
  z: number;
  /** Acceleration over the last step without its drag. */
  ax: number;
  az: number;
  /** Drag over mass and velocity in the step under way, 1/s, and the velocity through the water that it acts on. */
  rate: number;
  vx: number;
  vz: number;
}

/** Gives the hanging hooks their buoyancy and drag, at their centres; their weight is the engine's own. */
export class HookDrive {
  private readonly swinging: readonly Swinging[];
  private readonly force = { x: 0, y: 0 };

  constructor(
    hooks: readonly HangingHook[],
    bodies: readonly Body[],
    private readonly around: Surroundings,
    private readonly h: number,
  ) {
    this.swinging = hooks.map((hook, i) => {
      const body = bodies[i];
      if (body === undefined)
        throw new MotionError(
          "hooks",
          hook.name,
          null,
          "the engine has no body for it",
          "Make both from one bait",
        );
      return {
        hook,
        body,
        x: 0,
        z: 0,
        ax: 0,
        az: 0,
        rate: 0,
        vx: 0,
        vz: 0,
      };
    });
  }

  private of(i: number): Swinging {
    const found = this.swinging[i];
    if (found === undefined) throw new RangeError(`there is no hook ${i}`);
    return found;
  }

  /** Share of hook `i` under water, 0–1, by the depth of its centre. */
  underWater(i: number): number {
    const { hook, body } = this.of(i);
    return this.share(body.getPosition().y, hook);
  }

  /** N */
  weightInWater(i: number): number {
    const { hook } = this.of(i);
    const { gravity, density } = this.around;
    return gravity * (hook.mass - density * hook.displaced * this.underWater(i));
  }

  private share(z: number, hook: HangingHook): number {
    if (!this.around.surface) return 1;
    return hookUnder(-z, hook.length);
  }

  /**
   * Before a step: buoyancy, and drag −½ρ (C_d A)|v| v (docs/model.md §6.8) for the velocity at the present moment. The
   * engine's velocity is that of half a step before. The half step between is made with the drag itself unknown: v = (v₋ +
   * h/2·a)/(1 + h/2·κ), κ = drag/(m v), a all other acceleration. This is stable however fast and light a hook is.
   */
  push(): void {
    const { density, gravity, current } = this.around;
    const { force } = this;
    const half = this.h / 2;
    for (const swing of this.swinging) {
      const { hook, body } = swing;
      const v = body.getLinearVelocity();
      swing.x = v.x;
      swing.z = v.y;
      const under = this.share(body.getPosition().y, hook);
      // κ from the velocity with the drag of the last step: it need not be exact for the stability
      const bx = v.x - current.x + half * swing.ax;
      const bz = v.y - current.z + half * swing.az;
      const gx = bx - half * swing.rate * swing.vx;
      const gz = bz - half * swing.rate * swing.vz;
      const area = (0.5 * density * hook.dragArea * under) / hook.mass;
      const kappa = area * Math.sqrt(gx * gx + gz * gz);
      swing.vx = bx / (1 + half * kappa);
      swing.vz = bz / (1 + half * kappa);
      swing.rate = area * Math.sqrt(swing.vx * swing.vx + swing.vz * swing.vz);
      const drag = swing.rate * hook.mass;
      force.x = -drag * swing.vx;
      force.y = -drag * swing.vz + density * gravity * hook.displaced * under;
      body.applyForceToCenter(force, false);
    }
  }

  /** After the step. */
  after(): void {
    for (const swing of this.swinging) {
      const v = swing.body.getLinearVelocity();
      swing.ax = (v.x - swing.x) / this.h + swing.rate * swing.vx;
      swing.az = (v.y - swing.z) / this.h + swing.rate * swing.vz;
    }
  }
}
