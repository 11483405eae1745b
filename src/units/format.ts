import { decimalsOf, fromSI, type Quantity, type System, UNITS, type UnitName, unitOf } from "./units";

/** A typographic minus, and a thin gap that does not break a line. */
const MINUS = "\u2212";
const GAP = "\u202f";

/** Shown where there is no number. */
export const NO_NUMBER = "–";

export interface FormatOptions {
  /** Write + before positive numbers. */
  readonly sign?: boolean;
  /** Leave the unit out. */
  readonly bare?: boolean;
}

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

/**
 * A value in SI (temperature in °C) as text with its unit, in the unit that the system uses for the quantity;
 * `decimals` absent: the quantity's usual. null gives a dash.
 */
export function format(
  value: number | null,
  quantity: Quantity,
  system: System,
  decimals: number = decimalsOf(quantity, system),
  options: FormatOptions = {},
): string {
  return formatIn(value, unitOf(quantity, system), decimals, options);
}

/** A value in SI as text in a given unit. */
export function formatIn(
  value: number | null,
  unit: UnitName,
  decimals: number,
  options: FormatOptions = {},
): string {
  if (value === null) return NO_NUMBER;
  const text = formatNumber(fromSI(value, unit), decimals, options.sign ?? false);
  const { symbol } = UNITS[unit];
  if (options.bare === true || symbol === "") return text;
  // a plain degree sign and per cent stand close to their number
  return symbol === "°" ? text + symbol : text + GAP + symbol;
}
