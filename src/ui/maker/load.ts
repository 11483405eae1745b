import { compile } from "../../document";
import type { Compiled, Scenario } from "../../document";
import { staticsOf } from "../../model/statics";
import { fromSI } from "../../units";

/** What a bait's ballast weighs when the target is met, about, g: what is there, and what the target asks for beyond it. */
export function loadOf(scenario: Scenario, { bait, around }: Compiled = compile(scenario)): number {
  const { target } = scenario;
  const there = bait.spec.ballast.reduce((sum, one) => sum + one.mass, 0);
  const net = fromSI(staticsOf(bait, around.density).netBuoyancy, "g");
  return fromSI(there, "g") + (target === undefined ? 0 : net - target.net_g);
}
