import type { WeighState } from "./state.svelte";

/** Lights the part in the picture whose row is pointed at or holds the focus: rows name it by `data-what`. */
export const lights =
  (weigh: WeighState) =>
  (rows: HTMLElement): (() => void) => {
    let turn = 0;
    const light = ({ target }: Event): void => {
      turn++;
      const row = target instanceof Element ? target.closest<HTMLElement>("[data-what]") : null;
      weigh.lit = row?.dataset["what"] ?? null;
    };
    // A row that goes while it holds the focus says so in the midst of the page's own update: the light goes out just after.
    const dark = (): void => {
      const own = ++turn;
      queueMicrotask(() => {
        if (own === turn) weigh.lit = null;
      });
    };
    rows.addEventListener("pointerover", light);
    rows.addEventListener("focusin", light);
    rows.addEventListener("pointerleave", dark);
    rows.addEventListener("focusout", dark);
    return () => {
      rows.removeEventListener("pointerover", light);
      rows.removeEventListener("focusin", light);
      rows.removeEventListener("pointerleave", dark);
      rows.removeEventListener("focusout", dark);
      dark();
    };
  };
