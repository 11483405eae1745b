import type { Language } from "./speaker";

/** English texts, each with its text in another language. `{name}` in both stands for what differs from time to time. */
export type Echoes = Readonly<Record<string, string>>;
type Others = Readonly<Record<Exclude<Language, "en">, () => Promise<{ readonly texts: Echoes }>>>;
/** A text with places, as a pattern that finds what stands in them. */
interface Pattern {
  readonly finds: RegExp;
  /** How much of it is its own, without what stands in the places. */
  readonly own: number;
  readonly text: string;
}

/** A number with a decimal point, as the program below the page writes it. */
const NUMBER = /^([-+\u2212±]?\d+)\.(\d+)$/;
const PLACE = /\{(\w+)\}/g;

const patternOf = (english: string, text: string): Pattern => ({
  finds: new RegExp(
    `^${english.replaceAll(/[.*+?^$()|[\]\\]/g, "\\$&").replaceAll(PLACE, "(?<$1>.+?)")}$`,
    "s",
  ),
  own: english.replaceAll(PLACE, "").length,
  text,
});

/** Tells texts from below the page in one language. */
class Echo {
  readonly #texts: Echoes;
  readonly #patterns: readonly Pattern[];

  constructor(
    texts: Echoes,
    readonly language: Language,
  ) {
    this.#texts = texts;
    // Of two that fit, the one with more of its own is meant: ‘add {count} points’, not ‘add {thing}’.
    this.#patterns = Object.entries(texts)
      .flatMap(([english, text]) => (english.search(PLACE) < 0 ? [] : [patternOf(english, text)]))
      .sort((a, b) => b.own - a.own);
  }

  /** A text in this language. What it does not know, a name that somebody has given say, stays as it came. */
  of(english: string): string {
    if (this.language === "en") return english;
    const whole = Object.hasOwn(this.#texts, english) ? this.#texts[english] : undefined;
    if (whole !== undefined) return whole;
    const number = NUMBER.exec(english);
    if (number !== null) return `${number[1] ?? ""},${number[2] ?? ""}`;
    for (const { finds, text } of this.#patterns) {
      const found = finds.exec(english)?.groups;
      if (found !== undefined) return text.replaceAll(PLACE, (_, name: string) => this.of(found[name] ?? ""));
    }
    return english;
  }
}

/**
 * Texts that the program below the page says in English, to the page as to the headless command: titles and help of the
 * files' schemas, names of parts, messages. Another language has them by their English, and comes when somebody reads it.
 */
export class Below {
  readonly #others: Others;
  readonly #english = new Echo({}, "en");
  #echoes = $state.raw<Readonly<Partial<Record<Language, Echo>>>>({});
  readonly #coming: Partial<Record<Language, Promise<void>>> = {};

  constructor(others: Others) {
    this.#others = others;
  }

  /** Brings a language; a language that does not come is asked for again the next time. */
  async ready(language: Language): Promise<void> {
    if (language === "en" || this.#echoes[language] !== undefined) return;
    const others = this.#others;
    const bring = async (): Promise<void> => {
      try {
        const { texts } = await others[language]();
        this.#echoes = { ...this.#echoes, [language]: new Echo(texts, language) };
      } finally {
        delete this.#coming[language];
      }
    };
    return (this.#coming[language] ??= bring());
  }

  /** Who tells these texts now. Its `language` is English while the one that was asked for is not there. */
  in(language: Language): Echo {
    const found = language === "en" ? this.#english : this.#echoes[language];
    if (found !== undefined) return found;
    this.ready(language).catch(() => undefined);
    return this.#english;
  }
}
