import { both } from "../view";
import type { View } from "../view";
import { tubSession } from "./session";

/** Still water: how it lies, how it comes up, and what the tub says of the account. */
export const float: View = {
  key: "float",
  speaks: true,
  keys: [{ keys: "u", does: "does.float.push" }],
  load: (language) =>
    both(
      import("./Main.svelte"),
      import("./Side.svelte"),
      Promise.all([
        import("../../words/float").then(({ FLOAT }) => FLOAT.ready(language)),
        import("../../words/parts").then(({ partsReady }) => partsReady(language)),
      ]),
    ),
  clock: (app) => tubSession(app).player,
};
