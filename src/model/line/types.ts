import type { Vec } from "../base";

/** Round fishing line. SI. */
export interface LineSpec {
  readonly material: string;
  readonly diameter: number;
  readonly density: number;
  /** Young's modulus × section, N (tension per unit strain). */
  readonly EA: number;
}

export interface Tackle {
  readonly line: LineSpec;
  /** m of line from the rod tip to the tie eye. */
  readonly lineOut: number;
  /** Height of the rod tip above the still surface, m. */
  readonly rodTip: number;
}

/** Steady shape of a towed line, from the tie eye up. */
export interface SteadyLine {
  /** Depth of the tie eye, m. */
  readonly depth: number;
  /** Line under water, m. */
  readonly wetLength: number;
  /** Horizontal distance from the eye to the rod tip, m. */
  readonly reach: number;
  /** Tension where the line leaves the water and at the rod tip, N. */
  readonly tensionAtSurface: number;
  readonly tensionAtRod: number;
  /** Points from the eye (0,0) up, world axes, m: for drawing. */
  readonly points: readonly Vec[];
  /**
   * False: the line out is too short to fall to the rod tip's height before its end, or the eye is below that height from
   * the start.
   */
  readonly meetsRod: boolean;
}
