import type { Texts, Translated } from "./catalogue";
import { Speaker } from "./speaker";
import type { Language } from "../../../languages";

/** Where the other languages of a part come from. */
export type Others<T extends Texts> = Readonly<
  Record<Exclude<Language, "en">, () => Promise<{ readonly texts: Translated<T> }>>
>;

/**
 * The texts of one part of the page. Its English comes with the code that speaks it; another language comes when somebody
 * reads it, and until it is there the part speaks English.
 */
export class Part<T extends Texts> {
  readonly #others: Others<T>;
  #speakers = $state.raw<Readonly<Partial<Record<Language, Speaker<T>>>>>({});
  readonly #english: Speaker<T>;
  readonly #coming: Partial<Record<Language, Promise<void>>> = {};

  constructor(texts: Translated<T>, others: Others<T>) {
    this.#english = new Speaker<T>(texts, "en");
    this.#others = others;
  }

  /** Brings a language; a language that does not come is asked for again the next time. */
  async ready(language: Language): Promise<void> {
    if (language === "en" || this.#speakers[language] !== undefined) return;
    const others = this.#others;
    const bring = async (): Promise<void> => {
      try {
        const { texts } = await others[language]();
        this.#speakers = { ...this.#speakers, [language]: new Speaker<T>(texts, language) };
      } finally {
        delete this.#coming[language];
      }
    };
    return (this.#coming[language] ??= bring());
  }

  /** Who tells the texts now. Its `language` is English while the one that was asked for is not there. */
  in(language: Language): Speaker<T> {
    const found = language === "en" ? this.#english : this.#speakers[language];
    if (found !== undefined) return found;
    this.ready(language).catch(() => undefined);
    return this.#english;
  }
}
