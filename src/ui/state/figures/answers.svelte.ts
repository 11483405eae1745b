import type { Language } from "../../words/base";

type Answering = (typeof import("./why"))["whys"];

/** The answers to "why" of the bait's figures: longer than all else that the figures say, they come with the first question. */
class Answers {
  #now = $state.raw<Answering | null>(null);

  /** Null while they are still coming. */
  get now(): Answering | null {
    return this.#now;
  }

  /** Brings them in a language. */
  async load(language: Language): Promise<void> {
    const { REASONS, whys } = await import("./why");
    // English stands in for a language that does not come.
    await REASONS.ready(language).catch(() => undefined);
    this.#now = whys;
  }
}

export const answers = new Answers();
