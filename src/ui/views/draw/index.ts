import { both } from "../view";
import type { View } from "../view";

/** The drawing board: the bait's outline, sections and parts, drawn, typed, added and removed. */
export const draw: View = {
  key: "draw",
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
  load: () => both(import("./Main.svelte"), import("./Side.svelte")),
};
