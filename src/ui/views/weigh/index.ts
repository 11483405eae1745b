import type { View } from "../view";
import Main from "./MainLater.svelte";
import Side from "./SideLater.svelte";

/** The bench: scale, box and ballast, from the blank to the finished bait. Loaded when it is first opened. */
export const weigh: View = {
  key: "weigh",
  label: "Weigh",
  Main,
  Side,
};
