import type { Leg } from "../../../model/motion";
import type { ScenarioMove } from "../../../document";
import type { Units } from "../../state";
import { moveText } from "./words";

/** A move as the strip shows it. */
export interface Block {
  readonly leg: Leg;
  /** Left end and width, px. */
  readonly left: number;
  readonly wide: number;
  /** Not done, because the line is in. */
  readonly none: boolean;
  readonly kind: ScenarioMove["do"];
  readonly text: string;
  /** What of the text there is room for. */
  readonly shown: string;
  /** A reel's speed as a share of the fastest's; 0 of other moves. */
  readonly fast: number;
}

/** What the reel no longer does, because the line is in, still has a place to be taken hold of, px. */
const STUB = 9;

const isNone = ({ start, end }: Leg): boolean => end - start < 1e-9;

/** Scale at which the moves and their stubs fill a width: px to a second. */
export function scaleOf(legs: readonly Leg[], duration: number, width: number): number {
  return (width - legs.filter(isNone).length * STUB) / Math.max(duration, 0.5);
}

/** The moves as blocks, one after the other. `scale`: px to a second. */
export function blocksOf(
  legs: readonly Leg[],
  moves: readonly ScenarioMove[],
  scale: number,
  units: Units,
): Block[] {
  const fastest = Math.max(0.1, ...legs.map(({ move }) => (move.do === "reel" ? move.speed : 0)));
  let stubs = 0;
  return legs.map((leg, i) => {
    const left = leg.start * scale + stubs * STUB;
    const none = isNone(leg);
    if (none) stubs += 1;
    const move = moves[i];
    const wide = none ? STUB : (leg.end - leg.start) * scale;
    const text = move === undefined ? "" : moveText(move, units);
    return {
      leg,
      left,
      wide,
      none,
      kind: leg.move.do,
      text,
      shown: wide > 7 * text.length + 10 ? text : wide > 7 * leg.move.do.length + 10 ? leg.move.do : "",
      fast: leg.move.do === "reel" ? leg.move.speed / fastest : 0,
    };
  });
}
