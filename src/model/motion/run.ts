import type { Vec } from "../base";
import { lerp, random } from "../base";
import { createEvaluator, FORCE_LEGEND, type ForceKey, prepareSwimmer, type Swimmer } from "../forces";
import { type MovingLine, segmentedLine, tether } from "../line";
import { timeline, type Timeline } from "./cadence";
import { Capture } from "./capture";
import { looseBalls, type LooseBall } from "./chamber";
import { engineIsSteady, HULL_CORNERS } from "./engine/planck";
import { buildBodies } from "./engine/bodies";
import { beyondModel, MotionError } from "./error";
import { hangingHooks } from "./hooks";
import { bibEnds, contactHull } from "./hull";
import { framesIn, layout } from "./layout";
import { checkBalls, checkTipSpeed } from "./limits";
import { GrowingRecording } from "./recording";
import { placer, rodTipPlace, startPose } from "./start";
import type { RigParts } from "./rig";
import { Stepper } from "./stepper";
import type { HangingHook, RecordingChunk, RecordingMeta, Run, RunSetup } from "./types";

/** Room between the bait's or the rod's place and the walls, m. */
const WALLS_OFF = 50;

function checkRates({ rate, frameRate, seed }: RunSetup): void {
  const whole = (name: string, value: number, remedy: string): void => {
    if (!Number.isSafeInteger(value) || value <= 0)
      throw new MotionError(name, value, null, "a whole number above 0 is needed", remedy);
  };
  whole("rate", rate, "Use 960 steps per second");
  whole("frameRate", frameRate, "Use 60 frames per second");
  if (rate % frameRate !== 0)
    throw new MotionError(
      "frameRate",
      frameRate,
      null,
      `it does not divide the rate ${rate}`,
      "Use 60 and 960",
    );
  if (!Number.isSafeInteger(seed))
    throw new MotionError("seed", seed, null, "a whole number is needed", "Use 1");
}

/**
 * Starts a run: everything is laid out and checked, nothing has moved yet. Without tackle the bait is released free.
 * Throws MotionError (or the error of the room that refuses) where it cannot start.
 */
export function startRun(setup: RunSetup): Run {
  checkRates(setup);
  checkTipSpeed(setup.cadence);
  if (!engineIsSteady())
    throw new MotionError(
      "engine",
      "built-in sine",
      null,
      "the engine was loaded before our own sine was in place",
      "Build so that src/model/motion/engine/planck.ts loads its imports in their order",
    );
  const { bait, around, tackle, rate } = setup;
  const { chambers } = bait.spec;
  const hooks = hangingHooks(bait);
  const hull = contactHull(bait, HULL_CORNERS);
  const pose = startPose(setup, hull, hooks);
  const balls = looseBalls(bait, pose.side, random(setup.seed));
  checkBalls(balls);
  const swimmer = prepareSwimmer(bait, {
    bibFactor: setup.bibFactor,
    hooksApart: true,
    ballsApart: true,
    side: pose.side,
  });
  const { G } = swimmer.rigid;
  const toWorld = placer(pose);
  const place = toWorld(G);
  const tip =
    tackle === null ? { x: 0, z: 0 } : rodTipPlace(toWorld(bait.spec.tie).z, tackle.lineOut, tackle.rodTip);
  const rod = timeline(setup.cadence, tackle, tip);
  const line =
    tackle === null
      ? null
      : setup.line === "tether"
        ? tether(tackle.line)
        : segmentedLine(tackle.line, around, { current: around.current, depth: around.depth });

  const bodies = buildBodies({
    gravity: around.gravity,
    place,
    pitch: pose.pitch,
    // without added mass: never more than the full mass in any direction (see Stepper)
    mass: swimmer.rigid.mass,
    inertia: swimmer.rigid.inertia,
    hull: hull.map((p) => ({ x: p.x - G.x, z: p.z - G.z })),
    G,
    hooks,
    chambers,
    balls,
    floor: -around.depth,
    walls: [-WALLS_OFF, tip.x + WALLS_OFF],
  });
  const rig: RigParts | null =
    tackle === null || line === null ? null : { line, rod, lineOut: tackle.lineOut, tie: swimmer.tie };
  const dynamics = createEvaluator(swimmer, around);
  const stepper = new Stepper({
    bodies,
    dynamics,
    around,
    hooks,
    balls,
    rig,
    h: 1 / rate,
  });
  const meta = describe(setup, swimmer, rod, line, hooks, balls, hull);
  const capture = new Capture({
    stepper,
    acting: dynamics.parts,
    swimmer,
    around,
    hooks,
    chambers,
    balls,
    line,
    meta,
  });
  return new SteppedRun(meta, stepper, capture);
}

/** Frames of a whole run between two words of how far it has come. */
const FRAMES = 120;

/** A whole run at once. `onShare` hears again and again which share of it is done. Throws as `startRun` and `advance` do. */
export function record(setup: RunSetup, onShare?: (share: number) => void): GrowingRecording {
  const run = startRun(setup);
  const recording = new GrowingRecording(run.meta);
  while (!run.done) {
    recording.append(run.advance(FRAMES));
    onShare?.(recording.frames / run.meta.frames);
  }
  return recording;
}

function describe(
  { bait, around, rate, frameRate }: RunSetup,
  swimmer: Swimmer,
  rod: Timeline,
  line: MovingLine | null,
  hooks: readonly HangingHook[],
  balls: readonly LooseBall[],
  hull: readonly Vec[],
): RecordingMeta {
  const { shape, spec } = bait;
  const centroid = shape.centroid;
  const anchors: Partial<Record<ForceKey, Vec>> = {
    tail: { x: -shape.length / 2, z: 0 },
    line: spec.tie,
    ...(spec.bib === null ? {} : { bib: lerp(...bibEnds(spec.bib), 0.5) }),
  };
  const partial: Omit<RecordingMeta, "stride"> = {
    rate,
    frameRate,
    frames: framesIn(rod.duration, frameRate),
    duration: rod.duration,
    marks: rod.marks,
    centre: swimmer.rigid.G,
    tie: spec.tie,
    hooks,
    balls: balls.map((ball) => ball.diameter),
    linePoints: line?.points ?? 0,
    forces: FORCE_LEGEND.map(({ key }) => ({ key, anchor: anchors[key] ?? centroid })),
    arm: shape.length / 2,
    legs: rod.legs,
    hull,
    floor: around.depth,
  };
  return { ...partial, stride: layout(partial).stride };
}

class SteppedRun implements Run {
  private frame = 0;
  private readonly stepsPerFrame: number;

  constructor(
    readonly meta: RecordingMeta,
    private readonly stepper: Stepper,
    private readonly capture: Capture,
  ) {
    this.stepsPerFrame = meta.rate / meta.frameRate;
  }

  get done(): boolean {
    return this.frame === this.meta.frames;
  }

  private step(): void {
    try {
      this.stepper.advance();
    } catch (fault) {
      // a force was asked for a state whose numbers are not finite
      if (!(fault instanceof RangeError)) throw fault;
      throw beyondModel("state", fault.message, this.stepper.time, this.meta.legs);
    }
  }

  advance(frames: number): RecordingChunk {
    if (!(frames >= 0))
      throw new MotionError("frames", frames, null, "a number of frames is needed", "Use 0 or more");
    const { meta, stepper, stepsPerFrame } = this;
    const firstFrame = this.frame;
    const count = Math.min(Math.floor(frames), meta.frames - firstFrame);
    const data = new Float64Array(count * meta.stride);
    for (let i = 0; i < count; i++) {
      while (stepper.step < this.frame * stepsPerFrame) this.step();
      this.capture.write(data, i * meta.stride);
      this.frame++;
    }
    return { firstFrame, frames: count, data };
  }
}
