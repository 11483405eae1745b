import type { View } from "../view";
import Main from "./MainLater.svelte";
import Side from "./SideLater.svelte";

/** Still water: how it lies, how it comes up, and what the tub says of the account. Loaded when it is first opened. */
export const float: View = {
  key: "float",
  label: "Float",
  keys: [{ keys: "u", does: "in ‘Float’: push the bait under and let it go" }],
  Main,
  Side,
};
