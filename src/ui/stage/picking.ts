import type { Vec } from "../../model/base";
import {
  pickFrom,
  type Point,
  type Posed,
  posedMarks,
  type Size,
  thingOf,
  toScreen,
  toWorld,
  type View,
} from "../../drawing";
import type { Language } from "../words/base";
import { FILE } from "../words/file";
import { STAGE } from "../words/stage";

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

/** What lies under the pointer, in plain words. */
export function pickedWords(what: string, language: Language): string {
  const words = STAGE.in(language);
  if (what === "G" || what === "B") return words.tell(`centre.${what}`);
  const { kind, name } = thingOf(what);
  const told = FILE.in(language).of(kind);
  return name === null ? told : words.tell("picked", { kind: told, name });
}
