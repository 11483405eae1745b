import { hypot, square } from "../base";
import {
  AIR_DENSITY,
  densityHungUnder,
  readingHeldUnder,
  trueMass,
  trueMassOfDensity,
  volumeHeldUnder,
} from "../bait";
import { density as waterDensity, surfaceTension } from "../water";
import { STANDARD_GRAVITY } from "../statics";
import { combined, repeatsOf } from "./repeats";
import type {
  Displacement,
  HeldUnderReading,
  Hung,
  HungReading,
  Measured,
  Pusher,
  Reconciled,
  Repeats,
  Source,
  WoodSample,
} from "./types";

/** Standard uncertainties where nothing is said; common practice, no source. */
const TAP = 1; // °C, a kitchen thermometer
const DEPTH = 2e-3; // m, how deep a pin stands under water
const PIN = 0.05e-3; // m, its diameter by a caliper

/** Apparent mass (kg) of the water that a wetted round wire of diameter d (m) lifts: π d σ/g. Either sign in practice. */
export const meniscusMass = (diameter: number, temperature: number): number =>
  (Math.PI * diameter * surfaceTension(temperature)) / STANDARD_GRAVITY;

/** Volume of the pusher's pins under water, m³. */
export const pusherVolume = (p: Pusher): number => p.count * (Math.PI / 4) * square(p.diameter) * p.depth;

const grams = (kg: number): string => `${(kg * 1e3).toFixed(3)} g`;

/** Half of the change that one standard uncertainty of the tap water, up and down, makes in a result. */
const byTap = (of: (tap: number) => number, tap: number, deviation: number): number =>
  Math.abs(of(tap + deviation) - of(tap - deviation)) / 2;

function noteMeniscus(meniscus: number, resolution: number, notes: string[]): void {
  // Half a digit is what a scale does not show.
  if (meniscus > resolution / 2)
    notes.push(
      `The surface can pull on what passes through it by up to ${grams(meniscus)} either way: use a thinner pin, and wet it.`,
    );
}

function noteRepeats(r: Repeats, resolution: number, notes: string[]): void {
  if (r.count === 1) notes.push("One reading shows no scatter: take the piece out, dry it, and repeat.");
  else if (r.spread > 5 * resolution)
    notes.push(
      `The readings lie ${grams(r.spread)} apart: look for bubbles, for a touch of the container, for water soaked in.`,
    );
}

/**
 * A piece held under water, free of the container that stands on the scale: the rise is the mass of the water displaced by
 * the piece and by the pins that hold it (docs/model.md §3, Bench readings).
 */
export function displacementOf(r: HeldUnderReading): Displacement {
  const repeats = repeatsOf(r.readings, r.resolution);
  const tapDensity = waterDensity(0, r.tapTemperature);
  const air = r.air ?? false;
  const pins = r.pusher ? pusherVolume(r.pusher) : 0;
  const whole = volumeHeldUnder(repeats.mean, tapDensity, air);
  const value = whole - pins;
  if (!(value > 0))
    throw new RangeError(
      `a rise of ${grams(repeats.mean)} less the pins' ${grams(pins * tapDensity)} leaves no piece: check the reading and the pins`,
    );
  const meniscus = r.pusher ? r.pusher.count * meniscusMass(r.pusher.diameter, r.tapTemperature) : 0;
  const at = (tap: number): number => volumeHeldUnder(repeats.mean, waterDensity(0, tap), air);
  const sources: Source[] = [
    { source: "scale and repeats", deviation: repeats.deviation / tapDensity },
    { source: "tap temperature", deviation: byTap(at, r.tapTemperature, r.tapDeviation ?? TAP) },
  ];
  if (r.pusher && r.pusher.count > 0) {
    const { count, diameter, depth } = r.pusher;
    sources.push(
      { source: "depth of the pins", deviation: count * (Math.PI / 4) * square(diameter) * DEPTH },
      { source: "diameter of the pins", deviation: count * (Math.PI / 2) * diameter * depth * PIN },
      // anywhere between − and + the full pull
      { source: "surface tension on the pins", deviation: meniscus / Math.sqrt(3) / tapDensity },
    );
  }
  const notes: string[] = [];
  noteRepeats(repeats, r.resolution, notes);
  noteMeniscus(meniscus, r.resolution, notes);
  const lift = (readingHeldUnder(value, tapDensity, false) / tapDensity) * AIR_DENSITY;
  if (!air && lift > r.resolution)
    notes.push(`The air carries ${grams(lift)} of it: let the reading be corrected for air buoyancy.`);
  return {
    repeats,
    volume: combined(value, sources),
    reading: readingHeldUnder(value, tapDensity, air),
    pusherVolume: pins,
    pusherReading: pins * tapDensity,
    meniscus,
    tapDensity,
    sources,
    notes,
  };
}

/**
 * A sinking piece hung on a thread: weighed in air (with the scale set to zero for the thread), then wholly under water and
 * free of the container. ρ = (W_a ρ_L − W_u ρ_a)/(W_a − W_u). The water also carries the part of the thread under water;
 * this is added to W_u.
 */
export function hungOnThread(r: HungReading): Hung {
  const inAir = repeatsOf(r.inAir, r.resolution);
  const under = repeatsOf(r.under, r.resolution);
  const tapDensity = waterDensity(0, r.tapTemperature);
  const carried = r.thread ? (Math.PI / 4) * square(r.thread.diameter) * r.thread.depth : 0;
  const rhoAir = r.air ? AIR_DENSITY : 0;
  const densityAt = (a: number, u: number, rho: number): number =>
    densityHungUnder(a, u + rho * carried, rho, rhoAir);
  const massAt = (a: number, u: number, rho: number): number =>
    r.air ? trueMassOfDensity(a, densityAt(a, u, rho)) : a;
  const volumeAt = (a: number, u: number, rho: number): number => massAt(a, u, rho) / densityAt(a, u, rho);
  const meniscus = r.thread ? meniscusMass(r.thread.diameter, r.tapTemperature) : 0;
  const pull = meniscus / Math.sqrt(3);
  const spread = (of: typeof densityAt): Source[] => {
    const [a, u] = [inAir.mean, under.mean];
    const half = (da: number, du: number): number =>
      Math.abs(of(a + da, u + du, tapDensity) - of(a - da, u - du, tapDensity)) / 2;
    return [
      { source: "weighing in air", deviation: half(inAir.deviation, 0) },
      { source: "weighing under water", deviation: half(0, under.deviation) },
      {
        source: "tap temperature",
        deviation: byTap((t) => of(a, u, waterDensity(0, t)), r.tapTemperature, r.tapDeviation ?? TAP),
      },
      ...(meniscus > 0 ? [{ source: "surface tension on the thread", deviation: half(0, pull) }] : []),
    ];
  };
  const notes: string[] = [];
  noteRepeats(inAir, r.resolution, notes);
  noteRepeats(under, r.resolution, notes);
  noteMeniscus(meniscus, r.resolution, notes);
  const measured = (of: typeof densityAt): Measured =>
    combined(of(inAir.mean, under.mean, tapDensity), spread(of));
  return {
    mass: measured(massAt),
    volume: measured(volumeAt),
    density: measured(densityAt),
    meniscus,
    tapDensity,
    sources: spread(volumeAt),
    notes,
  };
}

/** Density of a small piece of the wood: weighed, then pulled under. */
export function woodSample(
  weighed: { readonly readings: readonly number[]; readonly resolution: number },
  under: HeldUnderReading,
): WoodSample {
  const displacement = displacementOf(under);
  const scale = repeatsOf(weighed.readings, weighed.resolution);
  const { volume } = displacement;
  const mass = under.air ? trueMass(scale.mean, volume.value) : scale.mean;
  if (!(mass > 0)) throw new RangeError(`a sample of ${grams(mass)}: give a weight above 0`);
  const value = mass / volume.value;
  return {
    mass: { value: mass, deviation: scale.deviation },
    volume,
    density: {
      value,
      deviation: value * hypot(scale.deviation / mass, volume.deviation / volume.value),
    },
    displacement,
  };
}

/** Above this relative difference drawing and reading contradict each other; common practice, no source. */
const APART = 0.05;

/** Drawing and reading of one volume side by side (m³): the more certain one is believed, and the difference is told. */
export function reconcile(drawn: Measured, measured: Measured): Reconciled {
  const ratio = measured.value / drawn.value;
  const both = hypot(drawn.deviation, measured.deviation);
  const off = measured.value - drawn.value;
  const believed = measured.deviation <= drawn.deviation ? "measured" : "drawn";
  const warning = Math.abs(ratio - 1) > APART;
  const percent = `${Math.abs((ratio - 1) * 100).toFixed(1)} %`;
  const than = off >= 0 ? "more" : "less";
  return {
    drawn,
    measured,
    ratio,
    apart: both > 0 ? Math.abs(off) / both : off === 0 ? 0 : Infinity,
    warning,
    believed,
    text: warning
      ? `The reading says ${percent} ${than} than the drawing: look for a bubble, a touch, or a wrong length before trusting either.`
      : `The reading says ${percent} ${than} than the drawing; ${believed === "measured" ? "the reading" : "the drawing"} is the narrower and is believed.`,
  };
}
