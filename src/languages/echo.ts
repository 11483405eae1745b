import { marked } from "./language";
import type { Language } from "./language";

/**
 * English texts, each with its text in another language. `{place}` in both stands for what differs from time to time. What
 * stands there is told in the language too, but not where the place is a `{name}` or `{key}` (or begins so): what a person or
 * a file calls something, stays. Where it is `{known}`, there has to be a text that is known as it stands.
 */
export type Echoes = Readonly<Record<string, string>>;

/** Tells texts from below the page in one language. */
export interface Told {
  readonly language: Language;
  /** A text in this language. What it does not know, a name that somebody has given say, stays as it came. */
  of(english: string): string;
}

/** A text with places, as a pattern that finds what stands in them. */
interface Pattern {
  readonly finds: RegExp;
  readonly text: string;
}

/** A number with a decimal point, as the program below the page writes it, alone or with its unit. */
const NUMBER =
  /^([-+\u2212±]?\d+\.\d+)([ \u202f]?)(|%|°|°[CF]|(?:[kmc]?[gmN]|mL|s|in|ft|oz|lb|kg)(?:\/\w{1,2}[²³]?)?)$/;
const PLACE = /\{(\w+)\}/g;
/** Between two sentences. */
const BETWEEN = /([.!?]) (?=[A-Z±])/g;

/** What a place stands for: as little as will do, and before the text begins no text with a colon. */
const held = (name: string, first: boolean): string => `(?<${name}>${first ? "(?:(?!: )." : "(?:."})+?)`;

/** A text that has no full stop itself may have one. */
const patternOf = (english: string, text: string): Pattern => ({
  finds: new RegExp(
    `^${english
      .replaceAll(/[.*+?^$()|[\]\\]/g, "\\$&")
      .replaceAll(PLACE, (_, name: string, at: number) => held(name, at === 0))}(\\.?)$`,
    "s",
  ),
  text,
});

/** So many texts are remembered. */
const MOST_TOLD = 2000;

/** How many letters of a text stand fast. */
const fixed = (english: string): number => english.replaceAll(PLACE, "").length;

/** Tells texts from below the page in another language. It comes with that language: an English page has no need of it. */
export class Echo implements Told {
  /** Texts as they stand; where one begins small in a sentence or a list, without regard to capitals. */
  readonly #texts: ReadonlyMap<string, string>;
  readonly #small: ReadonlyMap<string, string>;
  readonly #patterns: readonly Pattern[];
  /** What was asked already: a page asks for the same again and again while a hand moves. */
  readonly #told = new Map<string, string>();

  constructor(
    texts: Echoes,
    readonly language: Language,
  ) {
    const all = Object.entries(texts);
    this.#texts = new Map(all);
    this.#small = new Map(all.map(([english, text]) => [english.toLowerCase(), text]));
    // Of two that fit, the one that says more itself.
    this.#patterns = all
      .filter(([english]) => english.search(PLACE) >= 0)
      .sort(([a], [b]) => fixed(b) - fixed(a))
      .map(([english, text]) => patternOf(english, text));
  }

  /** A text in this language. What it does not know, a name that somebody has given say, stays as it came. */
  of(english: string): string {
    let told = this.#told.get(english);
    if (told === undefined) {
      told = this.#found(english) ?? english;
      if (this.#told.size >= MOST_TOLD) this.#told.clear();
      this.#told.set(english, told);
    }
    return told;
  }

  #found(english: string): string | null {
    const whole = this.#whole(english);
    if (whole !== undefined) return whole;
    const open = english.endsWith(".") ? this.#whole(english.slice(0, -1)) : undefined;
    if (open !== undefined) return `${open}.`;
    const number = NUMBER.exec(english);
    if (number !== null) {
      const [, digits = "", gap = "", unit = ""] = number;
      return marked(digits, this.language) + (gap && "\u202f") + unit;
    }
    return this.#numbers(english) ?? this.#sentences(english) ?? this.#filled(english);
  }

  #whole(english: string): string | undefined {
    return this.#texts.get(english) ?? this.#small.get(english);
  }

  /** A list of numbers: decimal commas would run together with those of a list. */
  #numbers(english: string): string | null {
    const numbers = english.split(", ");
    return numbers.length > 1 && numbers.every((one) => NUMBER.test(one))
      ? numbers.map((one) => this.of(one)).join("; ")
      : null;
  }

  /** Several sentences, each of which is known. */
  #sentences(english: string): string | null {
    const sentences = english.replaceAll(BETWEEN, "$1\n").split("\n");
    if (sentences.length === 1) return null;
    const found = sentences.map((one) => this.#found(one));
    return found.every((one) => one !== null) ? found.join(" ") : null;
  }

  #filled(english: string): string | null {
    for (const { finds, text } of this.#patterns) {
      const found = finds.exec(english);
      if (found === null) continue;
      const { groups = {} } = found;
      if (groups["known"] !== undefined && this.#whole(groups["known"]) === undefined) continue;
      const filled = text.replaceAll(PLACE, (_, place: string) => {
        const given = groups[place] ?? "";
        return /^(?:name|key)/.test(place) ? given : this.of(given);
      });
      const told = filled + (found.at(-1) ?? "");
      if (told !== english) return told;
    }
    return null;
  }
}
