import { formatIn, fromSI } from "../units";
import { niceStep } from "./ticks";

/**
 * How long a force's arrow is drawn. Forces on one bait run from thousandths of a newton (drag while it rises) to
 * several newtons (a twitch). The usual ruler is linear: twice the force, twice the length, so that arrows can be
 * added by eye. A ruler by the square root or by the logarithm keeps small forces in sight beside large ones; the key
 * beside the arrows says which ruler is used.
 */
export type ArrowScale = "linear" | "root" | "log";

export const ARROW_SCALES: readonly ArrowScale[] = ["linear", "root", "log"];

/** What the key says of each ruler. */
export const SCALE_WORDS: Readonly<Record<ArrowScale, string>> = {
  linear: "length ∝ force",
  root: "length ∝ √force",
  log: "length ∝ log force",
};

/** Forces smaller than this have no arrow on any ruler, and the ruler by the logarithm begins here. N. */
export const LEAST_FORCE = 2e-4;

/** Arrows shorter than this are not drawn: they would be a head alone. Their forces are listed instead. px. */
export const LEAST_LENGTH = 9;

/** A ruler for arrows: a force of `newton` is `px` long. */
export interface ArrowRuler {
  readonly scale: ArrowScale;
  readonly newton: number;
  readonly px: number;
}

/** Length of the longest arrow on a stage of this size, px. */
export const longestArrow = (width: number, height: number): number =>
  Math.max(64, Math.min(190, 0.34 * Math.min(width, height)));

/**
 * The ruler on which `most` (N) is at most `px` long. Its force at full length is 1, 2 or 5 × 10ⁿ N: while the forces
 * change little, lengths of one picture compare with those of the next.
 */
export function arrowRuler(scale: ArrowScale, most: number, px: number): ArrowRuler {
  return { scale, newton: niceStep(1, Math.max(most, 10 * LEAST_FORCE)), px };
}

/** Length of the arrow of a force of `newton`, px; 0 below LEAST_FORCE. */
export function arrowLength(newton: number, { scale, newton: full, px }: ArrowRuler): number {
  const size = Math.abs(newton);
  if (size < LEAST_FORCE) return 0;
  if (scale === "linear") return (px * size) / full;
  if (scale === "root") return px * Math.sqrt(size / full);
  return (px * Math.log(size / LEAST_FORCE)) / Math.log(full / LEAST_FORCE);
}

/** Reference bars for the key: round forces whose bars can be read and fit into `room` px, and the length of each. */
export function arrowKey(
  ruler: ArrowRuler,
  room: number,
): { readonly newton: number; readonly length: number }[] {
  const shares = ruler.scale === "linear" ? [0.5] : [0.01, 0.1, 1];
  return shares
    .map((share) => ({ newton: share * ruler.newton, length: arrowLength(share * ruler.newton, ruler) }))
    .filter((bar) => bar.length >= 5 && bar.length <= room);
}

/** Below a hundredth of a millinewton, in mN, a force is written as 0. */
const NOTHING_SHOWN = 0.005;

/** A force in words: three significant digits, mN below a newton, so that the forces of a bait stand in one unit to be added. */
export function forceText(newton: number): string {
  const size = Math.abs(newton);
  const unit = size < 1 ? "mN" : "N";
  const value = fromSI(size, unit);
  if (value < NOTHING_SHOWN) return formatIn(0, "mN", 0);
  const digits = Math.max(0, Math.min(3, 2 - Math.floor(Math.log10(value))));
  return formatIn(size, unit, digits);
}

/** A round force in words, for the key. */
export const roundForceText = (newton: number): string =>
  newton < 1 ? formatIn(newton, "mN", fromSI(newton, "mN") < 1 ? 1 : 0) : formatIn(newton, "N", 1);
