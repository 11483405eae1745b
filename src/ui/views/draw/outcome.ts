import { fromSI } from "../../../units";
import { readScenario } from "../../../document";
import type { Scenario } from "../../../document";
import { staticsOf } from "../../../model/statics";
import { degrees } from "../../state";
import type { Units, Worked } from "../../state";

/** What a move of the whole bait would do, before it is done. */
export interface Outcome {
  readonly text: string;
  /** The bait can be made so. */
  readonly ok: boolean;
}

/** Net, mass and rest trim of the moved bait against those of now. */
export function outcomeOf(moved: Scenario, now: Worked, units: Units): Outcome {
  const read = readScenario(moved);
  if (!read.ok) return { text: `It cannot be made so: ${read.problems[0]?.allowed ?? ""}.`, ok: false };
  const { bait, around } = read.compiled;
  const next = staticsOf(bait, around.density);
  const was = now.statics;
  const net = units.show(fromSI(next.netBuoyancy - was.netBuoyancy, "g"), "g", 3, true);
  const mass = units.show(fromSI(next.mass - was.mass, "g"), "g", 3, true);
  const trim =
    next.rest.pitch === null || was.rest.pitch === null
      ? ""
      : `, rest trim ${units.show(degrees(next.rest.pitch - was.rest.pitch), "°", 2, true)}`;
  return { text: `Net ${net}, mass ${mass}${trim}.`, ok: true };
}
