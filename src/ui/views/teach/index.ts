import { both } from "../view";
import type { View } from "../view";
import { shownIn } from "./clock.svelte";

/** Lessons: a prediction, the run, the reason, an exercise; and what a teacher needs around them. */
export const teach: View = {
  key: "teach",
  speaks: true,
  clock: (app) => shownIn(app).player,
  load: (language) =>
    both(
      import("./Main.svelte"),
      import("./Side.svelte"),
      import("../../words/teach").then(({ TEACH }) => TEACH.ready(language)),
    ),
};
