import type { Surroundings } from "../forces";
import type { Body } from "./engine/planck";
import { MotionError } from "./error";
import type { HangingHook } from "./types";

interface Swinging {
  readonly hook: HangingHook;
  readonly body: Body;
  /** The engine's velocity before the step, then its change over the step per second. */
  x: number;
  z: number;
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
          "Build scene and hooks from one bait",
        );
      return { hook, body, x: 0, z: 0 };
    });
  }

  private of(i: number): Swinging {
    const found = this.swinging[i];
    if (found === undefined) throw new RangeError(`there is no hook ${i}`);
    return found;
  }

  /** Share of hook `i` under water, 0–1: rises evenly with the depth of its centre over its length. */
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
    return Math.min(1, Math.max(0, 0.5 - z / hook.length));
  }

  /** Before a step: forces at the present moment, the velocity read in leapfrog manner. */
  push(): void {
    const { density, gravity, current } = this.around;
    const { force } = this;
    const half = this.h / 2;
    for (const swing of this.swinging) {
      const { hook, body } = swing;
      const v = body.getLinearVelocity();
      const vx = v.x + half * swing.x - current.x;
      const vz = v.y + half * swing.z - current.z;
      swing.x = v.x;
      swing.z = v.y;
      const under = this.share(body.getPosition().y, hook);
      if (under === 0) continue;
      // −½ρ (C_d A) |v| v (docs/model.md §6.8)
      const drag = 0.5 * density * hook.dragArea * under * Math.sqrt(vx * vx + vz * vz);
      force.x = -drag * vx;
      force.y = -drag * vz + density * gravity * hook.displaced * under;
      body.applyForceToCenter(force, false);
    }
  }

  /** After the step. */
  after(): void {
    for (const swing of this.swinging) {
      const v = swing.body.getLinearVelocity();
      swing.x = (v.x - swing.x) / this.h;
      swing.z = (v.y - swing.z) / this.h;
    }
  }
}
