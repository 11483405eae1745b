import type { Echoes, Told } from "./echo";
import type { Language } from "./speaker";

type Others = Readonly<Record<Exclude<Language, "en">, () => Promise<{ readonly texts: Echoes }>>>;
const ENGLISH: Told = { language: "en", of: (english) => english };

/**
 * Texts that the program below the page says in English, to the page as to the headless command: titles and help of the
 * files' schemas, names of parts, messages. Another language has them by their English, and comes when somebody reads it.
 */
export class Below {
  readonly #others: Others;
  #echoes = $state.raw<Readonly<Partial<Record<Language, Told>>>>({});
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
        const [{ texts }, { Echo }] = await Promise.all([others[language](), import("./echo")]);
        this.#echoes = { ...this.#echoes, [language]: new Echo(texts, language) };
      } finally {
        delete this.#coming[language];
      }
    };
    return (this.#coming[language] ??= bring());
  }

  /** Who tells these texts now. Its `language` is English while the one that was asked for is not there. */
  in(language: Language): Told {
    const found = language === "en" ? ENGLISH : this.#echoes[language];
    if (found !== undefined) return found;
    this.ready(language).catch(() => undefined);
    return ENGLISH;
  }
}
