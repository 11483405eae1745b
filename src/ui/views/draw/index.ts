import { both } from "../view";
import type { View } from "../view";

/** The drawing board: the bait's outline, sections and parts, drawn, typed, added and removed. */
export const draw: View = {
  key: "draw",
  label: "Draw",
  answers: "What does the bait look like, and what does it weigh and displace as I change it?",
  keys: [
    { keys: "arrows", does: "in ‘Draw’, on the board: move what is chosen by 0.1 mm, with Shift by 1 mm" },
    {
      keys: "Page Up, Page Down",
      does: "in ‘Draw’, on the board: the point or part before, the next one; with Shift several points",
    },
    { keys: "Ctrl A", does: "in ‘Draw’, on the board: all points of the curve" },
    { keys: "+, −, 0", does: "in ‘Draw’: closer, farther, the whole bait; the wheel does the same" },
    { keys: "Space", does: "in ‘Draw’, held: a drag moves the drawing; so does the middle button" },
    { keys: "Insert, Delete", does: "in ‘Draw’, on the board: add a point, remove what is chosen" },
    { keys: "Alt", does: "in ‘Draw’, while dragging: without snapping" },
    { keys: "Esc", does: "in ‘Draw’: take a drag back; then let go of what is chosen" },
  ],
  load: () => both(import("./Main.svelte"), import("./Side.svelte")),
};
