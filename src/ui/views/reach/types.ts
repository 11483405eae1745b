import type { Scenario } from "../../../document";
import type { Calibration } from "../../../model/tow";
import type { MeasuredDepth, ReachVariable } from "../../../runner";

/** Values of the tow that differ from the document's: a design that is looked at and not yet taken. */
export type Mark = Readonly<Partial<Record<ReachVariable, number>>>;

/** A document and a speed that a tow was worked out for. */
export interface Asked {
  readonly scenario: Scenario;
  /** m/s */
  readonly speed: number;
}

/** A bib factor that was looked for, and what it was looked for with. */
export interface Calibrated extends Pick<Scenario, "bait" | "tackle" | "water"> {
  readonly measured: MeasuredDepth;
  readonly found: Calibration;
}
