import type { Moment, Scenario } from "../document";
import type { ResolvedTarget, RiseBand, SensitivityRow } from "../model/bench";
import type { Lesson, Outcome, Values } from "../lesson";
import type { RecordingChunk, RecordingMeta } from "../model/motion";
import type { PlanResult } from "../model/plan";
import type { Band, BandOptions } from "../model/statics";
import type { Calibration, TerminalRise } from "../model/tow";
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

export type RunJob = (
  | { readonly kind: "swim"; readonly scenario: Scenario }
  | { readonly kind: "tub"; readonly scenario: Scenario; readonly tub: Tub }
) & {
  /** So many frames are there already: they are worked out again, but not told. */
  readonly known?: number;
};

/** One end of the speeds (or other values) at which the bait runs: it lies between a value that runs and one that does not. */
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

/** A callback in the other thread. The promise that it returns is fulfilled when the call has been heard. */
type Heard<T extends unknown[]> = (...args: T) => unknown;

export interface WorkerApi {
  /** Holds the lock `name` while the worker lives; false where the browser has none. */
  begin(name: string): Promise<boolean>;
  /** A sign of life. */
  here(): Promise<true>;
  run(
    ticket: Ticket,
    job: RunJob,
    meta: Heard<[RecordingMeta]>,
    chunk: Heard<[RecordingChunk]>,
  ): Promise<true | null>;
  rise(ticket: Ticket, scenario: Scenario): Promise<TerminalRise | null>;
  band(ticket: Ticket, scenario: Scenario, options: BandOptions): Promise<Band | null>;
  /** Cells `from` (included) to `to` (excluded) of a map. */
  reachCells(ticket: Ticket, job: ReachMapJob, from: number, to: number): Promise<ReachCell[] | null>;
  reachLimits(ticket: Ticket, job: ReachMapJob, queries: readonly LimitQuery[]): Promise<ReachLimit[] | null>;
  calibrate(ticket: Ticket, scenario: Scenario, measured: MeasuredDepth): Promise<Calibration | null>;
  righting(ticket: Ticket, scenario: Scenario, at: Moment): Promise<Righting | null>;
  tub(ticket: Ticket, scenario: Scenario, reading: TubReading): Promise<TubAnswer | null>;
  swaps(ticket: Ticket, job: SwapJob): Promise<SwapAnswer | null>;
  /** What the target's words come to; null also where the document has no target. */
  target(ticket: Ticket, scenario: Scenario): Promise<ResolvedTarget | null>;
  plan(ticket: Ticket, job: PlanJob): Promise<PlanResult | null>;
  /** `hooks`: masses of the hooks in the box, kg. */
  effects(ticket: Ticket, scenario: Scenario, hooks: readonly number[]): Promise<SensitivityRow[] | null>;
  riseBand(ticket: Ticket, scenario: Scenario): Promise<RiseBand | null>;
  /** What a lesson comes to with the numbers of one student. */
  lesson(
    ticket: Ticket,
    lesson: Lesson,
    scenarios: readonly Scenario[],
    draws: Values,
  ): Promise<Outcome | null>;
  cancel(ticket: Ticket): Promise<void>;
}
