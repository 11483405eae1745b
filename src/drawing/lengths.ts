import { formatIn, toSI, type UnitName } from "../units";

/** The units in which a picture tells lengths: metres and millimetres, or feet and inches. */
export type Lengths = "metric" | "inches";

const UNITS_OF: Readonly<Record<Lengths, { readonly far: UnitName; readonly near: UnitName }>> = {
  metric: { far: "m", near: "mm" },
  inches: { far: "ft", near: "in" },
};

/** The unit of long ways: m or ft. */
export const farUnit = (lengths: Lengths): UnitName => UNITS_OF[lengths].far;

/** The unit of what is small: mm or in. */
export const nearUnit = (lengths: Lengths): UnitName => UNITS_OF[lengths].near;

/** A picture that is less high than this (m) shows a bait and little more: its scales are in the small unit. */
const CLOSE: Readonly<Record<Lengths, number>> = { metric: 0.5, inches: toSI(4, "ft") };

/** The unit of the scales at the edges of a picture that is so high, m: close by mm or in, else m or ft. */
export const scaleUnit = (lengths: Lengths, height: number): UnitName =>
  UNITS_OF[lengths][height < CLOSE[lengths] ? "near" : "far"];

/** A distance (m) in words, in the small unit below a metre. */
export function distanceText(metres: number, lengths: Lengths): string {
  return metres < 1 ? formatIn(metres, nearUnit(lengths), 0) : formatIn(metres, farUnit(lengths), 1);
}
