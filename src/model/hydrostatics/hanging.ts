import { pieceVolume } from "./going-under";

/** Centre of mass below the eye as a share of the length: bends and points are heavier than shank and ring. From memory. */
export const HOOK_CENTRE = 0.6;

/**
 * A hook's metal counts as spread evenly over this share of its length to both sides of its centre. So it begins a fifth of
 * the length below the eye and reaches to the bends, a whole length below the eye.
 */
export const HOOK_HALF = 1 - HOOK_CENTRE;

/** Share under water (0–1) of a hook of a length whose centre lies `depth` below the surface: it goes under by its length. */
export const hookUnder = (depth: number, length: number): number => pieceVolume(1, depth, HOOK_HALF * length);
