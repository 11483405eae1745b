import type { View } from "./view";
import { float } from "./float";
import { swim } from "./swim";

export type { View } from "./view";

/** Every view has the same shape; the switch in the header shows them in this order. */
export const VIEWS: readonly View[] = [float, swim];

/** The page opens on the bait at work. */
export const FIRST_VIEW = swim.key;
