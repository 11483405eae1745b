import type { Scenario } from "../document";
import type { Beat, ReachRow } from "../model/tow";
import type { ReachVariable } from "./vary";

/** One variable and the values that it takes, in the document's units. */
export interface Variation {
  readonly variable: ReachVariable;
  readonly values: readonly number[];
}

/** Steady tows over no, one or two variables; the first is outside. */
export interface ReachMapJob {
  readonly scenario: Scenario;
  /** m/s, where the speed is not varied. */
  readonly speed: number;
  readonly vary: readonly Variation[];
  /** Also with the uncertain coefficients at the ends of their bands. */
  readonly bands: boolean;
  /** Also the drawn line and all attitudes. */
  readonly whole: boolean;
}

/** Depths (m) with a coefficient at the low and at the high end of its band; null where it does not run then. */
export type DepthEnds = readonly [low: number | null, high: number | null];

export interface DepthBands {
  /** Interference factor of the bib; null without a bib, or where a measured run has set the factor. */
  readonly bib: DepthEnds | null;
  /** Munk share k_M. */
  readonly munk: DepthEnds;
  /** Normal drag of the line, C_n. */
  readonly line: DepthEnds;
}

/** One point of a map. Figures are null where the bait does not run, or cannot be built; `why` says which. */
export interface ReachCell {
  readonly index: number;
  /** False: the model refuses such a bait; `why` is its message. */
  readonly built: boolean;
  readonly runs: boolean;
  readonly why: string | null;
  readonly depth: number | null;
  readonly pitch: number | null;
  readonly tension: number | null;
  readonly lineAngle: number | null;
  readonly bands: DepthBands | null;
  readonly whole: { readonly row: ReachRow; readonly beat: Beat | null } | null;
}

/** Relative half-width of the bib factor's band (docs/model.md §6.7). */
export const BIB_SPREAD = 0.25;
/** Band of the Munk share k_M (docs/model.md §6.4: Roddy 1990). */
export const MUNK_BAND = [0.7, 0.9] as const;
/**
 * Relative half-width of the line's normal drag: smooth cylinders scatter by a few per cent, a worn or braided line is not
 * smooth. Common practice, no source.
 */
export const LINE_SPREAD = 0.1;

export const cellCount = (vary: readonly Variation[]): number =>
  vary.reduce((product, { values }) => product * values.length, 1);

/** Where along one variable the bait stops running: the last value found to run, the first that does not, and why. */
export interface ReachLimit {
  readonly runs: number;
  readonly fails: number;
  readonly why: string;
}

/** A depth measured in a steady retrieve: m/s, m, m. */
export interface MeasuredDepth {
  readonly speed: number;
  readonly lineOut: number;
  readonly depth: number;
}
