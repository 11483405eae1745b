import { both } from "../view";
import type { View } from "../view";

/** The bench: scale, box and ballast, from the blank to the finished bait. */
export const weigh: View = {
  key: "weigh",
  speaks: true,
  load: (language) =>
    both(
      import("./Main.svelte"),
      import("./Side.svelte"),
      Promise.all([
        import("../../words/weigh").then(({ WEIGH }) => WEIGH.ready(language)),
        import("../../words/file").then(({ FILE }) => FILE.ready(language)),
      ]),
    ),
};
