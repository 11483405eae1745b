import { both } from "../view";
import type { View } from "../view";

/** How deep it runs in a steady tow, over everything that decides it. */
export const reach: View = {
  key: "reach",
  speaks: true,
  load: (language) =>
    both(
      import("./Main.svelte"),
      import("./Side.svelte"),
      Promise.all([
        import("../../words/reach").then(({ REACH }) => REACH.ready(language)),
        import("../../words/file").then(({ FILE }) => FILE.ready(language)),
      ]),
    ),
};
