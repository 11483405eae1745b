import type { SteadyLine } from "../line";

/** Terminal rise or sink, released free under water without line. */
export interface TerminalRise {
  /** m/s, up positive. */
  readonly speed: number;
  /** rad */
  readonly pitch: number;
  /** m/s, forward positive. */
  readonly drift: number;
  /** False: neither came to rest within 300 s nor did Newton converge; the figures are then those at 300 s. */
  readonly steady: boolean;
  readonly why: string | null;
}

/** One equilibrium of the tow at speed U. */
export interface TowRoot {
  /** rad */
  readonly pitch: number;
  readonly stable: boolean;
  /** N at the eye, and the line's angle above the horizontal there, rad. */
  readonly tension: number;
  readonly lineAngle: number;
}

/** Numbers are null where it does not run; `why` then says the reason in the words of the model page. */
export interface ReachRow {
  readonly speed: number;
  /** rad; null without a bib. */
  readonly bibAngle: number | null;
  readonly lineOut: number;
  readonly depth: number | null;
  readonly pitch: number | null;
  readonly tension: number | null;
  readonly lineAngle: number | null;
  readonly runs: boolean;
  /** Reason it does not run, or 'limited by the bottom', or null. */
  readonly why: string | null;
  readonly roots: readonly TowRoot[];
  readonly line: SteadyLine | null;
}
