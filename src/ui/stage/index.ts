/**
 * The stage: the bait in the water at one moment of a recording, its still drawing, the recording's clock and its
 * keys. It draws what src/drawing makes, and knows no physics.
 */
export { default as BaitDrawing } from "./BaitDrawing.svelte";
export { default as Stage } from "./Stage.svelte";
export { default as Transport } from "./Transport.svelte";
export { default as Marks } from "./Marks.svelte";
export { readPalette, watchPalette } from "./colours";
export { Player } from "./player.svelte";
export type { StageOptions } from "./types";

/** Keys that the stage listens to itself, for a page's list of keys. */
export const STAGE_KEYS: readonly { readonly keys: string; readonly does: string }[] = [
  { keys: "+ −", does: "closer, farther" },
  { keys: "0", does: "frame the bait" },
  { keys: "9", does: "frame the water from surface to floor" },
  { keys: "8", does: "frame the line up to the rod tip" },
];
