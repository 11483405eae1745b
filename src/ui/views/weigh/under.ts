import type { BenchReading } from "../../../model/bait";
import { displacementOf, hungOnThread, pusherVolume, woodSample } from "../../../model/bench";
import type { Displacement, HeldUnderReading, Hung, Pusher, WoodSample } from "../../../model/bench";
import { toSI } from "../../../units";
import type { UnderWater } from "./state.svelte";
import { mean } from "./readings";

/** What a weighing under water says so far; null where it has no readings yet. */
export type Found =
  | { readonly way: "held"; readonly of: Displacement }
  | { readonly way: "hung"; readonly of: Hung }
  | { readonly way: "sample"; readonly of: WoodSample }
  | { readonly way: "refused"; readonly why: string }
  | null;

const kg = (grams: number): number => toSI(grams, "g");
const pinsOf = (pins: {
  readonly diameter: number;
  readonly depth: number;
  readonly count: number;
}): Pusher | null =>
  pins.count === 0
    ? null
    : { diameter: toSI(pins.diameter, "mm"), depth: toSI(pins.depth, "mm"), count: pins.count };

const heldOf = (under: UnderWater): HeldUnderReading => ({
  readings: under.readings.map(kg),
  resolution: kg(under.resolution),
  tapTemperature: under.tap,
  pusher: pinsOf(under.pins),
  air: under.air,
});

export function foundUnder(under: UnderWater): Found {
  const { way, readings, inAir } = under;
  if (readings.length === 0 || (way !== "held" && inAir.length === 0)) return null;
  try {
    switch (way) {
      case "held":
        return { way, of: displacementOf(heldOf(under)) };
      case "sample":
        return {
          way,
          of: woodSample({ readings: inAir.map(kg), resolution: kg(under.resolution) }, heldOf(under)),
        };
      case "hung": {
        const thread = pinsOf(under.thread);
        return {
          way,
          of: hungOnThread({
            inAir: inAir.map(kg),
            under: readings.map(kg),
            resolution: kg(under.resolution),
            tapTemperature: under.tap,
            thread: thread === null ? null : { diameter: thread.diameter, depth: thread.depth },
            air: under.air,
          }),
        };
      }
    }
  } catch (fault) {
    // The model's refusal of readings that cannot be, in its own words.
    if (fault instanceof RangeError) return { way: "refused", why: fault.message };
    throw fault;
  }
}

/** The reading as the account takes it, SI; of a hung piece: what it lost, with thread and air already allowed for. */
export function benchReading(under: UnderWater, found: Found): BenchReading | null {
  const common = {
    kind: "displacement",
    resolution: kg(under.resolution),
    tapTemperature: under.tap,
    with: under.parts,
  } as const;
  if (found?.way === "held") {
    const pins = pinsOf(under.pins);
    return {
      ...common,
      reading: kg(mean(under.readings)),
      air: under.air,
      ...(pins === null ? {} : { pusher: pusherVolume(pins) }),
    };
  }
  if (found?.way === "hung")
    return { ...common, reading: found.of.volume.value * found.of.tapDensity, air: false };
  return null;
}
