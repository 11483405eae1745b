import type { ResolvedTarget } from "../../model/bench";
import { fromSI } from "../../units";
import { FIGURES } from "../words/figures";
import type { Units } from "./units";
import type { Worked } from "./workspace.svelte";

/** One thing that the target asks for, and how the bait as it is stands to it. */
export interface Against {
  readonly key: "net" | "rest";
  readonly met: boolean;
  readonly text: string;
}

/** How the bait stands to its target, a sentence for each thing wanted; empty: there is no target. `slow`: grams of a wanted rise. */
export function againstTarget(
  { scenario, statics }: Pick<Worked, "scenario" | "statics">,
  slow: ResolvedTarget | null,
  units: Units,
): readonly Against[] {
  const { target } = scenario;
  if (target === undefined) return [];
  const words = FIGURES.in(units.language);
  // While the grams of a rise are worked out, those of when it was set stand in.
  const risen = target.netFrom === "rise" ? (slow?.net ?? null) : null;
  const wanted = risen === null ? target.net_g : fromSI(risen.value, "g");
  const within = risen === null ? target.netTolerance_g : fromSI(risen.tolerance, "g");
  const off = fromSI(statics.netBuoyancy, "g") - wanted;
  const goal = `${units.show(wanted, "g", 2, true)} ± ${units.show(within, "g", 2)}`;
  const met = Math.abs(off) <= within;
  const net: Against = {
    key: "net",
    met,
    text: met
      ? words.tell("target.met", { goal })
      : words.tell(off > 0 ? "target.light" : "target.heavy", {
          by: units.show(Math.abs(off), "g", 2),
          goal,
        }),
  };
  const { pitch } = statics.rest;
  if (target.trim_deg === undefined || pitch === null) return [net];
  const slack = target.trimTolerance_deg ?? 3;
  const turned = fromSI(pitch, "deg") - target.trim_deg;
  const rests = `${units.show(target.trim_deg, "°", 1, true)} ± ${units.show(slack, "°", 1)}`;
  const level = Math.abs(turned) <= slack;
  return [
    net,
    {
      key: "rest",
      met: level,
      text: level
        ? words.tell("target.rests", { goal: rests })
        : words.tell(turned > 0 ? "target.tailDown" : "target.noseDown", {
            by: units.show(Math.abs(turned), "°", 1),
            goal: rests,
          }),
    },
  ];
}
