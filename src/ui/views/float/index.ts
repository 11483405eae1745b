import { both } from "../view";
import type { View } from "../view";
import { tubSession } from "./session";

/** Still water: how it lies, how it comes up, and what the tub says of the account. */
export const float: View = {
  key: "float",
  label: "Float",
  answers: "How does the bait lie in still water, and how does it rise or sink when it is let go?",
  keys: [{ keys: "u", does: "in ‘Float’: push the bait under and let it go" }],
  load: () => both(import("./Main.svelte"), import("./Side.svelte")),
  clock: (app) => tubSession(app).player,
};
