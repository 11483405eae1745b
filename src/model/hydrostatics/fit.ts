import { square, type Vec } from "../base";
import type { Shape } from "../shape";

/**
 * A factor level + tilt·(x − about) on volumes along the body, and a lift of their centroids, so that the sums become the
 * body's own. Places are relative to G.
 *
 * @throws RangeError where the factor differs from 1 by more than 2 %: there are too few strips for this drawing. With
 * strips chosen by the shape this does not happen
 */
export function fit(
  strips: readonly { readonly x: number; readonly volume: number; readonly centroidZ: number }[],
  shape: Shape,
  G: Vec,
): { level: number; tilt: number; about: number; lift: number } {
  const v = strips.reduce((sum, p) => sum + p.volume, 0);
  const about = strips.reduce((sum, p) => sum + p.volume * p.x, 0) / v;
  const spread = strips.reduce((sum, p) => sum + p.volume * square(p.x - about), 0);
  const level = shape.volume / v;
  const tilt = (shape.volume * (shape.centroid.x - G.x - about)) / spread;
  if (!(Math.abs(level - 1) < 0.02 && Math.abs(tilt) * shape.length < 0.05))
    throw new RangeError(
      `${strips.length} strips miss the body's volume by a factor ${level}: too few for this drawing; leave their number to the shape`,
    );
  const moment = strips.reduce((sum, p) => sum + p.volume * (level + tilt * (p.x - about)) * p.centroidZ, 0);
  return { level, tilt, about, lift: shape.centroid.z - G.z - moment / shape.volume };
}
