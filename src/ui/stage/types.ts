import type { ArrowScale } from "../../drawing";

export interface StageOptions {
  /** Force arrows with their letters. */
  readonly forces: boolean;
  /** Ruler of the arrows' lengths. */
  readonly arrows: ArrowScale;
  /** Arrows head to tail, with their sum. */
  readonly sum: boolean;
  /** Words and numbers beside the marks. */
  readonly labels: boolean;
  /** See into the body. */
  readonly xray: boolean;
  /** Camera keeps the bait in view. */
  readonly follow: boolean;
}

/** How the water is framed: the bait filling the stage, the water column, or out to the rod tip. */
export type Framing = "close" | "water" | "cast";
