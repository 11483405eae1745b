import { halfBreadthAt } from "../shape";
import { leastSquares } from "./least-squares";

/** One reading of a caliper across the body: height above the datum line, and thickness there, m. */
export interface CaliperReading {
  readonly height: number;
  readonly thickness: number;
}

/** A section fitted to caliper readings. Lengths m. */
export interface SectionFit {
  readonly halfBreadth: number;
  /** Height of greatest breadth. */
  readonly widest: number;
  readonly exponentAbove: number;
  readonly exponentBelow: number;
  /** Root mean square of thickness read less thickness fitted, m. */
  readonly rms: number;
  /** Thickness read less thickness fitted, reading by reading, m. */
  readonly residuals: readonly number[];
}

/** Bounds of the exponents, as in the file. */
const EXPONENT = { low: 1, high: 10 };
/** First guesses of the exponents: from a near diamond to a near box. */
const STARTS = [1.4, 2, 3, 5];
/** Readings needed: one more than the unknowns that they have to fix. */
const LEAST = 4;

/**
 * Fits the two half superellipses of a section (docs/model.md §2) to thicknesses at heights, between a top and a bottom edge
 * that are known. Unknown: half-breadth, the two exponents, and the height of greatest breadth unless it is given.
 *
 * @param top, bottom heights of the edges at this station, m
 * @param widest height of greatest breadth where it is known; null: fitted too
 * @throws RangeError with the remedy where the readings cannot fix a section
 */
export function fitSection(
  readings: readonly CaliperReading[],
  top: number,
  bottom: number,
  widest: number | null = null,
): SectionFit {
  const need = widest === null ? LEAST + 1 : LEAST;
  if (readings.length < need)
    throw new RangeError(
      `${readings.length} readings: give ${need} or more, some above and some below the widest line`,
    );
  if (!(top > bottom))
    throw new RangeError(`top edge ${top} m at or below the bottom edge ${bottom} m: no section there`);
  for (const { height, thickness } of readings) {
    if (!(height > bottom && height < top))
      throw new RangeError(
        `height ${height} m is not between the edges, ${bottom} and ${top} m: leave this reading out`,
      );
    if (!(Number.isFinite(thickness) && thickness > 0))
      throw new RangeError(`thickness ${thickness} m: give a number above 0`);
  }
  const H = top - bottom;
  const most = Math.max(...readings.map((r) => r.thickness));
  const model = (at: readonly number[]): number[] => {
    const [hw = 0, above = 2, below = 2, middle = widest ?? (top + bottom) / 2] = at;
    const section = {
      s: 0,
      top,
      bottom,
      widest: middle,
      halfBreadth: hw,
      exponentAbove: above,
      exponentBelow: below,
    };
    return readings.map(({ height, thickness }) => thickness - 2 * halfBreadthAt(section, height));
  };
  let best: { at: readonly number[]; rms: number } | null = null;
  for (const n of STARTS) {
    const start = [most / 2, n, n];
    const scale = [most, 1, 1];
    const low = [most / 4, EXPONENT.low, EXPONENT.low];
    const high = [most, EXPONENT.high, EXPONENT.high];
    if (widest === null) {
      start.push((top + bottom) / 2);
      scale.push(H);
      low.push(bottom + 0.05 * H);
      high.push(top - 0.05 * H);
    }
    const found = leastSquares(model, start, scale, low, high);
    if (best === null || found.rms < best.rms) best = found;
  }
  if (best === null) throw new Error("no start was tried");
  const [halfBreadth = 0, exponentAbove = 2, exponentBelow = 2, middle = widest ?? 0] = best.at;
  return {
    halfBreadth,
    widest: middle,
    exponentAbove,
    exponentBelow,
    rms: best.rms,
    residuals: model(best.at),
  };
}
