import type { App } from "../../state";
import { DRAW } from "../../words/draw";
import { FILE } from "../../words/file";
import type { FormEditor } from "../parts/form";
import { boardOf } from "./state.svelte";

/** Forms that write through the drawing board: what is refused there waits to be mended. */
export function boardEditor(the: App): FormEditor {
  const board = boardOf(the);
  return {
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
      if (trouble?.path !== path) return null;
      const { units } = the;
      const { language } = the.prefs;
      const below = FILE.in(language);
      return DRAW.in(language).tell("notTaken", {
        allowed: units.told(below.of(trouble.allowed)),
        remedy: units.told(below.of(trouble.remedy)),
      });
    },
  };
}
