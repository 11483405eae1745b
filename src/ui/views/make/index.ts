import { both } from "../view";
import type { View } from "../view";

/** From the screen to the bench: what can be printed and cut. */
export const make: View = {
  key: "make",
  speaks: true,
  load: (language) =>
    both(
      import("./Main.svelte"),
      import("./Side.svelte"),
      Promise.all([
        import("../../words/make").then(({ MAKE }) => MAKE.ready(language)),
        import("../../words/file").then(({ SHEET }) => SHEET.ready(language)),
      ]),
    ),
};
