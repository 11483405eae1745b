import type { FormEditor } from "../parts/form";
import type { Board } from "./state.svelte";

/** Forms that write through the drawing board: what is refused there waits to be mended. */
export const boardEditor = (board: Board): FormEditor => ({
  get shown() {
    return board.shown;
  },
  move: (id, label, write) => void board.move(id, label, write),
  finish: () => board.finish(),
  edit: (_, label, write) => void board.edit(label, write),
  back: () => void board.back(),
  /** A refusal stands at its own field; the nearest group tells of the rest. */
  refusalAt(path) {
    const trouble = board.work.tried?.problems[0];
    return trouble?.path === path ? `Not taken yet: ${trouble.allowed}. ${trouble.remedy}` : null;
  },
});
