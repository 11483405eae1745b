import { fromSI, UNITS, type UnitName } from "./units";

/** A typographic minus, and a thin gap that does not break a line. */
const MINUS = "\u2212";
const GAP = "\u202f";

/**
 * A number with a fixed count of decimals, a real minus, no minus before zero. Throws on NaN and infinities: a number on screen
 * is right or absent.
 */
export function formatNumber(value: number, decimals: number, sign = false): string {
  if (!Number.isFinite(value)) throw new RangeError(`cannot show ${value}: find out where it comes from`);
  const digits = Math.abs(value).toFixed(decimals);
  if (Number(digits) === 0) return digits;
  return value < 0 ? MINUS + digits : sign ? `+${digits}` : digits;
}

/** A value in SI (temperature in °C) as text in a given unit, with the unit behind it. */
export function formatIn(value: number, unit: UnitName, decimals: number): string {
  const text = formatNumber(fromSI(value, unit), decimals);
  const { symbol } = UNITS[unit];
  if (symbol === "") return text;
  // a plain degree sign stands close to its number
  return symbol === "°" ? text + symbol : text + GAP + symbol;
}

/** A round number at an axis, written as it is: no added decimals, a real minus, no tail of binary digits. */
export function tickText(tick: number): string {
  const [, decimals = ""] = tick.toFixed(9).replace(/0+$/, "").split(".");
  return formatNumber(tick, decimals.length);
}
