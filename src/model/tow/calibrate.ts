import { brent } from "../base";
import type { Bait } from "../bait";
import type { Surroundings } from "../forces";
import type { Tackle } from "../line";
import { prepareTow, reach, type TowBait } from "./reach";

/** A depth that a user measured in a steady retrieve; m/s and m. */
export interface MeasuredRun {
  readonly speed: number;
  readonly lineOut: number;
  readonly depth: number;
}

export interface Calibration {
  /** Interference factor of the bib that gives the measured depth; null where none in FACTORS does. */
  readonly factor: number | null;
  /** Depth with a factor of 1, m; null where it does not run. */
  readonly uncalibrated: number | null;
  /** Depth with the factor found, or with the end of FACTORS that comes nearest, m; null where it does not run. */
  readonly depth: number | null;
  /** measured − depth, m. */
  readonly residual: number | null;
  /** Why there is no factor, in words. */
  readonly why: string | null;
}

/** Factors that are tried. Beyond them the cause is not the bib's flow. Common practice, no source. */
export const FACTORS = { low: 0.5, high: 1.5 } as const;

/**
 * The bib's interference factor (docs/model.md §6.7: default 1, band ±25 %) that makes the steady tow run as deep as
 * measured. All else is as in the bait. The water counts as deeper than the measured depth.
 *
 * @throws RangeError for a measured speed, length or depth that is not above 0
 */
export function calibrate(
  bait: Bait,
  around: Surroundings,
  tackle: Tackle,
  measured: MeasuredRun,
): Calibration {
  for (const [name, value] of Object.entries(measured))
    if (!(value > 0) || !Number.isFinite(value))
      throw new RangeError(`A measured run needs a ${name} above 0, not ${value}.`);
  if (!bait.spec.bib)
    return {
      factor: null,
      uncalibrated: null,
      depth: null,
      residual: null,
      why: "there is no bib to calibrate",
    };
  const deep: Surroundings = { ...around, depth: Infinity };
  const prepared = new Map<number, TowBait>();
  const depthAt = (factor: number): number | null => {
    const tow = prepared.get(factor) ?? prepareTow(bait, factor);
    prepared.set(factor, tow);
    return reach(tow, deep, tackle, { speed: measured.speed, lineOut: measured.lineOut }).depth;
  };
  const uncalibrated = depthAt(1);
  // Where the bait runs at all, its depth rises with the factor: a coarse scan finds the running part, Brent's method the
  // factor.
  const steps = 20;
  let before: { factor: number; off: number } | null = null;
  let nearest: { factor: number; depth: number } | null = null;
  for (let i = 0; i <= steps; i++) {
    const factor = FACTORS.low + ((FACTORS.high - FACTORS.low) * i) / steps;
    const depth = depthAt(factor);
    if (depth === null) {
      before = null;
      continue;
    }
    const off = depth - measured.depth;
    if (before && before.off * off <= 0) {
      const found = brent((f) => (depthAt(f) ?? NaN) - measured.depth, before.factor, factor, 1e-6);
      const at = depthAt(found);
      return {
        factor: found,
        uncalibrated,
        depth: at,
        residual: at === null ? null : measured.depth - at,
        why: null,
      };
    }
    if (!nearest || Math.abs(off) < Math.abs(nearest.depth - measured.depth)) nearest = { factor, depth };
    before = { factor, off };
  }
  return {
    factor: null,
    uncalibrated,
    depth: nearest?.depth ?? null,
    residual: nearest ? measured.depth - nearest.depth : null,
    why: nearest
      ? `no factor from ${FACTORS.low} to ${FACTORS.high} gives that depth; the nearest is ${nearest.depth.toFixed(2)} m at ${nearest.factor.toFixed(2)}: check the speed, the line out and the drawing first`
      : "the bait does not run in this model at that speed",
  };
}
