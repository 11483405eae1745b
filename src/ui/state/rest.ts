/** While a hand moves a slider or types, slow work waits this long for it to rest, ms. */
const REST_MS = 160;

/** A run of key presses counts as one step of undo: it ends when the keys have rested so long, ms. */
export const KEYS_REST_MS = 900;

/**
 * Starts slow work: at once, or, with `waiting`, when the hand has rested. Gives the function that takes the start back,
 * so that an effect can return it: then only the last of several quick changes starts the work.
 */
export function atRest(work: () => void, waiting = true): () => void {
  const timer = setTimeout(work, waiting ? REST_MS : 0);
  return () => clearTimeout(timer);
}

/**
 * Work that is mostly over before the hand has moved on: it starts at once where none is under way, else when that has
 * ended. What is still under way when the hand has rested is left behind.
 */
export class Pace {
  #current: object | null = null;
  #next: (() => Promise<unknown>) | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;

  /** Gives the function that takes the start back where it has not begun; `work` must not reject. */
  start(work: () => Promise<unknown>): () => void {
    this.#drop();
    if (this.#current === null) {
      this.#begin(work);
      return () => undefined;
    }
    this.#next = work;
    this.#timer = setTimeout(() => this.#begin(work), REST_MS);
    return () => {
      if (this.#next === work) this.#drop();
    };
  }

  #begin(work: () => Promise<unknown>): void {
    this.#drop();
    const mine = {};
    this.#current = mine;
    void work().finally(() => {
      if (this.#current !== mine) return;
      this.#current = null;
      if (this.#next !== null) this.#begin(this.#next);
    });
  }

  #drop(): void {
    this.#next = null;
    clearTimeout(this.#timer);
  }
}
