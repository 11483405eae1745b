/**
 * The stage: the bait in the water at one moment of a recording, its still drawing, the recording's clock and its
 * keys. It draws what src/drawing makes, and knows no physics.
 */
import type { KeyHelp } from "../words/windows";

export { afterPaint } from "./after-paint";
export { default as BaitDrawing } from "./BaitDrawing.svelte";
export { default as Stage } from "./Stage.svelte";
export { default as Transport } from "./Transport.svelte";
export { default as Marks } from "./Marks.svelte";
export { sameValues, steady } from "./steady";
export { readPalette, watchPalette } from "./colours";
export { offering, offerOf } from "./offers";
export type { Offer } from "./offers";
export { Player } from "./player.svelte";
export type { StageOptions } from "./types";

/** Keys that the stage listens to itself, for a page's list of keys. */
export const STAGE_KEYS: readonly { readonly keys: string; readonly does: KeyHelp }[] = [
  { keys: "+ −", does: "does.stage.zoom" },
  { keys: "0", does: "does.stage.bait" },
  { keys: "9", does: "does.stage.water" },
  { keys: "8", does: "does.stage.line" },
];
