import { both } from "../view";
import type { View } from "../view";

/** The drawing board: the bait's outline, sections and parts, drawn, typed, added and removed. */
export const draw: View = {
  key: "draw",
  speaks: true,
  keys: [
    { keys: "arrows", does: "does.draw.move" },
    {
      keys: "Page Up, Page Down",
      does: "does.draw.step",
    },
    { keys: "Ctrl A", does: "does.draw.all" },
    { keys: "+, −, 0", does: "does.draw.zoom" },
    { keys: "Space", does: "does.draw.hold" },
    { keys: "Insert, Delete", does: "does.draw.add" },
    { keys: "Alt", does: "does.draw.free" },
    { keys: "Esc", does: "does.draw.escape" },
  ],
  load: (language) =>
    both(
      import("./Main.svelte"),
      import("./Side.svelte"),
      Promise.all([
        import("../../words/draw").then(({ DRAW }) => DRAW.ready(language)),
        import("../../words/trace").then(({ TRACE }) => TRACE.ready(language)),
        import("../../words/file").then(({ FILE }) => FILE.ready(language)),
      ]),
    ),
};
