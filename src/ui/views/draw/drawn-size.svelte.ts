import { onDestroy } from "svelte";
import type { BoardLayout, Elevation } from "../../../drawing";

/** So long after the size has changed last, the board is drawn at it, ms. */
const RESTS = 300;

/**
 * The size at which the board is drawn. While a hand looks closer, what is drawn stays as it is, and one transform makes it
 * larger or smaller; when the hand rests, or has come half as far again, it is drawn anew at the size that is shown.
 */
export class DrawnSize {
  #rested = $state.raw<number | null>(null);
  #rest: ReturnType<typeof setTimeout> | undefined;
  readonly #layout: () => BoardLayout;
  readonly #whole: () => boolean;

  constructor(layout: () => BoardLayout, whole: () => boolean) {
    this.#layout = layout;
    this.#whole = whole;
    $effect(() => {
      const { scale } = layout();
      clearTimeout(this.#rest);
      this.#rest = setTimeout(() => (this.#rested = scale), RESTS);
    });
    onDestroy(() => clearTimeout(this.#rest));
  }

  /** px to the metre. */
  readonly scale = $derived.by(() => {
    const { scale } = this.#layout();
    const rested = this.#rested;
    if (this.#whole() || rested === null) return scale;
    return rested * 2 ** Math.round(Math.log2(scale / rested));
  });

  /** Each view's place on the board, and how much larger it is shown than it is drawn. */
  readonly placed: Readonly<Partial<Record<Elevation, string>>> = $derived.by(() => {
    const { panes, scale } = this.#layout();
    const larger = scale / this.scale;
    return Object.fromEntries(
      panes.map(({ elevation, x, y }) => [
        elevation,
        `translate(${x.toFixed(2)},${y.toFixed(2)}) scale(${larger.toFixed(6)})`,
      ]),
    );
  });
}
