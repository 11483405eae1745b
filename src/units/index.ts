export { convert, fromSI, toSI, UNITS } from "./units";
export type { Quantity, Unit, UnitName } from "./units";
export { formatIn, formatNumber, tickText } from "./format";
export { parseIn, parseNumber } from "./parse";
export type { Parsed } from "./parse";
