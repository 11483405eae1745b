/** Work in equal parts that are done one after the other. */
export interface Work {
  /** What is counted, in all parts together. */
  readonly steps: number;
  readonly parts: number;
  readonly part: (k: number) => void;
}

/**
 * Times work in rounds that all do the same. Of each part the least time over the rounds counts: a round is always disturbed
 * by something else on the machine, a part takes milliseconds.
 */
export class Clock {
  readonly #least: number[] = [];
  #steps = 0;

  constructor(readonly make: () => Work) {}

  round(): void {
    const work = this.make();
    this.#steps = work.steps;
    for (let k = 0; k < work.parts; k++) {
      const start = performance.now();
      work.part(k);
      this.#least[k] = Math.min(this.#least[k] ?? Infinity, performance.now() - start);
    }
  }

  /** Microseconds a step. */
  get time(): number {
    return (1000 * this.#least.reduce((sum, one) => sum + one, 0)) / this.#steps;
  }
}

/** Round after round through all clocks, so that what disturbs the machine for a while disturbs none alone. */
export function inTurn(clocks: readonly Clock[], rounds: number): void {
  for (let round = 0; round < rounds; round++) for (const clock of clocks) clock.round();
}
