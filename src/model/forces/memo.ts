import { Situation } from "./situation";
import type { Craft, Surroundings } from "./types";

const situations = new WeakMap<Craft, { around: Surroundings; situation: Situation }>();

/**
 * A situation for a craft in its surroundings. Both are immutable, so a situation made for the same two is used again (the last one
 * of each craft is kept). So calls stay pure, and repeated calls are cheap.
 */
export function situationOf(craft: Craft, around: Surroundings): Situation {
  const last = situations.get(craft);
  if (last?.around === around) return last.situation;
  const situation = new Situation(craft, around);
  situations.set(craft, { around, situation });
  return situation;
}
