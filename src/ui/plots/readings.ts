import { nearestIndex } from "./decimate";
import type { Series } from "./types";

/** A curve's value at a moment. */
export interface Reading {
  readonly series: Series;
  /** Time of the sample that is read, s; NaN without samples. */
  readonly t: number;
  /** In the series' unit; NaN in a gap and past the end of what is recorded. */
  readonly v: number;
}

/** What every curve says at a time: its nearest sample. */
export function readingsAt(series: readonly Series[], time: number): Reading[] {
  return series.map((s) => {
    const i = nearestIndex(s.time, time);
    const at = s.time[i] ?? NaN;
    // Past the end of what is recorded there is nothing to read.
    const near = i >= 0 && Math.abs(at - time) <= 0.1 + 1e-9;
    return { series: s, t: at, v: near ? (s.values[i] ?? NaN) : NaN };
  });
}
