import { sin } from "../base";
import type { Bait } from "../bait";

/** Strouhal number of the shedding behind a bluff plate, on its projected width across the flow; about 0.15. From memory. */
export const STROUHAL = 0.15;

/** Share by which the estimate may be off to either side. */
export const BEAT_BAND = 0.5;

/** Beats a second: an estimate with its band, Hz. */
export interface Beat {
  readonly frequency: number;
  readonly low: number;
  readonly high: number;
  /** The width across the flow that the estimate used, m. */
  readonly width: number;
}

/**
 * An estimate of how fast the bait swings from side to side: the rate at which the bib sheds eddies to one side and the
 * other, f = St·U/b. b is the bib's width: seen along the flow, the plate's extent from side to side (docs/model.md §10).
 * The model does not simulate roll and yaw: this estimate gives the order of magnitude, ±50 %. Null without a bib, or where
 * the flow does not meet its front face (α = β − θ from 0 to 180°).
 *
 * @param speed m/s
 * @param pitch rad, running attitude
 */
export function beat(bait: Bait, speed: number, pitch: number): Beat | null {
  const { bib } = bait.spec;
  if (!bib || !(speed > 0) || !(sin(bib.angle - pitch) > 0)) return null;
  const frequency = (STROUHAL * speed) / bib.width;
  return { frequency, low: frequency * (1 - BEAT_BAND), high: frequency * (1 + BEAT_BAND), width: bib.width };
}
