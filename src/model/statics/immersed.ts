import type { SurfacePlane, Vec } from "../base";
import type { Bait, BallSide } from "../bait";
import { Wettable } from "../hydrostatics";

/** Volume (m³) of everything that lies under a surface, and its centroid (body frame; null where nothing does). */
export function immersed(
  bait: Bait,
  surface: SurfacePlane,
  side: BallSide,
): { readonly volume: number; readonly B: Vec | null } {
  const { volume, x, z } = new Wettable(bait, side).under(surface);
  return { volume, B: volume > 0 ? { x: x / volume, z: z / volume } : null };
}
