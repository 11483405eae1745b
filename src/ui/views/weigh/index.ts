import { both } from "../view";
import type { View } from "../view";

/** The bench: scale, box and ballast, from the blank to the finished bait. */
export const weigh: View = {
  key: "weigh",
  load: () => both(import("./Main.svelte"), import("./Side.svelte")),
};
