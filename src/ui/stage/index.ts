/**
 * The stage: the bait in the water at one moment of a recording, its still drawing, the recording's clock and its
 * keys. Draws plain data and knows no physics. Colours: see palette.ts for the design tokens that it reads.
 */
export { default as BaitDrawing } from "./BaitDrawing.svelte";
export { default as Stage } from "./Stage.svelte";
export { default as Transport } from "./Transport.svelte";
export { Player } from "./player.svelte";
export { sceneOf } from "./scene";
export { niceStep, ticksBetween } from "./ticks";
export { RIVAL_DASH } from "./types";
export type { Posed, Rival, Scene, StageOptions } from "./types";

/** Keys that the stage listens to itself, for a page's list of keys. */
export const STAGE_KEYS: readonly { readonly keys: string; readonly does: string }[] = [
  { keys: "+ −", does: "closer, farther" },
  { keys: "0", does: "frame the bait" },
  { keys: "9", does: "frame the water from surface to floor" },
  { keys: "8", does: "frame the line up to the rod tip" },
];
