/** Long series drawn with few points and no lost peak. */

export interface Sample {
  readonly t: number;
  /** NaN marks a gap. */
  readonly v: number;
}

/** Index of the first time ≥ t (times rising); length where there is none. */
function lowerBound(time: ArrayLike<number>, t: number): number {
  let low = 0;
  let high = time.length;
  while (low < high) {
    const mid = (low + high) >> 1;
    if ((time[mid] ?? Infinity) < t) low = mid + 1;
    else high = mid;
  }
  return low;
}

/** Index of the sample nearest in time to t, or −1 where there is none. */
export function nearestIndex(time: ArrayLike<number>, t: number): number {
  const n = time.length;
  if (n === 0) return -1;
  const after = Math.min(n - 1, lowerBound(time, t));
  const before = Math.max(0, after - 1);
  return Math.abs((time[before] ?? NaN) - t) <= Math.abs((time[after] ?? NaN) - t) ? before : after;
}

/**
 * First, least, greatest and last sample of each of `columns` equal spans from `from` to `to`: drawn one pixel to a
 * span this gives the same picture as all samples (Jugel et al. 2014, M4, PVLDB 7(10)). A gap (value not finite)
 * stays one sample with NaN. One sample beyond either end is kept, so that the line runs to the edge.
 */
export function decimate(
  time: ArrayLike<number>,
  values: ArrayLike<number>,
  from: number,
  to: number,
  columns: number,
): Sample[] {
  if (time.length !== values.length)
    throw new RangeError(
      `decimate: ${time.length} times for ${values.length} values; both lists must be of one length`,
    );
  if (!(columns >= 1)) throw new RangeError(`decimate: ${columns} columns; at least 1 is needed`);
  const first = Math.max(0, lowerBound(time, from) - 1);
  let last = Math.min(time.length, lowerBound(time, to) + 1);
  // lowerBound stops at the first of equal times; a sample exactly at `to` is in, the one after it as well.
  while (last < time.length && (time[last - 1] ?? Infinity) <= to) last++;
  const out: Sample[] = [];
  const at = (i: number): Sample => ({ t: time[i] ?? NaN, v: values[i] ?? NaN });
  const keep = (i: number): void => {
    out.push(at(i));
  };
  if (last - first <= 4 * columns) {
    for (let i = first; i < last; i++) {
      const s = at(i);
      const gap = !Number.isFinite(s.v);
      if (gap && out.length > 0 && Number.isNaN(out[out.length - 1]?.v ?? 0)) continue;
      out.push(gap ? { t: s.t, v: NaN } : s);
    }
    return out;
  }
  const span = (to - from) / columns;
  let column = Number.NEGATIVE_INFINITY;
  let run: { first: number; last: number; low: number; high: number } | null = null;
  const flush = (): void => {
    if (!run) return;
    for (const i of [...new Set([run.first, run.low, run.high, run.last])].sort((a, b) => a - b)) keep(i);
    run = null;
  };
  for (let i = first; i < last; i++) {
    const { t, v } = at(i);
    if (!Number.isFinite(v)) {
      flush();
      if (!Number.isNaN(out[out.length - 1]?.v ?? 0)) out.push({ t, v: NaN });
      continue;
    }
    const c = Math.floor((t - from) / span);
    if (c !== column) {
      flush();
      column = c;
    }
    if (!run) run = { first: i, last: i, low: i, high: i };
    else {
      run.last = i;
      if (v < (values[run.low] ?? NaN)) run.low = i;
      if (v > (values[run.high] ?? NaN)) run.high = i;
    }
  }
  flush();
  return out;
}

/** Least and greatest finite value, or null where there is none. */
export function rangeOf(
  values: ArrayLike<number>,
): { readonly low: number; readonly high: number; readonly lowAt: number; readonly highAt: number } | null {
  let low = Infinity;
  let high = -Infinity;
  let lowAt = -1;
  let highAt = -1;
  for (let i = 0; i < values.length; i++) {
    const v = values[i] ?? NaN;
    if (!Number.isFinite(v)) continue;
    if (v < low) {
      low = v;
      lowAt = i;
    }
    if (v > high) {
      high = v;
      highAt = i;
    }
  }
  return lowAt < 0 ? null : { low, high, lowAt, highAt };
}
