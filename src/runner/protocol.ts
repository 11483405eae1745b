import type { Scenario } from "../document";
import type { RecordingChunk, RecordingMeta } from "../model/motion";
import type { Band, BandOptions } from "../model/statics";
import type { ReachRow, TerminalRise } from "../model/tow";
import type { Tub } from "./jobs";

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
  cancel(ticket: Ticket): Promise<void>;
}
