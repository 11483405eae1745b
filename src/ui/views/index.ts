import type { View } from "./view";
import { swim } from "./swim";
import { tub } from "./tub";

export type { View } from "./view";

/** Every view has the same shape; the switch in the header shows them in this order. */
export const VIEWS: readonly View[] = [tub, swim];

/** The page opens on the bait at work. */
export const FIRST_VIEW = swim.key;
