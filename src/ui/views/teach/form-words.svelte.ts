import type { Language } from "../../words/base";
import { ofTheForm } from "../../words/form";

/** The titles and help of the form in other languages, as far as they have come. */
class FormWords {
  #german = $state.raw<Readonly<Record<string, string>>>({});
  #asked = false;

  /** A title or help of the schema in the language that is read. */
  tell(text: string, language: Language): string {
    if (language === "en") return text;
    if (!this.#asked) {
      this.#asked = true;
      ofTheForm[language]().then(
        ({ texts }) => (this.#german = texts),
        () => (this.#asked = false),
      );
    }
    return this.#german[text] ?? text;
  }
}

export const formWords = new FormWords();
