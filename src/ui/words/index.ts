import type { Catalogue, Given, Key } from "./catalogue";
import { de } from "./de";
import { en } from "./en";

export type { Key } from "./catalogue";

/**
 * All text of a view in one catalogue, with typed keys and typed places: a key that does not exist, or a place that is not
 * filled, is an error of types. Plurals and numbers follow the language by the browser's own `Intl`. A module of our own:
 * a library that writes its modules at build time would have to run before types, lint and tests each time.
 */
export const CATALOGUES = { en, de } as const satisfies Readonly<Record<string, Catalogue>>;
export type SpokenLanguage = keyof typeof CATALOGUES;
export const SPOKEN: readonly SpokenLanguage[] = ["en", "de"];

const GAP = "\u202f";

/** Tells texts and numbers in one language. */
export class Speaker {
  readonly #plural: Intl.PluralRules;
  /** One for each count of decimals: to make one takes longer than to use it a hundred times. */
  readonly #formats = new Map<number, Intl.NumberFormat>();

  constructor(readonly language: SpokenLanguage) {
    this.#plural = new Intl.PluralRules(language);
  }

  /** The text of a key with its places filled. A place named `count` decides the plural form. */
  tell<K extends Key>(key: K, ...[places]: Given<K>): string {
    const entry: Catalogue[Key] = CATALOGUES[this.language][key];
    const given: Readonly<Record<string, string | number>> = places ?? {};
    const form =
      typeof entry === "string"
        ? entry
        : entry[this.#plural.select(Number(given["count"] ?? 0)) === "one" ? "one" : "other"];
    return form.replaceAll(/\{(\w+)\}/g, (_, name: string) => String(given[name] ?? ""));
  }

  /** A number with so many decimals, in the language's own way; a real minus, and none before zero. */
  number(value: number, decimals: number): string {
    if (!Number.isFinite(value)) throw new RangeError(`cannot show ${value}: find out where it comes from`);
    let format = this.#formats.get(decimals);
    if (format === undefined) {
      format = new Intl.NumberFormat(this.language, {
        minimumFractionDigits: decimals,
        maximumFractionDigits: decimals,
        useGrouping: false,
      });
      this.#formats.set(decimals, format);
    }
    const text = format.format(Math.abs(value));
    return value < 0 && /[1-9]/.test(text) ? `\u2212${text}` : text;
  }

  /** A number with its unit. */
  quantity(value: number, unit: string, decimals: number): string {
    const text = this.number(value, decimals);
    return unit === "" ? text : unit === "°" ? text + unit : text + GAP + unit;
  }

  /** "name by name": the last one with the language's own word. */
  list(items: readonly string[]): string {
    return new Intl.ListFormat(this.language, { type: "conjunction" }).format(items);
  }
}
