import type { View } from "../view";
import Main from "./Main.svelte";
import Side from "./Side.svelte";

/** Still water: push it under and let go. */
export const tub: View = {
  key: "tub",
  label: "Tub",
  Main,
  Side,
};
