type Answering = (typeof import("./whys"))["whys"];

/** The answers to 'why' of a run's figures: they come with the first question. */
class Answers {
  #now = $state.raw<Answering | null>(null);
  #coming = false;

  /** Null while they are still coming; whoever asks brings them. */
  get now(): Answering | null {
    if (this.#now === null && !this.#coming) {
      this.#coming = true;
      import("./whys").then(
        ({ whys }) => (this.#now = whys),
        // Asked again with the next question.
        () => (this.#coming = false),
      );
    }
    return this.#now;
  }
}

export const answers = new Answers();
