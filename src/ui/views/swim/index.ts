import { both } from "../view";
import type { View } from "../view";
import { swimOf } from "./state.svelte";

/** On the line: the cadence of the document, from the first turn of the reel. */
export const swim: View = {
  key: "swim",
  keys: [
    { keys: "z", does: "does.swim.closer" },
    { keys: "Shift z", does: "does.swim.farther" },
  ],
  speaks: true,
  load: (language) =>
    both(
      import("./Main.svelte"),
      import("./Side.svelte"),
      Promise.all([
        import("../../words/swim").then(({ SWIM }) => SWIM.ready(language)),
        import("../../words/file").then(({ FILE }) => FILE.ready(language)),
      ]),
    ),
  clock: (app) => swimOf(app).session.player,
};
