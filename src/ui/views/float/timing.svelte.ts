import { toSI } from "../../../units";
import { onDestroy } from "svelte";
import type { ReadingState } from "./reading.svelte";

const BEAT_MS = 100;

/** The running watch, and the time that is being typed. */
export class Timing {
  /** Seconds on the running watch. */
  running = $state(0);
  /** Why the time typed was not taken. */
  wrong = $state<string | null>(null);
  readonly #reading: ReadingState;

  constructor(reading: ReadingState) {
    this.#reading = reading;
  }

  get typed(): string {
    return this.#reading.typed;
  }
  set typed(text: string) {
    this.#reading.typed = text;
  }

  addTyped(): void {
    this.wrong = this.#reading.takeTyped();
  }

  /** Keeps the seconds going for the life of the component that calls it. */
  follow(): void {
    const beat = setInterval(() => {
      const { started } = this.#reading;
      if (started !== null) this.running = toSI(performance.now() - started, "ms");
    }, BEAT_MS);
    onDestroy(() => clearInterval(beat));
  }
}
