import { atan2, cos as cosine, pow, random, sin as sine, square, tan } from "../base";
import type { SurfacePlane, Vec } from "../base";
import type { Bait, CorrectionSpec } from "../bait";
import type { Surroundings } from "../forces";
import { immersed, restTrim, sideAt, STANDARD_GRAVITY } from "../statics";
import { terminalRise } from "../tow";
import { surfaceTension } from "../water";
import { combined, quantile } from "./repeats";
import { netOf } from "./net";
import { DRAG_DEVIATION, netForSpeed, offsetOf, runUpFor, runUpLength, steadySpeed } from "./rise";
import type { RiseOptions } from "./rise";
import type { AttitudeReading, Repeats, Source, Timed, TimedReading, Tub, WaterlineReading } from "./types";
import { shifted } from "./with";

/** Standard uncertainties where nothing is said; common practice, no source. */
const TIMING = 0.15; // s, start and stop by hand
const MARKS = 2e-3; // m, the height between two marks, sighted through water
const ATTITUDE = (2 * Math.PI) / 180;
const WATERLINE = 0.5e-3; // m, a mark across the waterline
/** Times of one bait over one way are never so far apart, the greatest over the least; common practice, no source. */
const FAR_APART = 1.5;
/** Share of the steady speed that is steady enough. */
const STEADY = 0.98;
const SAMPLES = 2000;

export interface TubOptions extends RiseOptions {
  /** Groups or names of items that the bait in the tub did not carry (`bait` has them not either). */
  readonly without?: readonly string[];
  /** Whole number, default 1. */
  readonly seed?: number;
  /** Name of the row in the account. */
  readonly name?: string;
}

const degrees = (rad: number): string => `${((rad * 180) / Math.PI).toFixed(1)}°`;

function correction(
  options: TubOptions,
  more: Pick<CorrectionSpec, "mass" | "shift" | "deviation">,
): CorrectionSpec {
  return { name: options.name ?? "tub correction", without: options.without ?? [], ...more };
}

function timesOf(times: readonly number[], timing: number): Repeats {
  if (times.length === 0) throw new RangeError("no time: give at least one");
  for (const t of times)
    if (!(Number.isFinite(t) && t > 0)) throw new RangeError(`time ${t} s: give a number above 0`);
  const count = times.length;
  const mean = times.reduce((s, t) => s + t, 0) / count;
  const scatter = count > 1 ? Math.sqrt(times.reduce((s, t) => s + square(t - mean), 0) / (count - 1)) : null;
  return {
    count,
    mean,
    spread: Math.max(...times) - Math.min(...times),
    scatter,
    // Few repeats can agree by chance: never better than the hand on the watch.
    deviation: Math.max(scatter ?? 0, timing) / Math.sqrt(count),
  };
}

/**
 * Timed rise or sink between two marks → steady speed → net buoyancy, with a band from timing, height and drag (± 20 %).
 *
 * @param bait as it was in the tub
 * @param around the tub's water
 */
export function timedTravel(
  bait: Bait,
  around: Surroundings,
  reading: TimedReading,
  options: TubOptions = {},
): { readonly timed: Timed; readonly tub: Tub } {
  const { height, runUp, direction } = reading;
  if (!(height > 0)) throw new RangeError(`height ${height} m between the marks: give a number above 0`);
  if (!(runUp >= 0)) throw new RangeError(`run-up ${runUp} m: give 0 or more`);
  const { without: _w, seed = 1, name: _n, ...calibrated } = options;
  const repeats = timesOf(reading.times, reading.timing ?? TIMING);
  const sign = direction === "rises" ? 1 : -1;
  const plain = (sign * height) / repeats.mean;
  // λ hangs on v²/net, which the run-up's correction hardly changes: twice round is enough.
  let { net, exponent } = netForSpeed(bait, around, plain, calibrated);
  let lambda = runUpLength(bait, around, plain, net);
  let speed = plain;
  for (let k = 0; k < 2; k++) {
    speed = sign * steadySpeed(height, repeats.mean, runUp, lambda);
    ({ net, exponent } = netForSpeed(bait, around, speed, calibrated));
    lambda = runUpLength(bait, around, speed, net);
  }
  const relative = (of: string, share: number): Source => ({
    source: of,
    deviation: Math.abs(speed) * share,
  });
  const speedSources = [
    relative("timing", repeats.deviation / repeats.mean),
    relative("height between the marks", (reading.heightDeviation ?? MARKS) / height),
  ];
  const measuredSpeed = combined(speed, speedSources);
  const sources: Source[] = [
    ...speedSources.map((s) => ({
      source: s.source,
      deviation: Math.abs((net * exponent * s.deviation) / speed),
    })),
    // more drag is as if it had moved faster by √(1 + e) with the drag as it is: net ~ v^p
    { source: "drag, ± 20 %", deviation: (Math.abs(net) * exponent * DRAG_DEVIATION) / 2 },
  ];
  const normal = random(seed);
  const nets = Array.from({ length: SAMPLES }, () => {
    const v = Math.max(0.05, 1 + (measuredSpeed.deviation / Math.abs(speed)) * normal.normal());
    const drag = Math.max(0.05, 1 + DRAG_DEVIATION * normal.normal());
    return net * pow(v * Math.sqrt(drag), exponent);
  }).sort((a, b) => a - b);
  const measured = {
    ...combined(net, sources),
    band: [quantile(nets, 0.025), quantile(nets, 0.975)] as const,
  };
  const advisedRunUp = runUpFor(STEADY, lambda);
  const notes: string[] = [];
  if (runUp < advisedRunUp)
    notes.push(
      `It needs ${(advisedRunUp * 1e3).toFixed(0)} mm to come up to speed: set the first mark that far from the release. The speed is corrected for the start.`,
    );
  const [least, most] = [Math.min(...reading.times), Math.max(...reading.times)];
  if (most > FAR_APART * least)
    notes.push(
      `The times lie from ${least.toFixed(2)} to ${most.toFixed(2)} s: one of them is mistyped, or the bait was held up. Drop it, or time it again.`,
    );
  if (repeats.count < 3) notes.push("Time it three times or more: one start of the watch says little.");
  if (repeats.mean < 10 * (reading.timing ?? TIMING))
    notes.push("The time is short for a hand on a watch: take a greater height.");
  const computed = { net: netOf(bait, around.density), offset: offsetOf(bait).x };
  return {
    timed: { repeats, speed: measuredSpeed, plain, advisedRunUp, net: measured, sources, notes },
    tub: {
      net: measured,
      offset: null,
      computed,
      correction: correction(options, {
        mass: computed.net - net,
        shift: { x: 0, z: 0 },
        deviation: { mass: measured.deviation, x: null, z: null },
      }),
      sources,
      notes,
    },
  };
}

/** Attitudes steeper than this say nothing of the offset along the bait: its height decides them. */
const STEEPEST = (75 * Math.PI) / 180;

/**
 * Attitude seen at rest under water, or while it rises or sinks steadily → where G stands along the bait. At rest
 * x_B − x_G = (z_B − z_G) tan θ (docs/model.md §5); moving, the offset with which the terminal rise has that pitch.
 */
export function seenAttitude(
  bait: Bait,
  around: Surroundings,
  reading: AttitudeReading,
  options: TubOptions = {},
): Tub {
  const { without: _w, seed: _s, name: _n, ...calibrated } = options;
  const { pitch } = reading;
  if (!(Math.abs(pitch) <= STEEPEST))
    throw new RangeError(
      `an attitude of ${degrees(pitch)} hangs on the height of G, not on its station: read one within ${degrees(STEEPEST)}`,
    );
  const own = offsetOf(bait);
  const below = -own.z;
  const drawnLength = bait.spec.uncertainty.drawnLength;
  if (!(below > drawnLength))
    throw new RangeError(
      `G stands ${(below * 1e3).toFixed(2)} mm under B: too little for an attitude to say where it is along the bait`,
    );
  const shiftFor = (seen: number): number => {
    const still = -below * tan(seen) - own.x;
    if (reading.state === "rest") return still;
    // Secant on the pitch of the terminal rise; the shift at rest is the first guess.
    const off = (x: number): number =>
      terminalRise(shifted(bait, 0, { x, z: 0 }), around, calibrated).pitch - seen;
    let a = 0;
    let fa = off(a);
    let b = still === 0 ? 1e-5 : still;
    for (let k = 0; k < 20; k++) {
      const fb = off(b);
      if (Math.abs(fb) < 1e-5) return b;
      if (fb === fa) break;
      const step = Math.max(-2e-3, Math.min(2e-3, (-fb * (b - a)) / (fb - fa)));
      a = b;
      fa = fb;
      b += step;
    }
    throw new RangeError(`no place of G gives a moving attitude of ${degrees(seen)}: read it at rest`);
  };
  const shift = shiftFor(pitch);
  const deviation = reading.deviation ?? ATTITUDE;
  const small = (0.5 * Math.PI) / 180;
  const perRadian = Math.abs(shiftFor(pitch + small) - shiftFor(pitch - small)) / (2 * small);
  const sources: Source[] = [
    { source: "angle", deviation: perRadian * deviation },
    // the height of G over B is drawn, not read
    { source: "height between G and B", deviation: Math.abs(tan(pitch)) * drawnLength },
  ];
  const offset = combined(own.x + shift, sources);
  return {
    net: null,
    offset,
    computed: { net: netOf(bait, around.density), offset: own.x },
    correction: correction(options, {
      mass: 0,
      shift: { x: shift, z: 0 },
      deviation: { mass: null, x: offset.deviation, z: null },
    }),
    sources,
    notes: [],
  };
}

/** The surface through two points of the side view. */
function surfaceThrough(nose: Vec, tail: Vec): SurfacePlane {
  const run = nose.x - tail.x;
  if (!(run > 0)) throw new RangeError("the nose's mark must stand ahead of the tail's");
  // Along the surface Z is one: x sin θ + z cos θ = level at both marks.
  const pitch = atan2(tail.z - nose.z, run);
  const sin = sine(pitch);
  const cos = cosine(pitch);
  return { sin, cos, level: (nose.x * sin + nose.z * cos + tail.x * sin + tail.z * cos) / 2 };
}

/**
 * Waterline of the floating bait by two marks → its weight (that of the water under the line, Archimedes) and where G stands
 * along it (under the centroid of what is immersed).
 */
export function seenWaterline(
  bait: Bait,
  around: Surroundings,
  tapTemperature: number,
  reading: WaterlineReading,
  options: TubOptions = {},
): Tub {
  const { density } = around;
  const own = offsetOf(bait);
  const computed = { net: netOf(bait, density), offset: own.x };
  const { displaced } = bait.rigid({ end: "mid", face: "floor" });
  const read = (nose: Vec, tail: Vec): { readonly net: number; readonly shift: number } => {
    const surface = surfaceThrough(nose, tail);
    if (surface.cos < 0.25)
      throw new RangeError(
        "a bait that stands on end shows its height of G, not its station: mark one that lies",
      );
    const side = sideAt(atan2(surface.sin, surface.cos));
    const { volume, B } = immersed(bait, surface, side);
    const { G } = bait.rigid(side);
    if (!B || !(volume < displaced))
      throw new RangeError("the marks leave the bait wholly above or wholly under water: check them");
    const lever = (B.x - G.x) * surface.cos - (B.z - G.z) * surface.sin;
    return { net: density * (displaced - volume), shift: lever / surface.cos };
  };
  const at = read(reading.nose, reading.tail);
  const sigma = reading.deviation ?? WATERLINE;
  const up = (p: Vec, by: number): Vec => ({ x: p.x, z: p.z + by });
  const sources: Source[] = [];
  const along: Source[] = [];
  for (const [source, a, b] of [
    [
      "mark at the nose",
      read(up(reading.nose, sigma), reading.tail),
      read(up(reading.nose, -sigma), reading.tail),
    ],
    [
      "mark at the tail",
      read(reading.nose, up(reading.tail, sigma)),
      read(reading.nose, up(reading.tail, -sigma)),
    ],
  ] as const) {
    sources.push({ source, deviation: Math.abs(a.net - b.net) / 2 });
    along.push({ source, deviation: Math.abs(a.shift - b.shift) / 2 });
  }
  // Round the waterline of the bait (two lengths) the surface holds up to σP/g either way (docs/model.md §5).
  const held = (surfaceTension(tapTemperature) * 2 * (reading.nose.x - reading.tail.x)) / STANDARD_GRAVITY;
  const notes: string[] = [];
  if (Math.abs(at.net) < held)
    notes.push(
      `Surface tension can hold up to ${(held * 1e3).toFixed(2)} g along this waterline, more than the bait floats by: wet it all over, or time a rise instead.`,
    );
  const net = combined(at.net, sources);
  const offset = combined(own.x + at.shift, along);
  if (restTrim(bait).others.length > 0)
    notes.push("The loose balls are taken at the lower end of the line seen.");
  return {
    net,
    offset,
    computed,
    correction: correction(options, {
      mass: computed.net - at.net,
      shift: { x: at.shift, z: 0 },
      deviation: { mass: net.deviation, x: offset.deviation, z: null },
    }),
    sources,
    notes,
  };
}
