import type { Scenario, Stage } from "../document";
import type { RiseBand, SensitivityRow } from "../model/bench";
import type { RecordingChunk, RecordingMeta } from "../model/motion";
import type { Band, BandOptions, PlanResult } from "../model/statics";
import type { Calibration, ReachRow, TerminalRise } from "../model/tow";
import type { Righting, SwapAnswer, SwapJob, TubAnswer, TubReading } from "./float";
import type { Tub } from "./jobs";
import type { MeasuredDepth, ReachCell, ReachLimit, ReachMapJob } from "./reach-map";
import type { ReachVariable } from "./vary";
import type { PlanJob } from "./weigh";

/**
 * What the page and its worker say to each other. Every request has a lane and a ticket; in one lane a newer
 * ticket cancels the older work, which then answers null.
 */
export interface Ticket {
  readonly lane: string;
  readonly number: number;
}

export type RunJob =
  | { readonly kind: "swim"; readonly scenario: Scenario }
  | { readonly kind: "tub"; readonly scenario: Scenario; readonly tub: Tub };

/** A sweep of steady tows: bib angles (rad; null: the file's own) outside, speeds (m/s) inside. */
export interface ReachJob {
  readonly scenario: Scenario;
  readonly speeds: readonly number[];
  readonly angles: readonly number[] | null;
}

/** One side of the speeds (or other values) that run: between a value that does and one that does not. */
export interface LimitQuery {
  readonly variable: ReachVariable;
  readonly runs: number;
  readonly fails: number;
}

export interface RunSink {
  readonly meta: (meta: RecordingMeta) => void;
  /** Frames in order, without gaps. */
  readonly chunk: (chunk: RecordingChunk) => void;
}

/** A callback in the other thread: what it gives (a promise there) settles when it has been heard. */
type Heard<T extends unknown[]> = (...args: T) => unknown;

export interface WorkerApi {
  run(
    ticket: Ticket,
    job: RunJob,
    meta: Heard<[RecordingMeta]>,
    chunk: Heard<[RecordingChunk]>,
  ): Promise<true | null>;
  rise(ticket: Ticket, scenario: Scenario): Promise<TerminalRise | null>;
  reach(
    ticket: Ticket,
    job: ReachJob,
    row: Heard<[row: ReachRow, done: number, of: number]>,
  ): Promise<ReachRow[] | null>;
  band(ticket: Ticket, scenario: Scenario, options: BandOptions): Promise<Band | null>;
  /** Cells `from` (included) to `to` (excluded) of a map. */
  reachCells(ticket: Ticket, job: ReachMapJob, from: number, to: number): Promise<ReachCell[] | null>;
  reachLimits(ticket: Ticket, job: ReachMapJob, queries: readonly LimitQuery[]): Promise<ReachLimit[] | null>;
  calibrate(ticket: Ticket, scenario: Scenario, measured: MeasuredDepth): Promise<Calibration | null>;
  righting(ticket: Ticket, scenario: Scenario, stage: Stage): Promise<Righting | null>;
  tub(ticket: Ticket, scenario: Scenario, reading: TubReading): Promise<TubAnswer | null>;
  swaps(ticket: Ticket, job: SwapJob): Promise<SwapAnswer | null>;
  plan(ticket: Ticket, job: PlanJob): Promise<PlanResult | null>;
  /** `hooks`: masses of the hooks in the box, kg. */
  effects(ticket: Ticket, scenario: Scenario, hooks: readonly number[]): Promise<SensitivityRow[] | null>;
  riseBand(ticket: Ticket, scenario: Scenario): Promise<RiseBand | null>;
  cancel(ticket: Ticket): Promise<void>;
}
