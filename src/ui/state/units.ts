import type { FieldUnit } from "../../document";
import type { Lengths } from "../../drawing";
import { convert, formatNumber, fromSI, parseIn, tickText, UNITS } from "../../units";
import type { UnitName } from "../../units";
import { marked } from "../words/base";
import type { Language } from "../words/base";
import { FIGURES } from "../words/figures";
import { FILE } from "../words/file";
import type { Prefs } from "./prefs.svelte";

export type { UnitChoice } from "./prefs.svelte";

/** Units of the document's fields, and of figures that stand in no field. */
export type ShownUnit = FieldUnit | "mm/s" | "mN" | "mm⁴" | "%";

const NAMES: Readonly<Record<ShownUnit, UnitName>> = {
  mm: "mm",
  "mm²": "mm2",
  m: "m",
  g: "g",
  mL: "mL",
  "g/mL": "g_mL",
  "kg/m³": "kg_m3",
  "°": "deg",
  "°C": "C",
  "g/kg": "g_kg",
  "m/s": "m_s",
  s: "s",
  N: "N",
  "": "one",
  "mm/s": "mm_s",
  mN: "mN",
  "mm⁴": "mm4",
  "%": "percent",
};

/** What stands in its place where the person chose otherwise, and how many more decimals that needs. */
interface Other {
  readonly name: UnitName;
  readonly more: number;
}
const INCHES: Partial<Record<ShownUnit, Other>> = {
  mm: { name: "in", more: 2 },
  "mm²": { name: "in2", more: 3 },
  "mm⁴": { name: "in4", more: 5 },
  m: { name: "ft", more: 0 },
  "m/s": { name: "ft_s", more: 0 },
  "mm/s": { name: "in_s", more: 2 },
};
const OUNCES: Partial<Record<ShownUnit, Other>> = { g: { name: "oz", more: 2 } };
const FAHRENHEIT: Partial<Record<ShownUnit, Other>> = { "°C": { name: "F", more: 0 } };

export type Typed =
  { readonly ok: true; readonly value: number } | { readonly ok: false; readonly text: string };

/** Between a number and its unit: thin, and no line breaks there. */
const GAP = "\u202f";
/** Digits that are kept on the way through SI and back: so no tails of binary digits stand in a file or a field. */
const DIGITS = 12;

function decimalsOf(step: number): number {
  const text = step.toString();
  const point = text.indexOf(".");
  return point < 0 ? 0 : text.length - point - 1;
}

/** Turns numbers of the document and of the model's figures into what the person reads, and back. */
export class Units {
  readonly #prefs: Prefs;

  constructor(prefs: Prefs) {
    this.#prefs = prefs;
  }

  #of(unit: ShownUnit): Other {
    const { length, mass, temperature } = this.#prefs.units;
    return (
      (length === "in" ? INCHES[unit] : undefined) ??
      (mass === "oz" ? OUNCES[unit] : undefined) ??
      (temperature === "°F" ? FAHRENHEIT[unit] : undefined) ?? { name: NAMES[unit], more: 0 }
    );
  }

  /** The language that is read. */
  get language(): Language {
    return this.#prefs.language;
  }

  /** With the decimal mark of the language that is read. */
  #written(number: string): string {
    return marked(number, this.language);
  }

  /** How a picture of the water tells its lengths. */
  get lengths(): Lengths {
    return this.#prefs.units.length === "in" ? "inches" : "metric";
  }

  /** The unit as shown. */
  unit(unit: ShownUnit): string {
    return UNITS[this.#of(unit).name].symbol;
  }

  /** How a number of `unit` becomes the number shown. */
  converter(unit: ShownUnit): (value: number) => number {
    const { name } = this.#of(unit);
    return (value) => convert(value, NAMES[unit], name);
  }

  /** A number as shown, without its unit; `signed`: with its plus. Not for differences of temperature. */
  bare(value: number, unit: ShownUnit, digits: number, signed = false): string {
    const { name, more } = this.#of(unit);
    return this.#written(formatNumber(convert(value, NAMES[unit], name), digits + more, signed));
  }

  /** A number as shown, with its unit. */
  show(value: number, unit: ShownUnit, digits: number, signed = false): string {
    const symbol = this.unit(unit);
    const bare = this.bare(value, unit, digits, signed);
    if (symbol === "") return bare;
    return symbol === "°" ? bare + symbol : bare + GAP + symbol;
  }

  /** A round number at an axis, which is in the unit shown already. */
  tick(value: number): string {
    return this.#written(tickText(value));
  }

  /** Words of the model, whose lengths are in mm and masses in g, with both in the units shown, and real minus signs. */
  told(text: string): string {
    const most = { mm: 1, g: 0 } as const;
    return (["mm", "g"] as const)
      .reduce(
        (words, unit) =>
          this.unit(unit) === unit
            ? words
            : // In a language with decimal commas the words may have got theirs already. Not grams to a millilitre.
              words.replace(
                new RegExp(`(-?\\d+(?:[.,](\\d+))?)[ \u202f]${unit}\\b(?!\\/)`, "g"),
                (_, figure: string, decimals: string | undefined) =>
                  this.show(
                    Number(figure.replace(",", ".")),
                    unit,
                    Math.max(most[unit], decimals?.length ?? 0),
                  ),
              ),
        text,
      )
      .replace(/(^|[\s(])-(?=\d)/g, "$1\u2212");
  }

  /** As `bare`, of a figure of the model, which is in SI (an angle in radians, a share of 1). */
  bareSI(value: number, unit: ShownUnit, digits: number, signed = false): string {
    return this.bare(fromSI(value, NAMES[unit]), unit, digits, signed);
  }

  /** As `show`, of a figure of the model, which is in SI (an angle in radians, a share of 1). */
  showSI(value: number, unit: ShownUnit, digits: number, signed = false): string {
    return this.show(fromSI(value, NAMES[unit]), unit, digits, signed);
  }

  /** A number as it stands in a field: no fewer decimals than the step of its slider, and all that it was given. */
  edit(value: number, unit: ShownUnit, step: number): string {
    const { name, more } = this.#of(unit);
    const least = decimalsOf(step) + more;
    if (name !== NAMES[unit]) return this.#written(formatNumber(convert(value, NAMES[unit], name), least));
    const needed = decimalsOf(Number(value.toFixed(6)));
    return this.#written(formatNumber(value, Math.max(least, needed)));
  }

  /** Reads what was typed, in the shown unit or the one written behind it; says in words what is wrong with it. */
  read(
    text: string,
    unit: ShownUnit,
    range: { readonly min: number; readonly max: number; readonly above: boolean },
  ): Typed {
    const parsed = parseIn(text, this.#of(unit).name);
    if (!parsed.ok) {
      const why = FILE.in(this.language).of(parsed.why);
      return { ok: false, text: `${why.charAt(0).toUpperCase()}${why.slice(1)}.` };
    }
    const value = Number(fromSI(parsed.value, NAMES[unit]).toPrecision(DIGITS));
    const { min, max, above } = range;
    const bound = (at: number): string => this.show(at, unit, decimalsOf(at));
    const words = FIGURES.in(this.language);
    if (above ? value <= min : value < min)
      return { ok: false, text: words.tell(above ? "field.above" : "field.least", { bound: bound(min) }) };
    if (value > max) return { ok: false, text: words.tell("field.most", { bound: bound(max) }) };
    return { ok: true, value };
  }
}
