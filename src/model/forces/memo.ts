import { Scene } from "./scene";
import type { Craft, Surroundings } from "./types";

const scenes = new WeakMap<Craft, { around: Surroundings; scene: Scene }>();

/**
 * A scene for a craft in its surroundings. Both are immutable, so one that was made for the same two serves again
 * (the last one of each craft is kept): calls stay pure, and repeated ones are cheap.
 */
export function sceneOf(craft: Craft, around: Surroundings): Scene {
  const last = scenes.get(craft);
  if (last?.around === around) return last.scene;
  const scene = new Scene(craft, around);
  scenes.set(craft, { around, scene });
  return scene;
}
