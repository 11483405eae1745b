import type { Prefs } from "./prefs.svelte";

/**
 * The guided first run: whether it goes on, and the bait that was open when it began. Both come back after a reload. What
 * is done of it follows from the bait alone.
 */
export class GuideState {
  /** Windows that lie over the page: the card is shown in the topmost, where it can be read and reached. */
  windows = $state(0);
  readonly #prefs: Prefs;

  constructor(prefs: Prefs) {
    this.#prefs = prefs;
  }

  /** The bait that was open when it began; null: it does not go on. */
  get from(): string | null {
    return this.#prefs.guide;
  }

  start(from: string): void {
    this.#prefs.setGuide(from);
  }

  leave(): void {
    this.#prefs.setGuide(null);
  }
}
