import type { View } from "../view";
import Main from "./MainLater.svelte";
import Side from "./SideLater.svelte";

/** How deep it runs in a steady tow, over everything that decides it. Loaded when it is first opened. */
export const reach: View = {
  key: "reach",
  label: "Reach",
  Main,
  Side,
};
