import { hypot, square } from "../base";
import type { Measured, Repeats, Source } from "./types";

/** Standard deviation of a uniform error of width 1. */
const UNIFORM = 1 / Math.sqrt(12);

/**
 * Mean of repeats with its standard uncertainty: the scatter of the mean s/√n and the scale's resolution/√12, combined
 * (JCGM 100:2008, 4.2 and F.2.2.1). One reading has no scatter to show.
 *
 * @throws RangeError without a reading, for one that is no number, or for a resolution that is not above 0
 */
export function repeatsOf(values: readonly number[], resolution: number): Repeats {
  if (values.length === 0) throw new RangeError("no reading: give at least one");
  const bad = values.find((v) => !Number.isFinite(v));
  if (bad !== undefined) throw new RangeError(`reading ${bad}: give a number`);
  if (!(resolution > 0))
    throw new RangeError(`resolution ${resolution}: give the scale's last digit, above 0`);
  const count = values.length;
  const mean = values.reduce((s, v) => s + v, 0) / count;
  const scatter =
    count > 1 ? Math.sqrt(values.reduce((s, v) => s + square(v - mean), 0) / (count - 1)) : null;
  return {
    count,
    mean,
    spread: Math.max(...values) - Math.min(...values),
    scatter,
    deviation: hypot((scatter ?? 0) / Math.sqrt(count), resolution * UNIFORM),
  };
}

/** Independent sources combined. */
export const combined = (value: number, sources: readonly Source[]): Measured => ({
  value,
  deviation: Math.sqrt(sources.reduce((t, s) => t + square(s.deviation), 0)),
});

/** Value below which a share of the sorted values lies. */
export function quantile(sorted: readonly number[], share: number): number {
  const at = share * (sorted.length - 1);
  const i = Math.floor(at);
  const a = sorted[i] ?? NaN;
  return a + (at - i) * ((sorted[i + 1] ?? a) - a);
}
