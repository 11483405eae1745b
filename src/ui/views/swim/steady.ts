import type { GrowingRecording } from "../../../model/motion";
import { approachOf, type Approach, type SteadyAt } from "../../../model/tow";
import type { ReachCell } from "../../../runner";

/** What the steady tow says of a retrieve: how deep the bait would run with so much line out. Pure. */

/** One length of line in a steady tow: depth, and the level distance from the rod tip to the tie eye, m. */
export interface SteadyPoint extends SteadyAt {
  readonly behind: number | null;
}

/** The shortest reel that is looked at, s, and the time over which the descent is measured. Common practice, no source. */
const LEAST_REEL = 1.5;
const SLOPE_OVER = 0.75;

/** Lengths of line from 1 m to all that is out, m. */
export const lengthsOf = (lineOut: number): readonly number[] => {
  const least = Math.min(1, lineOut / 2);
  return Array.from({ length: 12 }, (_, i) => Number((least + ((lineOut - least) * i) / 11).toFixed(4)));
};

export const pointsOf = (lengths: readonly number[], cells: readonly ReachCell[]): readonly SteadyPoint[] =>
  lengths.flatMap((lineOut, i): SteadyPoint[] => {
    const cell = cells[i];
    return cell === undefined
      ? []
      : [{ lineOut, depth: cell.depth, behind: cell.whole?.row.line?.reach ?? null }];
  });

/** Line still out at a moment, m: all that was out, less what the reels have taken in. */
function outAt({ meta: { legs } }: GrowingRecording, lineOut: number, time: number): number {
  let wound = 0;
  for (const { move, start, end } of legs)
    if (move.do === "reel") wound += move.speed * Math.max(0, Math.min(end, time) - start);
  return lineOut - wound;
}

/**
 * Where a whole run stands on its way to the depth of the steady tow at this speed: at the end of its longest reel at
 * it. Null where no reel is long enough, or where nothing can be said.
 */
export function approachIn(
  recording: GrowingRecording,
  table: readonly SteadyPoint[],
  lineOut: number,
  speed: number,
): Approach | null {
  if (!recording.complete) return null;
  const { frameRate, legs } = recording.meta;
  const reels = legs.filter(({ move }) => move.do === "reel" && Math.abs(move.speed - speed) < 1e-9);
  const [leg] = [...reels].sort((a, b) => b.end - b.start - (a.end - a.start));
  if (leg === undefined || leg.end - leg.start < LEAST_REEL) return null;
  const depth = recording.channel("depth");
  const at = (time: number): number => depth[Math.round(time * frameRate)] ?? NaN;
  const slope = (at(leg.end) - at(leg.end - SLOPE_OVER)) / (speed * SLOPE_OVER);
  if (!Number.isFinite(slope)) return null;
  return approachOf(table, { lineOut: outAt(recording, lineOut, leg.end), depth: at(leg.end), slope });
}
