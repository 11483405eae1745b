import { ENGLISH, toldIn } from "../../../languages";
import type { Language, Sources, Told } from "../../../languages";

/**
 * Texts that the program below the page says in English, to the page as to the headless command: titles and help of the
 * files' schemas, names of parts, messages. Another language has them by their English, and comes when somebody reads it.
 */
export class Below {
  readonly #sources: Sources;
  #echoes = $state.raw<Readonly<Partial<Record<Language, Told>>>>({});
  readonly #coming: Partial<Record<Language, Promise<void>>> = {};

  constructor(sources: Sources) {
    this.#sources = sources;
  }

  /** Brings a language; a language that does not come is asked for again the next time. */
  async ready(language: Language): Promise<void> {
    if (language === "en" || this.#echoes[language] !== undefined) return;
    const bring = async (): Promise<void> => {
      try {
        const told = await toldIn(language, this.#sources);
        this.#echoes = { ...this.#echoes, [language]: told };
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
