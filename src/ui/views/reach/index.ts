import { both } from "../view";
import type { View } from "../view";

/** How deep it runs in a steady tow, over everything that decides it. */
export const reach: View = {
  key: "reach",
  load: () => both(import("./Main.svelte"), import("./Side.svelte")),
};
