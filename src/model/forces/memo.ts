import { Situation } from "./situation";
import type { Swimmer, Surroundings } from "./types";

const situations = new WeakMap<Swimmer, { around: Surroundings; situation: Situation }>();

/**
 * A situation for a swimmer in its surroundings. Both are immutable, so a situation made for the same two is used again (the last one
 * of each swimmer is kept). So calls stay pure, and repeated calls are cheap.
 */
export function situationOf(swimmer: Swimmer, around: Surroundings): Situation {
  const last = situations.get(swimmer);
  if (last?.around === around) return last.situation;
  const situation = new Situation(swimmer, around);
  situations.set(swimmer, { around, situation });
  return situation;
}
