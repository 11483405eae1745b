import { both } from "../view";
import type { View } from "../view";
import { shownIn } from "./clock.svelte";

/** Lessons: a prediction, the run, the reason, an exercise; and what a teacher needs around them. */
export const teach: View = {
  key: "teach",
  label: "Teach",
  answers: "Why does a bait float, sink, tip or dive, and how do I learn it or teach it?",
  clock: (app) => shownIn(app).player,
  load: () => both(import("./Main.svelte"), import("./Side.svelte")),
};
