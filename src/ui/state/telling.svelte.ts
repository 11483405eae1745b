import type { Language, Saying } from "../words/base";

/** What a part of the state has to tell until it is put away: it is given as a saying, and read as words. */
export class Telling {
  #trouble = $state.raw<Saying | null>(null);
  #told = $state.raw<Saying | null>(null);
  readonly #language: () => Language;

  constructor(language: () => Language) {
    this.#language = language;
  }

  /** The language that is read. */
  protected get language(): Language {
    return this.#language();
  }

  /** What stands in the way; null: nothing. */
  get trouble(): string | null {
    return this.#trouble?.(this.language) ?? null;
  }
  setTrouble(trouble: Saying | null): void {
    this.#trouble = trouble;
  }

  /** What has happened that a person should know; null: nothing. */
  get told(): string | null {
    return this.#told?.(this.language) ?? null;
  }
  setTold(told: Saying | null): void {
    this.#told = told;
  }
}
