import type { Statics } from "../../../../model/statics";
import type { TerminalRise } from "../../../../model/tow";
import { fromSI } from "../../../../units";
import { FILE } from "../../../words/file";
import { REASONS } from "../../../words/reasons";
import type { Units } from "../../units";
import type { Why } from "../../why.svelte";
import { degrees, grams, secondsOf, WAY } from "../figure";

/** `rise` is null while it is being worked out. */
export function riseWhy({ netBuoyancy }: Statics, rise: TerminalRise | null, units: Units): Why {
  const words = REASONS.in(units.language);
  const speed = rise === null ? null : fromSI(rise.speed, "mm_s");
  const seconds = rise === null ? null : secondsOf(rise);
  return {
    title: words.tell("rise.title"),
    value:
      speed === null
        ? words.tell("pending")
        : words.tell(speed >= 0 ? "rise.rises" : "rise.sinks", {
            speed: units.show(Math.abs(speed), "mm/s", 0),
          }),
    meaning: words.tell("rise.meaning"),
    formula: words.tell("rise.formula"),
    inputs: [
      { name: words.tell("netBuoyancy"), value: units.show(grams(netBuoyancy), "g", 3, true) },
      ...(rise === null
        ? []
        : [
            { name: words.tell("rise.attitude"), value: units.show(degrees(rise.pitch), "°", 1, true) },
            { name: words.tell("rise.drift"), value: units.showSI(rise.drift, "mm/s", 0, true) },
          ]),
      ...(seconds === null
        ? []
        : [
            {
              name: words.tell("rise.seconds", { way: units.show(WAY, "mm", 0) }),
              value: units.show(seconds, "s", 1),
            },
          ]),
    ],
    source: words.tell("rise.source"),
    note:
      rise !== null && !rise.steady
        ? words.tell("rise.unsteady", {
            why: rise.why === null ? words.tell("rise.changing") : FILE.in(units.language).of(rise.why),
          })
        : words.tell("rise.note"),
  };
}
