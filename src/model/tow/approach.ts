import { exp } from "../base";

/**
 * How much farther a bait must be reeled until it runs at its depth. A cast is shorter than a long, even tow: when the
 * reel starts the bait is at the surface, and it comes down while the line gets shorter. Pure sums on figures that the
 * steady tow and a run's recording give.
 */

/** The steady depth with so much line out, m; null where it does not run. */
export interface SteadyAt {
  readonly lineOut: number;
  readonly depth: number | null;
}

/** A moment of an even retrieve. */
export interface Descent {
  /** Line still out, m. */
  readonly lineOut: number;
  /** Of the tie eye, m. */
  readonly depth: number;
  /** Metres deeper for a metre of line taken in. */
  readonly slope: number;
}

/** "there": at its depth. "short": the line is in before. Else the line still to take in and the depth then, m. */
export type Approach = "there" | "short" | { readonly more: number; readonly depth: number };

/** Share of the steady depth at which the bait counts as at depth. Common practice, no source. */
export const AT_STEADY = 0.95;
/** Nor is a bait short of its depth by so little, m: nobody sees it. Common practice, no source. */
const UNSEEN = 0.02;
/** Step of line along which the depth is followed, m. */
const STEP = 0.05;
/** Line that is left when it counts as in, m: what a recording ends at. */
const IN = 1;

/** The steady depth with `lineOut` m out: straight between neighbours. Null outside of them, or where one does not run. */
export function steadyDepthAt(table: readonly SteadyAt[], lineOut: number): number | null {
  for (let i = 1; i < table.length; i++) {
    const [a, b] = [table[i - 1], table[i]];
    if (!a || !b || lineOut < a.lineOut || lineOut > b.lineOut) continue;
    if (a.depth === null || b.depth === null) return null;
    return a.depth + ((b.depth - a.depth) * (lineOut - a.lineOut)) / (b.lineOut - a.lineOut);
  }
  return null;
}

/**
 * Follows a descent on. The bait comes towards the steady depth D of the line that is out in proportion to what is
 * missing, dd/ds = (D − d)/ℓ for a metre s of line taken in; the length ℓ is the descent's own, from its slope.
 *
 * @param table steady depths by rising length of line
 * @returns null where the steady depth is not known, or the bait does not come down
 */
export function approachOf(table: readonly SteadyAt[], { lineOut, depth, slope }: Descent): Approach | null {
  const target = steadyDepthAt(table, lineOut);
  if (target === null) return null;
  if (depth >= AT_STEADY * target) return "there";
  if (!(slope > 0)) return null;
  const length = (target - depth) / slope;
  let d = depth;
  for (let more = STEP; lineOut - more > IN; more += STEP) {
    const D = steadyDepthAt(table, lineOut - more);
    if (D === null) return null;
    // Exact over a step on which D stays: no step is too long for it.
    d = D + (d - D) * exp(-STEP / length);
    if (d >= AT_STEADY * D) return d - depth < UNSEEN ? "there" : { more, depth: d };
  }
  return "short";
}
