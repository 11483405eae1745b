import type { ChangeWords } from "../parts";
import type { BaitSpec, CorrectionSpec } from "../bait";
import type { Vec } from "../base";

/** A measured value with its standard uncertainty. SI. */
export interface Measured {
  readonly value: number;
  readonly deviation: number;
  /** Central 95 % where it is not ± 1.96 deviations; else absent. */
  readonly band?: readonly [number, number];
}

/** What one source contributes to a standard uncertainty, in the unit of the result. */
export interface Source {
  readonly source: string;
  readonly deviation: number;
}

/** Repeats of one reading. */
export interface Repeats {
  readonly count: number;
  readonly mean: number;
  /** Greatest less smallest. */
  readonly spread: number;
  /** Standard deviation of one reading; null for a single one. */
  readonly scatter: number | null;
  /** Standard uncertainty of the mean: scatter/√n and resolution/√12 combined. */
  readonly deviation: number;
}

/** What goes under water with a piece but is no part of it: pin, fork or wire of the pusher. */
export interface Pusher {
  /** Diameter of each pin or wire, m; how deep it stands in the water, m; how many. */
  readonly diameter: number;
  readonly depth: number;
  readonly count: number;
}

/** A piece held under water, free of the container, on a scale that shows the rise. */
export interface HeldUnderReading {
  /** Rises shown by the scale, kg, one a repeat. */
  readonly readings: readonly number[];
  /** The scale's last digit, kg. */
  readonly resolution: number;
  /** Tap water, °C (ITS-90), and its standard uncertainty, °C (default 1). */
  readonly tapTemperature: number;
  readonly tapDeviation?: number;
  readonly pusher?: Pusher | null;
  /** Correct for air buoyancy on the scale. */
  readonly air?: boolean;
}

export interface Displacement {
  readonly repeats: Repeats;
  /** Of the piece alone, m³. */
  readonly volume: Measured;
  /** Reading without the pusher, kg: this goes into the account as a displacement reading. */
  readonly reading: number;
  /** Pusher's share, m³ and kg. */
  readonly pusherVolume: number;
  readonly pusherReading: number;
  /** Greatest pull of the surface on the pusher, kg, either way: ± π d σ/g. */
  readonly meniscus: number;
  readonly tapDensity: number;
  readonly sources: readonly Source[];
  /** What a reader should know here, in words. */
  readonly notes: readonly string[];
}

/** A sinking piece hung on a thread: weighed in air, then wholly under, free of the container. */
export interface HungReading {
  /** kg, one a repeat. */
  readonly inAir: readonly number[];
  readonly under: readonly number[];
  readonly resolution: number;
  readonly tapTemperature: number;
  readonly tapDeviation?: number;
  /**
   * The thread or wire: the scale is set to zero in air with the thread but without the piece. The water carries its part
   * under water. m.
   */
  readonly thread?: { readonly diameter: number; readonly depth: number } | null;
  readonly air?: boolean;
}

export interface Hung {
  readonly mass: Measured;
  readonly volume: Measured;
  readonly density: Measured;
  readonly meniscus: number;
  readonly tapDensity: number;
  readonly sources: readonly Source[];
  readonly notes: readonly string[];
}

export interface WoodSample {
  readonly mass: Measured;
  readonly volume: Measured;
  readonly density: Measured;
  readonly displacement: Displacement;
}

/** Drawing and reading beside one another. */
export interface Reconciled {
  readonly drawn: Measured;
  readonly measured: Measured;
  /** Measured over drawn. */
  readonly ratio: number;
  /** Difference over its standard uncertainty. */
  readonly apart: number;
  /** More than 5 % apart: find the error before you trust either. */
  readonly warning: boolean;
  readonly believed: "measured" | "drawn";
  readonly text: string;
}

/** Timed rise or sink over a marked height. */
export interface TimedReading {
  readonly direction: "rises" | "sinks";
  /** Between the two marks, m, and its standard uncertainty (default 2 mm). */
  readonly height: number;
  readonly heightDeviation?: number;
  /** From the place of release to the first mark, m. */
  readonly runUp: number;
  /** s, one a repeat. */
  readonly times: readonly number[];
  /** Of one start and stop by hand, s (default 0.15). */
  readonly timing?: number;
}

export interface Timed {
  readonly repeats: Repeats;
  /** Steady speed, m/s, up positive: corrected for the run-up. */
  readonly speed: Measured;
  /** Height over time as it was timed, m/s. */
  readonly plain: number;
  /** Run-up after which 98 % of the steady speed is reached, m. */
  readonly advisedRunUp: number;
  /** The net buoyancy for this speed, kg; `band` includes the drag's ± 20 %. */
  readonly net: Measured;
  readonly sources: readonly Source[];
  readonly notes: readonly string[];
}

/** Attitude seen: at rest under water, or while it rises or sinks steadily. */
export interface AttitudeReading {
  /** rad, nose-up positive. */
  readonly pitch: number;
  /** Standard uncertainty, rad (default 2°). */
  readonly deviation?: number;
  readonly state: "rest" | "moving";
}

/** The water's line on the outline of the floating bait: two points of the side view, body frame, m. */
export interface WaterlineReading {
  readonly nose: Vec;
  readonly tail: Vec;
  /** Standard uncertainty of each mark across the line, m (default 0.5 mm). */
  readonly deviation?: number;
}

export interface Tub {
  /** Net buoyancy by the reading, kg; null where it says nothing of it. */
  readonly net: Measured | null;
  /** G behind or ahead of B: x_B − x_G by the reading, m, and what the account had. */
  readonly offset: Measured | null;
  readonly computed: { readonly net: number; readonly offset: number };
  /** To be applied: an extra row of the account. */
  readonly correction: CorrectionSpec;
  readonly sources: readonly Source[];
  readonly notes: readonly string[];
}

/** A part that can be put on or changed. */
export interface SwapPart {
  readonly name: string;
  readonly use: "hook" | "ring" | "clip" | "strip";
  readonly mass: number;
  readonly density: number;
  readonly count: number;
  readonly weighed: boolean;
  readonly lead: boolean;
}

export interface SwapGoal {
  /** Wanted net buoyancy in the new water, kg. */
  readonly net: number;
  readonly netTolerance: number;
  /** Wanted rest trim, rad; null: any. */
  readonly trim: number | null;
  readonly trimTolerance: number;
}

/** One change. */
export interface SwapChange {
  readonly change: "replace" | "add" | "remove";
  readonly part: "hook" | "ring" | "clip" | "strip";
  /** Name of the hanger or place. */
  readonly place: string;
  readonly at: Vec;
  /** What goes off and what comes on; null for none. */
  readonly off: string | null;
  readonly on: string | null;
  /** A ring comes off that carries a hook: the hook then hangs in the hanger's own eye, which has to open for it. */
  readonly bare: boolean;
  readonly count: number;
  /** Change of mass and of net buoyancy, kg. */
  readonly mass: number;
  readonly net: number;
}

export interface Swap {
  readonly changes: readonly SwapChange[];
  readonly net: number;
  readonly trim: number | null;
  /** Steady rise, m/s and rad; null where it was not computed. */
  readonly rise: { readonly speed: number; readonly pitch: number } | null;
  /**
   * Distance from the goal in tolerances. Swaps are listed by it, and one that hangs a hook without its ring comes behind
   * all others that meet the goal.
   */
  readonly misfit: number;
  readonly leadFree: boolean;
  readonly spec: BaitSpec;
}

export interface ExactGrams {
  /** kg to put on (or, below 0, to take off) at the place, of the stuff's density outside. */
  readonly mass: number;
  readonly at: Vec;
  /** The net buoyancy and trim that result. */
  readonly net: number;
  readonly trim: number | null;
  readonly reachesTrim: boolean;
}

export interface SwapResult {
  readonly before: { readonly net: number; readonly trim: number | null };
  readonly goal: SwapGoal;
  readonly goalRise: { readonly speed: number; readonly pitch: number } | null;
  readonly swaps: readonly Swap[];
  readonly exact: ExactGrams;
}

/** What one small change does. Differences from the bait as it is; null where undefined. */
export interface SensitivityRow {
  /** Path in the document, e.g. "bait.ballast[0]". */
  readonly path: string;
  readonly item: string;
  readonly change: ChangeWords;
  /** Where it acts, body frame. */
  readonly at: Vec;
  readonly net: number;
  readonly trim: number | null;
  readonly speed: number | null;
}

export interface SeasonPoint {
  readonly salinity: number;
  readonly temperature: number;
  readonly density: number;
  readonly net: number;
  readonly trim: number | null;
  readonly verdict: "floats" | "suspends" | "sinks";
}

export interface RiseBand {
  readonly samples: number;
  readonly seed: number;
  /** Central 95 %, m/s, up positive. */
  readonly speed: readonly [number, number];
  readonly deviation: number;
  readonly contributions: readonly {
    readonly input: string;
    readonly speed: number;
    readonly share: number;
  }[];
}
