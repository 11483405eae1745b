import type { Compiled, Moment } from "../document";
import type { Bait } from "../model/bait";
import type { RunSetup } from "../model/motion";

/** Steps and kept frames per second of every run (docs/model.md §8: 960 Hz is right). */
const RATE = 960;
const FRAME_RATE = 60;

/** The cadence as a run: it starts at rest at the surface (a sinker just under it) with all its line out. */
export function swimSetup(compiled: Compiled): RunSetup {
  return { ...common(compiled), tackle: compiled.tackle, cadence: compiled.cadence, start: "afloat" };
}

export interface Tub {
  /** Depth of the tie eye where it is let go, m. */
  readonly depth: number;
  /** Its pitch there, rad; "rest": the rest trim under water. */
  readonly pitch: number | "rest";
  /** How long to watch, s. */
  readonly duration: number;
  /** Moment of making at which it is let go; absent: dressed, with all that is fitted. */
  readonly stage?: Moment;
}

/** Pushed under in still water and let go: no line. `bait`: as it is at the stage of making. */
export function tubSetup(compiled: Compiled, tub: Tub, bait: Bait = compiled.bait): RunSetup {
  return {
    ...common(compiled),
    bait,
    around: { ...compiled.around, current: { x: 0, z: 0 } },
    tackle: null,
    cadence: [{ do: "release", for: tub.duration }],
    start: { depth: tub.depth, pitch: tub.pitch },
  };
}

function common(compiled: Compiled) {
  return {
    bait: compiled.bait,
    around: compiled.around,
    bibFactor: compiled.calibration.bibFactor,
    rate: RATE,
    frameRate: FRAME_RATE,
    seed: 1,
  };
}
