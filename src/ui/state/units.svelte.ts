import type { FieldUnit } from "../../document";
import type { Prefs } from "./prefs.svelte";

/** The person's choice; the document and the model know nothing of it. */
export interface UnitChoice {
  readonly length: "mm" | "in";
  readonly mass: "g" | "oz";
  readonly temperature: "°C" | "°F";
}

/** Units of the document's fields, and of figures that stand in no field. */
export type ShownUnit = FieldUnit | "mm/s" | "%";

/** From the unit of the file to the one shown: shown = value·factor + offset, with so many more decimals. */
interface Conversion {
  readonly label: string;
  readonly factor: number;
  readonly offset: number;
  readonly more: number;
}

const INCH_MM = 25.4;
const FOOT_M = 0.3048;
const OUNCE_G = 28.349523125;

const LENGTHS: Partial<Record<ShownUnit, Conversion>> = {
  mm: { label: "in", factor: 1 / INCH_MM, offset: 0, more: 2 },
  m: { label: "ft", factor: 1 / FOOT_M, offset: 0, more: 0 },
  "m/s": { label: "ft/s", factor: 1 / FOOT_M, offset: 0, more: 0 },
  "mm/s": { label: "in/s", factor: 1 / INCH_MM, offset: 0, more: 1 },
};
const MASSES: Partial<Record<ShownUnit, Conversion>> = {
  g: { label: "oz", factor: 1 / OUNCE_G, offset: 0, more: 2 },
};
const TEMPERATURES: Partial<Record<ShownUnit, Conversion>> = {
  "°C": { label: "°F", factor: 1.8, offset: 32, more: 0 },
};

export type Typed = { readonly ok: true; readonly value: number } | { readonly ok: false; readonly text: string };

const MINUS = "−";

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

  #of(unit: ShownUnit): Conversion {
    const { length, mass, temperature } = this.#prefs.units;
    return (
      (length === "in" ? LENGTHS[unit] : undefined) ??
      (mass === "oz" ? MASSES[unit] : undefined) ??
      (temperature === "°F" ? TEMPERATURES[unit] : undefined) ?? { label: unit, factor: 1, offset: 0, more: 0 }
    );
  }

  /** The unit as shown. */
  unit(unit: ShownUnit): string {
    return this.#of(unit).label;
  }

  /** How a number of `unit` becomes the number shown. */
  converter(unit: ShownUnit): (value: number) => number {
    const { factor, offset } = this.#of(unit);
    return (value) => value * factor + offset;
  }

  /** A number as shown, without its unit; a true minus sign; `signed`: plus too. Differences of temperature are not for this. */
  bare(value: number, unit: ShownUnit, digits: number, signed = false): string {
    const { factor, offset, more } = this.#of(unit);
    const text = (value * factor + offset).toFixed(digits + more);
    const zero = Number(text) === 0;
    const size = text.replace("-", "");
    if (zero) return size;
    return text.startsWith("-") ? `${MINUS}${size}` : signed ? `+${size}` : size;
  }

  /** A number as shown with its unit. A no-break space between them, none before ° and %. */
  show(value: number, unit: ShownUnit, digits: number, signed = false): string {
    const { label } = this.#of(unit);
    const bare = this.bare(value, unit, digits, signed);
    if (label === "") return bare;
    return label === "°" || label === "%" ? `${bare}${label === "%" ? "\u00a0" : ""}${label}` : `${bare}\u00a0${label}`;
  }

  /** A number as it stands in a field to be edited: no fewer decimals than its step, no more than it has. */
  edit(value: number, unit: ShownUnit, step: number): string {
    const { factor, offset, more } = this.#of(unit);
    const least = decimalsOf(step) + more;
    const shown = value * factor + offset;
    const most = Math.min(6, least + 2);
    const fine = shown.toFixed(most);
    const needed = fine.replace(/0+$/, "");
    const decimals = Math.max(least, needed.length - needed.indexOf(".") - 1);
    return shown.toFixed(factor === 1 ? Math.min(decimals, most) : least).replace("-", MINUS);
  }

  /** Reads what was typed, in the shown unit; says in words what is wrong with it. */
  read(
    text: string,
    unit: ShownUnit,
    range: { readonly min: number; readonly max: number; readonly above: boolean },
  ): Typed {
    const { label, factor, offset } = this.#of(unit);
    const plain = text
      .trim()
      .replace(/\s*[^\d.,+\-−\s][^\d]*$/u, "")
      .replaceAll(MINUS, "-")
      .replace(",", ".");
    if (plain === "") return { ok: false, text: "Type a number." };
    if (!/^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain)) {
      return { ok: false, text: `‘${text.trim().slice(0, 24)}’ is no number: write it like 12.5.` };
    }
    const value = (Number(plain) - offset) / factor;
    const { min, max, above } = range;
    const bound = (at: number): string => `${this.edit(at, unit, 1)}${label === "" ? "" : ` ${label}`}`;
    if (above ? value <= min : value < min) {
      return { ok: false, text: `${above ? "More than" : "At least"} ${bound(min)}, please.` };
    }
    if (value > max) return { ok: false, text: `At most ${bound(max)}, please.` };
    return { ok: true, value: factor === 1 ? value : Number(value.toFixed(6)) };
  }
}
