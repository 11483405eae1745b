import type { Vec } from "../../model/base";
import {
  pickFrom,
  type Point,
  type Posed,
  posedMarks,
  type Size,
  wordsOf,
  toScreen,
  toWorld,
  type View,
} from "../../drawing";

/** How near a centre is picked, px. */
const CENTRE = 9;

/** What of the bait lies at a place on the screen, or within so many px of it; null where nothing does. */
export function whatAt(
  { scene, snapshot }: Posed,
  xray: boolean,
  view: View,
  size: Size,
  p: Point,
  within: number,
): string | null {
  const near = (q: Vec): boolean => {
    const c = toScreen(view, size, q);
    return Math.hypot(c.x - p.x, c.y - p.y) < CENTRE;
  };
  if (near(snapshot.G)) return "G";
  if (near(snapshot.B)) return "B";
  const world = toWorld(view, size, p);
  return pickFrom(
    posedMarks(scene, snapshot, xray),
    { x: world.x - snapshot.nose.x, z: world.z - snapshot.nose.z },
    within / view.scale,
  );
}

const CENTRES: Readonly<Record<string, string>> = { G: "centre of gravity G", B: "centre of buoyancy B" };

/** What lies under the pointer, in plain words. */
export const pickedWords = (what: string): string => CENTRES[what] ?? wordsOf(what);
