import { formatNumber, fromSI } from "../../units";

/** A length (m) as millimetres, with the unit. */
export const mmText = (metres: number, decimals = 1): string => `${mmNumber(metres, decimals)} mm`;

export const mmNumber = (metres: number, decimals = 1): string =>
  formatNumber(fromSI(metres, "mm"), decimals);

export const degText = (radians: number, decimals = 1): string =>
  `${formatNumber(fromSI(radians, "deg"), decimals)}°`;

/** A height above the datum line in words. */
export function heightText(z: number): string {
  const mm = mmNumber(Math.abs(z));
  return Number(mm) === 0 ? "on it" : `${mm} ${z > 0 ? "above" : "below"}`;
}

export const CUT_LINE =
  "The thin full line is the cut line. The bait is inside it: saw on its outer side, and sand to the middle of the line.";

export const BARE = "All outlines are those of the bare body; the coats come on top.";
