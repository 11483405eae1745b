import type { Leg } from "../../../model/motion";
import type { ScenarioEntry } from "../../../document";
import type { Units } from "../../state";
import type { SwimWords } from "../../words/swim";
import { entryShort, entryText } from "./words";

/** Which legs belong to an entry, from the first up to, not including, the last; and how often its moves are done. */
interface Span {
  readonly from: number;
  readonly to: number;
  readonly rounds: number;
}

/** An entry of the cadence as the strip shows it: a move, or moves that are repeated. */
export interface Block {
  /** s */
  readonly start: number;
  readonly end: number;
  /** Left end and width, px. */
  readonly left: number;
  readonly wide: number;
  /** Not done, because the line is in. */
  readonly none: boolean;
  /** Its end can be dragged. */
  readonly pulled: boolean;
  /** A reel in it ended early, because the line was in. */
  readonly cut: boolean;
  readonly kind: ScenarioEntry["do"];
  readonly text: string;
  /** What of the text there is room for. */
  readonly shown: string;
  /** A reel's speed as a share of the fastest's; 0 of other moves. */
  readonly fast: number;
  /** The moves of what is repeated, as often as they are done; empty of a single move. */
  readonly cells: readonly Cell[];
}

/** A move in a block, px from the block's left end. */
export interface Cell {
  readonly left: number;
  readonly wide: number;
  readonly fast: number;
  /** The rod tip moves. */
  readonly rod: boolean;
  /** A round begins with it. */
  readonly first: boolean;
}

/** What the reel no longer does, because the line is in, still has a place to be taken hold of, px. */
const STUB = 9;

const NOTHING = 1e-9;

interface Bounds {
  readonly start: number;
  readonly end: number;
}
const boundsOf = (legs: readonly Leg[], { from, to }: Span): Bounds => ({
  start: legs[from]?.start ?? 0,
  end: legs[to - 1]?.end ?? 0,
});
const isNone = ({ start, end }: Bounds): boolean => end - start < NOTHING;

/** Scale at which the entries and their stubs fill a width: px to a second. */
export function scaleOf(
  legs: readonly Leg[],
  spans: readonly Span[],
  duration: number,
  width: number,
): number {
  const stubs = spans.filter((span) => isNone(boundsOf(legs, span))).length;
  return (width - stubs * STUB) / Math.max(duration, 0.5);
}

/** The entries as blocks, one after the other. `scale`: px to a second. */
export function blocksOf(
  legs: readonly Leg[],
  entries: readonly ScenarioEntry[],
  spans: readonly Span[],
  scale: number,
  units: Units,
  words: SwimWords,
): Block[] {
  const speed = ({ move }: Leg): number => (move.do === "reel" ? move.speed : 0);
  const fastest = Math.max(0.1, ...legs.map(speed));
  let stubs = 0;
  return entries.map((entry, i) => {
    const span = spans[i] ?? { from: 0, to: 0, rounds: 0 };
    const own = legs.slice(span.from, span.to);
    const bounds = boundsOf(legs, span);
    const { start, end } = bounds;
    const none = isNone(bounds);
    const left = start * scale + stubs * STUB;
    if (none) stubs += 1;
    const wide = none ? STUB : (end - start) * scale;
    const text = entryText(entry, span.rounds, units, words);
    const short = entryShort(entry, span.rounds, words);
    const again = entry.do === "repeat";
    const cut = own.some((leg) => leg.cut);
    return {
      start,
      end,
      left,
      wide,
      none,
      pulled: !none && (again ? entry.times !== undefined : !cut),
      cut,
      kind: entry.do,
      text,
      shown: wide > 7 * text.length + 10 ? text : wide > 7 * short.length + 10 ? short : "",
      fast: again || own[0] === undefined ? 0 : speed(own[0]) / fastest,
      cells: again
        ? own.map((leg, k) => ({
            left: (leg.start - start) * scale,
            wide: (leg.end - leg.start) * scale,
            fast: speed(leg) / fastest,
            rod: leg.move.do === "twitch" || leg.move.do === "lift",
            first: k % entry.moves.length === 0,
          }))
        : [],
    };
  });
}
