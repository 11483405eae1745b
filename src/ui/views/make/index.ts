import { both } from "../view";
import type { View } from "../view";

/** From the screen to the bench: what can be printed and cut. */
export const make: View = {
  key: "make",
  label: "Make",
  answers: "What has to be printed, drilled and cut to make this bait?",
  load: () => both(import("./Main.svelte"), import("./Side.svelte")),
};
