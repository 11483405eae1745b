import { towHere } from "../../../runner";
import { afterPaint } from "../../stage";
import type { Worked } from "../../state";

// The steady tow on the page's own thread: its model comes with the first turn of a hand.

/** The depth of the steady tow with all the line out, and what it was worked out for. */
export interface Here {
  readonly of: Worked;
  readonly speed: number;
  readonly depth: number | null;
}

/**
 * Works the depth out: at once, or, where the bait differs from the one `before`, after the bait's own numbers are painted.
 * Gives the function that takes that back. `tell` gets null where the model fails.
 */
export function look(
  now: Worked,
  speed: number,
  before: Here | null,
  tell: (here: Here | null) => void,
): (() => void) | undefined {
  const work = (): void => {
    let here: Here | null = null;
    try {
      here = { of: now, speed, depth: towHere(now.scenario, now.compiled, speed).depth };
    } catch {
      // The worker meets the same fault, and says it.
    }
    tell(here);
  };
  if (before?.of.compiled.bait !== now.compiled.bait) return afterPaint(work);
  work();
  return undefined;
}
