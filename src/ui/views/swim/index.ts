import { both } from "../view";
import type { View } from "../view";
import { swimOf } from "./state.svelte";

/** On the line: the cadence of the document, from the first turn of the reel. */
export const swim: View = {
  key: "swim",
  label: "Swim",
  answers: "What does the bait do on the line through a whole retrieve?",
  keys: [
    { keys: "z", does: "fewer seconds on strip and curves, about the playhead" },
    { keys: "Shift z", does: "more seconds on strip and curves" },
  ],
  load: () => both(import("./Main.svelte"), import("./Side.svelte")),
  clock: (app) => swimOf(app).session.player,
};
