import { random } from "../../../src/model/base";
import { lowSide } from "../../../src/model/bait";
import type { Bait } from "../../../src/model/bait";
import {
  createEvaluator,
  prepareSwimmer,
  type Swimmer,
  type Evaluator,
  type ForceKey,
  type Surroundings,
} from "../../../src/model/forces";
import { looseBalls, type LooseBall } from "../../../src/model/motion/chamber";
import { HULL_CORNERS } from "../../../src/model/motion/engine/planck";
import { buildBodies, type EngineBodies } from "../../../src/model/motion/engine/bodies";
import { hangingHooks } from "../../../src/model/motion/hooks";
import { contactHull } from "../../../src/model/motion/hull";
import { Stepper } from "../../../src/model/motion/stepper";
import type { HangingHook } from "../../../src/model/motion";

export interface Free {
  readonly swimmer: Swimmer;
  readonly dynamics: Evaluator;
  readonly hooks: readonly HangingHook[];
  readonly balls: readonly LooseBall[];
  readonly bodies: EngineBodies;
  readonly stepper: Stepper;
}

/**
 * A bait let go at a place of G, pitch and velocity (of G, world), without line: the parts of a run, put together by hand so
 * that forces can be left out. `forces` absent: all. `drag` false: hooks without drag.
 */
export function free(
  bait: Bait,
  around: Surroundings,
  start: { x: number; z: number; pitch: number; vx: number; vz: number; q: number },
  options: { rate?: number; forces?: readonly ForceKey[]; drag?: boolean; floor?: number } = {},
): Free {
  const side = lowSide(Math.sin(start.pitch), Math.cos(start.pitch));
  const swimmer = prepareSwimmer(bait, { hooksApart: true, ballsApart: true, side });
  const { G } = swimmer.rigid;
  const hooks = hangingHooks(bait).map((hook) => (options.drag === false ? { ...hook, dragArea: 0 } : hook));
  const balls = looseBalls(bait, side, random(1));
  const bodies = buildBodies({
    gravity: around.gravity,
    place: { x: start.x, z: start.z },
    pitch: start.pitch,
    mass: swimmer.rigid.mass,
    inertia: swimmer.rigid.inertia,
    hull: contactHull(bait, HULL_CORNERS).map((p) => ({ x: p.x - G.x, z: p.z - G.z })),
    G,
    hooks,
    chambers: bait.spec.chambers,
    balls,
    floor: options.floor ?? -Infinity,
    walls: [-50, 50],
  });
  const dynamics = createEvaluator(swimmer, around, options.forces);
  const stepper = new Stepper({
    bodies,
    dynamics,
    around,
    hooks,
    balls,
    rig: null,
    h: 1 / (options.rate ?? 960),
    velocity: { x: start.vx, z: start.vz, q: start.q },
  });
  return { swimmer, dynamics, hooks, balls, bodies, stepper };
}

/** Has the engine look at all boxes in every step, as it does by itself: takes back what `lookNowAndThen` has done. */
export function lookAlways({ bait, hooks, balls }: EngineBodies): void {
  for (const body of [bait, ...hooks, ...balls])
    body.synchronizeFixtures = (Object.getPrototypeOf(body) as typeof body).synchronizeFixtures;
}
