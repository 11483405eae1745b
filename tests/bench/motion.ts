// Speed of the swim: simulated seconds per second, and our part of a step against the engine's own step of the same
// bodies, both measured in one run. Prints a table and the ratios.
import type { Bait } from "../../src/model/bait";
import { createEvaluator, prepareCraft } from "../../src/model/forces";
import { startRun, type Move, type RunSetup } from "../../src/model/motion";
import { looseBalls } from "../../src/model/motion/chamber";
import { HULL_CORNERS } from "../../src/model/motion/engine/planck";
import { buildScene } from "../../src/model/motion/engine/scene";
import { hangingHooks } from "../../src/model/motion/hooks";
import { contactHull } from "../../src/model/motion/hull";
import { random } from "../../src/model/base";
import { minnow, rattler, setup, TACKLE, water } from "../unit/motion/baits";

const RATE = 960;
const ROUNDS = 12;
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
    name: "two hooks, four balls, full line, swim",
    bait: rattler(3.3e-3),
    run: { tackle: TACKLE, cadence: SWIM, line: "segments" },
    wanted: 40,
  },
  { name: "two hooks, afloat at rest", bait: minnow(4e-3), run: { start: "afloat" }, wanted: null },
];

/** Work in equal parts that are done one after the other. */
interface Work {
  readonly steps: number;
  readonly parts: number;
  readonly part: (k: number) => void;
}

/**
 * Microseconds a step: of each part the least time over the rounds, which all do the same, in sum. A round takes seconds,
 * and something else always disturbs it; a part takes milliseconds.
 */
function time(make: () => Work): number {
  const least: number[] = [];
  let steps = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const work = make();
    steps = work.steps;
    for (let k = 0; k < work.parts; k++) {
      const start = performance.now();
      work.part(k);
      least[k] = Math.min(least[k] ?? Infinity, performance.now() - start);
    }
  }
  return (1000 * least.reduce((sum, one) => sum + one, 0)) / steps;
}

function whole({ bait, run }: Scene): number {
  const full = setup(bait, {
    around: water(8),
    start: { depth: 4, pitch: "rest" },
    cadence: [{ do: "settle", for: 6 }],
    ...run,
    rate: RATE,
  });
  return time(() => {
    const started = startRun(full);
    const { duration, frames } = started.meta;
    return {
      steps: duration * RATE,
      parts: Math.ceil(frames / FRAMES),
      part: () => void started.advance(FRAMES),
    };
  });
}

/** The engine's own step with the same bodies: the bait is held up by a constant force and rocked. */
function bare({ bait }: Scene): number {
  const hooks = hangingHooks(bait);
  const craft = prepareCraft(bait, { hooksApart: true, ballsApart: true });
  const { G, mass, inertia } = craft.rigid;
  return time(() => {
    const balls = looseBalls(bait, { end: "tail", face: "floor" }, random(1));
    const scene = buildScene({
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
    const carried = [...hooks, ...balls].reduce((sum, part) => sum + part.mass, 0) * 9.80665;
    const passes = balls.length > 0 ? ([6, 1] as const) : ([4, 1] as const);
    return {
      steps: 6 * RATE,
      parts: 60,
      part: (k) => {
        for (let step = (k * RATE) / 10; step < ((k + 1) * RATE) / 10; step++) {
          const t = step / RATE;
          scene.bait.applyForceToCenter({ x: 0.1 * Math.sin(7 * t), y: carried }, false);
          scene.bait.applyTorque(2e-5 * Math.sin(9 * t), false);
          scene.world.step(1 / RATE, passes[0], passes[1]);
        }
      },
    };
  });
}

/** One evaluation of all forces under water. */
function forces({ bait }: Scene): number {
  const evaluator = createEvaluator(prepareCraft(bait, { hooksApart: true, ballsApart: true }), water(8));
  const out: [number, number, number] = [0, 0, 0];
  return time(() => ({
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
  `| scene (${RATE} steps/s) | µs a step | engine | forces | simulated s per s | wanted | our part / engine |`,
);
console.log("|---|---:|---:|---:|---:|---:|---:|");
for (const scene of scenes) {
  const all = whole(scene);
  const engine = bare(scene);
  const ours = (all - engine) / engine;
  console.log(
    `| ${scene.name} | ${f(all, 2)} | ${f(engine, 2)} | ${f(forces(scene), 2)} | ${f(1e6 / RATE / all, 0)} | ` +
      `${scene.wanted ?? "–"} | ${f(ours, 2)} |`,
  );
}
