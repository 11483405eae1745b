import type { Language } from "../../../languages";
import type { Entry, Given, Texts, Translated } from "./catalogue";

/** A text that is kept to be told later: in the language that is read then. */
export type Saying = (language: Language) => string;
/** Each language by its own name: whoever looks for it reads it. */
export const LANGUAGE_NAMES: Readonly<Record<Language, string>> = { en: "English", de: "Deutsch" };

const GAP = "\u202f";

/** Tells texts and numbers in one language. Plurals and numbers follow the language by the browser's own `Intl`. */
export class Speaker<T extends Texts> {
  readonly #texts: Translated<T>;
  readonly #plural: Intl.PluralRules;
  /** One for each count of decimals: to make one takes longer than to use it a hundred times. */
  readonly #formats = new Map<number, Intl.NumberFormat>();

  constructor(
    texts: Translated<T>,
    readonly language: Language,
  ) {
    this.#texts = texts;
    this.#plural = new Intl.PluralRules(language);
  }

  /** The text of a key with its places filled. A place named `count` decides the plural form. */
  tell<K extends keyof T>(key: K, ...[places]: Given<T[K]>): string {
    const entry: Entry = this.#texts[key];
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

/** A title inside a sentence: small, but in a language whose nouns have capitals. */
export const inside = (title: string, language: Language): string =>
  language === "de" ? title : title.toLowerCase();
