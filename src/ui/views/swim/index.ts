import type { View } from "../view";
import Main from "./Main.svelte";
import Side from "./Side.svelte";

/** On the line: the cadence of the document, from the first turn of the reel. */
export const swim: View = {
  key: "swim",
  label: "Swim",
  Main,
  Side,
};
