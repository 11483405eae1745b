import { both } from "../view";
import type { View } from "../view";
import { tubSession } from "./session";

/** Still water: how it lies, how it comes up, and what the tub says of the account. */
export const float: View = {
  key: "float",
  keys: [{ keys: "u", does: "does.float.push" }],
  load: () => both(import("./Main.svelte"), import("./Side.svelte")),
  clock: (app) => tubSession(app).player,
};
