import { tryCompile } from "../../document";
import type { Scenario, Tried } from "../../document";

/** So many baits stay compiled: a list asks twice for each, for its picture and for its net buoyancy. */
const MOST = 16;
const known = new Map<string, Tried>();

/** A kept bait compiled. `of` names the bait and its state: while it is the same, so is what comes of it. */
export function compiledOf(of: string, scenario: Scenario): Tried {
  const found = known.get(of);
  if (found !== undefined) return found;
  const tried = tryCompile(scenario);
  known.set(of, tried);
  const [oldest] = known.keys();
  if (known.size > MOST && oldest !== undefined) known.delete(oldest);
  return tried;
}
