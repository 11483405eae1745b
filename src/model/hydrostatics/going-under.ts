import { pow } from "../base";

/*
 * How one thing goes under, each rule written once, for a bait at rest and for a bait in motion. `depth` (m) is how far the
 * thing's middle lies below the surface, negative above it. Each rule has two functions:
 *  - the volume under water V(depth), m³;
 *  - its integral U = ∫V d(depth), m⁴. That is ∫depth dV over the part under water, and ρgU is its potential energy, so
 *    that lift and energy agree exactly. The centroid of the part under water lies U/V below the surface.
 */

/**
 * An even piece that reaches `half` metres above and below its middle: a straight wire, a strip of the bib, a patch of
 * skin, a hanging hook. It goes under by its length, V = whole·(depth + half)/(2·half).
 */
export const pieceVolume = (whole: number, depth: number, half: number): number =>
  depth <= -half ? 0 : depth >= half ? whole : (whole * (depth + half)) / (2 * half);

/** U of a piece, from its volume under water. */
export const pieceDepth = (volume: number, depth: number, half: number): number =>
  depth >= half ? volume * depth : (volume * (depth + half)) / 2;

/**
 * ∂U/∂half of a piece that the surface cuts, m³. When a piece turns, its half height changes. The moment of its lift about
 * its middle is −∂U/∂half·d(half)/d(pitch) times ρg.
 */
export const pieceShift = (whole: number, depth: number, half: number): number =>
  (whole * (half - depth) * (half + depth)) / (4 * half * half);

/** A sphere: a cap of height h under water has π h²(3R − h)/3, here as a share of the sphere's volume (standard geometry). */
export function sphereVolume(whole: number, depth: number, radius: number): number {
  if (depth <= -radius) return 0;
  if (depth >= radius) return whole;
  const h = depth + radius;
  return (whole / (4 * radius * radius * radius)) * h * h * (3 * radius - h);
}

/** U of a sphere. */
export function sphereDepth(whole: number, depth: number, radius: number): number {
  if (depth <= -radius) return 0;
  if (depth >= radius) return whole * depth;
  const h = depth + radius;
  return (whole / (4 * radius * radius * radius)) * h * h * h * (radius - h / 4);
}

/** Radius of a sphere of a volume (m³), m. */
export const sphereRadius = (volume: number): number => pow((3 * volume) / (4 * Math.PI), 1 / 3);
