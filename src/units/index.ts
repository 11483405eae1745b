export { convert, decimalsOf, fromSI, toSI, UNITS, unitOf } from "./units";
export type { Quantity, System, Unit, UnitName } from "./units";
export { format, formatIn, formatNumber } from "./format";
export type { FormatOptions } from "./format";
export { parse, parseIn, parseNumber } from "./parse";
export type { Parsed } from "./parse";
