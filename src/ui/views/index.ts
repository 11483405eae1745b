import type { View } from "./view";
import { float } from "./float";
import { reach } from "./reach";
import { swim } from "./swim";
import { weigh } from "./weigh";

export type { View } from "./view";

/** Every view has the same shape; the switch in the header shows them in this order. */
export const VIEWS: readonly View[] = [weigh, float, swim, reach];

/** The page opens on the bait at work. */
export const FIRST_VIEW = swim.key;
