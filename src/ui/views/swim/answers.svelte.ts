import type { Language } from "../../words/base";

type Answering = (typeof import("./whys"))["whys"];

/** The answers to 'why' of a run's figures: they come with the first question. */
class Answers {
  #now = $state.raw<Answering | null>(null);

  /** Null until somebody has asked. */
  get now(): Answering | null {
    return this.#now;
  }

  /** Brings them in a language; where they do not come, whoever asked is told. */
  readonly load = async (language: Language): Promise<void> => {
    const { whys, ready } = await import("./whys");
    // English stands in for a language that does not come.
    await ready(language).catch(() => undefined);
    this.#now = whys;
  };
}

export const answers = new Answers();
