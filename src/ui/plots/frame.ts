/** Where the curves of a plot lie in its picture, px. */
export interface Frame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Room beside the curves, for the figures of the value axis on the left, px. */
const LEFT = 48;
const RIGHT = 12;
const TOP = 8;

/** Height of the time axis with its figures, px; the moves' names lie under it. */
export const AXIS = 18;

/** Height of a row of names, px. */
export const ROW = 14;

/** The frame in a picture of this size with so many rows of names under the time axis. */
export function frameOf(width: number, height: number, rows: number): Frame {
  return {
    left: LEFT,
    right: LEFT + Math.max(10, width - LEFT - RIGHT),
    top: TOP,
    bottom: height - AXIS - (rows > 0 ? rows * ROW + 4 : 0),
  };
}
