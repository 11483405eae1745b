import { baitAt, compile } from "../document";
import type { Compiled, Moment, Scenario } from "../document";
import { cos, sin } from "../model/base";
import { assemble, MID, withOnly } from "../model/bait";
import type { Bait, BaitSpec } from "../model/bait";
import { seenAttitude, seenWaterline, swaps, timedTravel, withLeader } from "../model/bench";
import type { SwapGoal, SwapPart, SwapResult, Timed, Tub } from "../model/bench";
import type { Surroundings } from "../model/forces";
import { Floater, sideAt } from "../model/statics";
import { water } from "../model/water";
import { toSI } from "../units";

/** Trimming moments about G (kg·m, above 0 lifts the nose) over trims (rad): how hard the water turns it back. */
export interface Righting {
  readonly trims: readonly number[];
  /** On the surface, free in height: Σm · lever. Null where it does not float. */
  readonly afloat: readonly number[] | null;
  /** Wholly under water: ρ ΣV · lever. */
  readonly under: readonly number[];
}

/** Righting moments over a whole turn (docs/model.md §5), at `steps` + 1 trims from −180° to 180°. */
export function rightingOf(bait: Bait, density: number, steps = 48): Righting {
  const trims = Array.from({ length: steps + 1 }, (_, i) => -Math.PI + (2 * Math.PI * i) / steps);
  const floater = new Floater(bait, density);
  const { mass, displaced } = bait.rigid(MID);
  return {
    trims,
    afloat: floater.floats ? trims.map((pitch) => mass * (floater.at(pitch)?.lever ?? NaN)) : null,
    under: trims.map((pitch) => {
      const { G, B } = bait.rigid(sideAt(pitch));
      // X_B − X_G with X = x cos θ − z sin θ
      return density * displaced * ((B.x - G.x) * cos(pitch) - (B.z - G.z) * sin(pitch));
    }),
  };
}

export function righting(scenario: Scenario, at: Moment): Righting {
  const { bait, around } = compile(scenario);
  return rightingOf(baitAt(scenario, bait, at), around.density);
}

export type TubReading = Scenario["tub"][number];

/** What a tub reading tells about the bait as the document has it now, including the corrections that stand there already. */
export interface TubAnswer {
  readonly tub: Tub;
  /** Of a timed reading. */
  readonly timed: Timed | null;
}

const millimetres = (value: number): number => toSI(value, "mm");
const place = ([station, height]: readonly [number, number]) => ({
  x: 0 - millimetres(station),
  z: millimetres(height),
});
const radians = (degrees: number): number => toSI(degrees, "deg");

/** The same surroundings with other water. */
function inWater(around: Surroundings, salinity: number, temperature: number): Surroundings {
  const { density, viscosity } = water(salinity, temperature);
  return { ...around, density, viscosity };
}

export function readTub(scenario: Scenario, reading: TubReading): TubAnswer {
  const { bait: whole, around: open, calibration } = compile(scenario);
  const without = reading.without ?? [];
  const bait =
    without.length === 0
      ? whole
      : withOnly(whole, (item) => !without.includes(item.item) && !without.includes(item.group));
  const around = inWater(open, reading.salinity_g_kg, reading.temperature_C);
  const options = { without, bibFactor: calibration.bibFactor };
  switch (reading.kind) {
    case "timed": {
      const { direction, height_mm, runUp_mm, times_s } = reading;
      const timed = {
        direction,
        height: millimetres(height_mm),
        runUp: millimetres(runUp_mm),
        times: times_s,
      };
      return timedTravel(bait, around, timed, options);
    }
    case "attitude": {
      const { pitch_deg, state, deviation_deg } = reading;
      const seen = {
        pitch: radians(pitch_deg),
        state,
        ...(deviation_deg === undefined ? {} : { deviation: radians(deviation_deg) }),
      };
      return { timed: null, tub: seenAttitude(bait, around, seen, options) };
    }
    case "waterline": {
      const { nose_mm, tail_mm, deviation_mm, temperature_C } = reading;
      const marks = {
        nose: place(nose_mm),
        tail: place(tail_mm),
        ...(deviation_mm === undefined ? {} : { deviation: millimetres(deviation_mm) }),
      };
      return { timed: null, tub: seenWaterline(bait, around, temperature_C, marks, options) };
    }
  }
}

/** Another water, a leader at the nose, and what is wanted there. SI. */
export interface SwapJob {
  readonly scenario: Scenario;
  readonly salinity: number;
  /** °C. */
  readonly temperature: number;
  /** Hanging at the tie eye; null: none. */
  readonly leader: { readonly length: number; readonly diameter: number; readonly density: number } | null;
  readonly goal: SwapGoal;
  readonly parts: readonly SwapPart[];
}

export interface SwapAnswer extends SwapResult {
  /** The bait that the swaps change, with the leader where one hangs. What a swap leaves alone is the same object. */
  readonly spec: BaitSpec;
}

/** Swaps of hooks, rings, clips and strips that bring the bait to a goal in another water. */
export function swapsFor({ scenario, salinity, temperature, leader, goal, parts }: SwapJob): SwapAnswer {
  const compiled = compile(scenario);
  const around = inWater(compiled.around, salinity, temperature);
  const bait = withHanging(compiled, leader);
  const { bibFactor } = compiled.calibration;
  return { ...swaps(bait, around, goal, parts, { bibFactor }), spec: bait.spec };
}

/** The bait with a leader that hangs at its nose; its body is as the bench readings gave it. */
function withHanging({ bait, spec }: Compiled, leader: SwapJob["leader"]): Bait {
  if (leader === null) return bait;
  return assemble(withLeader(spec, leader), {
    drawn: bait.drawn,
    found: { bodyDensity: bait.bodyDensity, volumeFactor: bait.volumeFactor },
  });
}
