// Bookkeeping of a free bait with its hooks and balls, reckoned from places and velocities alone.
import { solveSym3 } from "../../../src/model/base";
import { energy } from "../../../src/model/forces";
import type { Surroundings } from "../../../src/model/forces";
import type { Free } from "./free";

interface Part {
  readonly mass: number;
  readonly inertia: number;
  /** m³ of water displaced. */
  readonly displaced: number;
  readonly body: Free["bodies"]["balls"][number];
}

export function partsOf({ hooks, balls, bodies }: Free): Part[] {
  return [
    ...hooks.map((h, i) => ({
      mass: h.mass,
      inertia: h.inertia,
      displaced: h.displaced,
      body: bodies.hooks[i]!,
    })),
    ...balls.map((b, i) => ({
      mass: b.mass,
      // solid sphere, 2/5 m r²
      inertia: 0.1 * b.mass * b.diameter ** 2,
      displaced: 0,
      body: bodies.balls[i]!,
    })),
  ];
}

/**
 * Energy of all (J) wholly under water, half a step ago, when the velocities are known to the last impulse: the bait's
 * with its added mass, and kinetic and potential energy of hooks and balls.
 */
export function wholeEnergy(made: Free, around: Surroundings): number {
  const { stepper, swimmer, bodies, dynamics } = made;
  const half = stepper.h / 2;
  const spin = bodies.bait.getAngularVelocity();
  const v = bodies.bait.getLinearVelocity();
  const pitch = stepper.bait.state.pitch - half * spin;
  const p = stepper.bait.momentum;
  const s = Math.sin(pitch);
  const c = Math.cos(pitch);
  const [u, w, q] = solveSym3(dynamics.mass, p.x * c + p.z * s, p.z * c - p.x * s, p.l, [0, 0, 0]);
  const state = {
    u,
    w,
    q,
    pitch,
    X: stepper.bait.state.X - half * v.x,
    Z: stepper.bait.state.Z - half * v.y,
  };
  return partsOf(made).reduce(
    (sum, { mass, inertia, displaced, body }) => {
      const b = body.getLinearVelocity();
      return (
        sum +
        (mass * (b.x ** 2 + b.y ** 2) + inertia * body.getAngularVelocity() ** 2) / 2 +
        around.gravity * (mass - around.density * displaced) * (body.getPosition().y - half * b.y)
      );
    },
    energy(swimmer, state, around),
  );
}

/**
 * Impulse of all in the world (N·s), half a step ago: the bait's with its added mass (from the velocity that the engine
 * would need, M ν at that attitude) is what the stepper carries, hooks and balls by their velocities.
 */
export function wholeImpulse(made: Free): { x: number; z: number } {
  const { x, z } = made.stepper.bait.momentum;
  return partsOf(made).reduce<{ x: number; z: number }>(
    (sum, { mass, body }) => {
      const v = body.getLinearVelocity();
      return { x: sum.x + mass * v.x, z: sum.z + mass * v.y };
    },
    { x, z },
  );
}
