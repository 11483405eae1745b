// Speed of the swim: simulated seconds per second, and our part of a step against the engine's own step of the same
// bodies, both measured in one run. Prints a table and the ratios.
import type { Bait } from "../../src/model/bait";
import { createEvaluator, prepareSwimmer } from "../../src/model/forces";
import { startRun, type Move, type RunSetup } from "../../src/model/motion";
import { PASSES } from "../../src/model/motion/ball-watch";
import { looseBalls } from "../../src/model/motion/chamber";
import { HULL_CORNERS, RevoluteJoint } from "../../src/model/motion/engine/planck";
import { buildBodies, type EngineBodies } from "../../src/model/motion/engine/bodies";
import { hangingHooks } from "../../src/model/motion/hooks";
import { contactHull } from "../../src/model/motion/hull";
import { random } from "../../src/model/base";
import { minnow, rattler, setup, TACKLE, water } from "../lib/swum";
import { lookAlways } from "../unit/motion/free";
import { Clock, inTurn } from "./lib/clock";

const RATE = 960;
const ROUNDS = 20;
/** Frames of a part. */
const FRAMES = 5;
const SWIM: Move[] = [
  { do: "settle", for: 1 },
  { do: "reel", speed: 0.9, for: 6, length: null },
  { do: "pause", for: 2 },
  { do: "twitch", travel: 0.35, in: 0.15, back: 0.3 },
  { do: "pause", for: 1.5 },
  { do: "twitch", travel: 0.35, in: 0.15, back: 0.3 },
  { do: "pause", for: 2 },
];

interface Scene {
  readonly name: string;
  readonly bait: Bait;
  readonly run: Partial<RunSetup>;
  /** Figure to reach, simulated seconds per second. */
  readonly wanted: number | null;
}

const POINTS = 60;

/** The minnow as a hand draws it: 60 points an edge, evenly spaced, each off by up to 1 % of its value. */
function handDrawn(): Bait {
  const { spec, drawn } = minnow(4e-3);
  const { edges, length } = drawn;
  const hand = random(7);
  const edge = (curve: (phi: number) => number) =>
    Array.from({ length: POINTS }, (_, i) => {
      const v = curve(Math.acos(1 - (2 * i) / (POINTS - 1)));
      const end = i === 0 || i === POINTS - 1;
      return { s: (length * i) / (POINTS - 1), v: end ? v : v * (1 + 0.01 * (2 * hand.uniform() - 1)) };
    });
  const { top, bottom, halfBreadth } = edges;
  return minnow(4e-3, {
    shape: { ...spec.shape, top: edge(top), bottom: edge(bottom), halfBreadth: edge(halfBreadth) },
  });
}

const scenes: Scene[] = [
  { name: "bait alone, rising", bait: minnow(4e-3, { hangers: [] }), run: {}, wanted: null },
  { name: "two hooks, rising", bait: minnow(4e-3), run: {}, wanted: null },
  {
    name: "two hooks and tether, swim",
    bait: minnow(4e-3),
    run: { tackle: TACKLE, cadence: SWIM, line: "tether" },
    wanted: 100,
  },
  {
    name: "two hooks, four balls, tether, swim",
    bait: rattler(3.3e-3),
    run: { tackle: TACKLE, cadence: SWIM, line: "tether" },
    wanted: 40,
  },
  {
    name: "two hooks and full line, swim",
    bait: minnow(4e-3),
    run: { tackle: TACKLE, cadence: SWIM, line: "segments" },
    wanted: 100,
  },
  {
    name: "two hooks and full line, 60 points an edge",
    bait: handDrawn(),
    run: { tackle: TACKLE, cadence: SWIM, line: "segments" },
    wanted: 100,
  },
  {
    name: "two hooks, four balls, full line, swim",
    bait: rattler(3.3e-3),
    run: { tackle: TACKLE, cadence: SWIM, line: "segments" },
    wanted: 40,
  },
  { name: "two hooks, afloat at rest", bait: minnow(4e-3), run: { start: "afloat" }, wanted: null },
];

function whole({ bait, run }: Scene): Clock {
  const full = setup(bait, {
    around: water(8),
    start: { depth: 4, pitch: "rest" },
    cadence: [{ do: "settle", for: 6 }],
    ...run,
    rate: RATE,
  });
  return new Clock(() => {
    const started = startRun(full);
    const { duration, frames } = started.meta;
    return {
      steps: duration * RATE,
      parts: Math.ceil(frames / FRAMES),
      part: () => void started.advance(FRAMES),
    };
  });
}

/** Puts the engine's own joints in the place of ours. */
function ownJoints({ world, joints }: EngineBodies): void {
  for (const joint of joints) {
    world.destroyJoint(joint);
    world.createJoint(
      new RevoluteJoint({
        bodyA: joint.getBodyA(),
        bodyB: joint.getBodyB(),
        localAnchorA: joint.getLocalAnchorA(),
        localAnchorB: joint.getLocalAnchorB(),
        referenceAngle: 0,
      }),
    );
  }
}

/**
 * The bare engine's step with the same bodies, as it comes: with its own joints, and it looks at all boxes in every step. The
 * bait is held up by a constant force and rocked.
 */
function bare({ bait }: Scene): Clock {
  const hooks = hangingHooks(bait);
  const swimmer = prepareSwimmer(bait, { hooksApart: true, ballsApart: true });
  const { G, mass, inertia } = swimmer.rigid;
  return new Clock(() => {
    const balls = looseBalls(bait, { end: "tail", face: "floor" }, random(1));
    const bodies = buildBodies({
      gravity: 9.80665,
      place: { x: 0, z: -4 },
      pitch: 0.2,
      mass: 2 * mass,
      inertia: 2 * inertia,
      hull: contactHull(bait, HULL_CORNERS).map((p) => ({ x: p.x - G.x, z: p.z - G.z })),
      G,
      hooks,
      chambers: bait.spec.chambers,
      balls,
      floor: -8,
      walls: [-50, 75],
    });
    lookAlways(bodies);
    ownJoints(bodies);
    const carried = [...hooks, ...balls].reduce((sum, part) => sum + part.mass, 0) * 9.80665;
    return {
      steps: 6 * RATE,
      parts: 60,
      part: (k) => {
        for (let step = (k * RATE) / 10; step < ((k + 1) * RATE) / 10; step++) {
          const t = step / RATE;
          bodies.bait.applyForceToCenter({ x: 0.1 * Math.sin(7 * t), y: carried }, false);
          bodies.bait.applyTorque(2e-5 * Math.sin(9 * t), false);
          bodies.world.step(1 / RATE, PASSES.calm, PASSES.places);
        }
      },
    };
  });
}

/** One evaluation of all forces under water. */
function forces({ bait }: Scene): Clock {
  const evaluator = createEvaluator(prepareSwimmer(bait, { hooksApart: true, ballsApart: true }), water(8));
  const out: [number, number, number] = [0, 0, 0];
  return new Clock(() => ({
    steps: 20000,
    parts: 20,
    part: (part) => {
      for (let k = 1000 * part; k < 1000 * (part + 1); k++) {
        const state = { u: 0.9, w: -0.1 + k * 1e-6, q: 0.3, pitch: 0.2, X: 0, Z: -4 };
        evaluator.evaluate(state);
        evaluator.accelerate(null, out);
      }
    },
  }));
}

const f = (value: number, digits: number): string => value.toFixed(digits).padStart(8);
console.log(
  `| bodies (${RATE} steps/s) | µs a step | engine | forces | simulated s per s | wanted | our part / engine |`,
);
console.log("|---|---:|---:|---:|---:|---:|---:|");
const clocks = scenes.map((scene) => ({
  scene,
  all: whole(scene),
  engine: bare(scene),
  evaluation: forces(scene),
}));
inTurn(
  clocks.flatMap(({ all, engine, evaluation }) => [all, engine, evaluation]),
  ROUNDS,
);
for (const { scene, all, engine, evaluation } of clocks) {
  const ours = (all.time - engine.time) / engine.time;
  console.log(
    `| ${scene.name} | ${f(all.time, 2)} | ${f(engine.time, 2)} | ${f(evaluation.time, 2)} | ` +
      `${f(1e6 / RATE / all.time, 0)} | ${scene.wanted ?? "–"} | ${f(ours, 2)} |`,
  );
}
