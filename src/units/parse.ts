import { dimension, toSI, UNITS, type UnitName } from "./units";

export type Parsed =
  { readonly ok: true; readonly value: number } | { readonly ok: false; readonly why: string };

const fail = (why: string): Parsed => ({ ok: false, why });

/**
 * Reads a number as people type it: decimal point or comma, any minus, a leading +, an exponent, a fraction ("1/8", "1
 * 1/2"), gaps between groups. A single comma or point is the decimal mark ("1,234" is 1.234). Where both stand, the last is
 * the decimal mark and the others must separate groups of three ("1,234.5", "1.234,5").
 */
export function parseNumber(text: string): Parsed {
  let plain = text
    .trim()
    .replace(/[\u2212\u2012\u2013\uFE63\uFF0D]/g, "-")
    .replace(/(\d)[ \u00A0\u202F\u2009'’](?=\d{3}(?!\d|\s*[/⁄]))/g, "$1");
  if (plain === "") return fail("a number is needed");
  const fraction = /^([+-]?)(?:(\d+)\s+)?(\d+)\s*[/⁄]\s*(\d+)$/.exec(plain);
  if (fraction) {
    const [, sign, whole, above, below] = fraction;
    if (Number(below) === 0) return fail("a fraction's lower number is not 0");
    const size = Number(whole ?? 0) + Number(above) / Number(below);
    return { ok: true, value: sign === "-" ? -size : size };
  }
  const lastPoint = plain.lastIndexOf(".");
  const lastComma = plain.lastIndexOf(",");
  if (lastPoint >= 0 && lastComma >= 0) {
    const [decimal, group] = lastPoint > lastComma ? [".", ","] : [",", "."];
    const grouped = new RegExp(`^[+-]?\\d{1,3}(?:\\${group}\\d{3})+\\${decimal}\\d*(?:e[+-]?\\d+)?$`, "i");
    if (!grouped.test(plain)) return fail(`"${text.trim()}" is not a number`);
    plain = plain.replaceAll(group, "");
  }
  plain = plain.replace(",", ".");
  if (!/^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i.test(plain))
    return fail(`"${text.trim()}" is not a number`);
  const value = Number(plain);
  return Number.isFinite(value) ? { ok: true, value } : fail(`"${text.trim()}" is too large`);
}

/**
 * Reads a quantity: a number, with or without a unit after it, to SI (temperature to °C). Without a unit, `unit` is meant.
 * Any unit of the same dimension is taken ("4 cm", "1/8 oz", "68 °F"); others are refused.
 */
export function parseIn(text: string, unit: UnitName): Parsed {
  const alone = parseNumber(text);
  if (alone.ok) return { ok: true, value: toSI(alone.value, unit) };
  const plain = text.trim().toLowerCase();
  const wanted = dimension(UNITS[unit].quantity);
  for (const [spelling, name] of SPELLINGS) {
    if (!plain.endsWith(spelling)) continue;
    const number = parseNumber(plain.slice(0, -spelling.length));
    if (!number.ok) continue;
    if (dimension(UNITS[name].quantity) === wanted) return { ok: true, value: toSI(number.value, name) };
    const fitting = NAMES.filter((n) => dimension(UNITS[n].quantity) === wanted).map((n) => UNITS[n].symbol);
    return fail(`${UNITS[name].symbol} does not fit here: use ${fitting.join(", ")}`);
  }
  return alone;
}

const NAMES = Object.keys(UNITS) as UnitName[];

/** Every way to write a unit, longest first, so that "m/s" is not read as "s". */
const SPELLINGS: readonly (readonly [string, UnitName])[] = NAMES.flatMap((name) =>
  [UNITS[name].symbol.toLowerCase(), ...UNITS[name].spellings]
    .filter((spelling) => spelling !== "")
    .map((spelling) => [spelling, name] as const),
).sort((a, b) => b[0].length - a[0].length);
