import type { View } from "./view";
import { draw } from "./draw";
import { float } from "./float";
import { make } from "./make";
import { reach } from "./reach";
import { swim } from "./swim";
import { teach } from "./teach";
import { weigh } from "./weigh";

export type { View, ViewParts } from "./view";

/** Every view has the same shape; the switch in the header shows them in this order. */
export const VIEWS: readonly View[] = [draw, weigh, float, swim, reach, make, teach];

/** The page opens on the bait at work. */
export const FIRST_VIEW = swim.key;
