import { fromSI } from "../../../units";
import { readScenario } from "../../../document";
import type { Scenario } from "../../../document";
import { staticsOf } from "../../../model/statics";
import { degrees } from "../../state";
import type { Units, Worked } from "../../state";
import type { Language } from "../../words/base";
import { DRAW } from "../../words/draw";
import { FILE } from "../../words/file";

/** What a move of the whole bait would do, before it is done. */
export interface Outcome {
  readonly text: string;
  /** The bait can be made so. */
  readonly ok: boolean;
}

/** Net, mass and rest trim of the moved bait against those of now. */
export function outcomeOf(moved: Scenario, now: Worked, units: Units, language: Language): Outcome {
  const read = readScenario(moved);
  const words = DRAW.in(language);
  if (!read.ok) {
    const why = units.told(FILE.in(language).of(read.problems[0]?.allowed ?? ""));
    return { text: words.tell("cannot", { why }), ok: false };
  }
  const { bait, around } = read.compiled;
  const next = staticsOf(bait, around.density);
  const was = now.statics;
  const net = units.show(fromSI(next.netBuoyancy - was.netBuoyancy, "g"), "g", 3, true);
  const mass = units.show(fromSI(next.mass - was.mass, "g"), "g", 3, true);
  if (next.rest.pitch === null || was.rest.pitch === null)
    return { text: words.tell("outcome", { net, mass }), ok: true };
  const trim = units.show(degrees(next.rest.pitch - was.rest.pitch), "°", 2, true);
  return { text: words.tell("outcomeTrim", { net, mass, trim }), ok: true };
}
