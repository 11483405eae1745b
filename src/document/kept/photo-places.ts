import { SET_DOWN } from "../schema-recipe";

/** Where a photo belongs: to the bait as a whole, or to what was set down of it. */
export const PHOTO_PLACES = ["bait", ...SET_DOWN] as const;
export type PhotoPlace = (typeof PHOTO_PLACES)[number];
