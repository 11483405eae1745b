import type { Bait } from "../bait";

/** Net buoyancy of a bait in a water, kg. */
export function netOf(bait: Bait, density: number): number {
  const { mass, displaced } = bait.rigid({ end: "mid", face: "floor" });
  return density * displaced - mass;
}
