import type { TerminalRise } from "../../../model/tow";
import { fromSI } from "../../../units";
import { FIGURES } from "../../words/figures";
import type { Units } from "../units";
import type { Worked } from "../workspace.svelte";
import { answers } from "./answers.svelte";
import { attitudeOf, attitudeWords, degrees, type Figure, secondsOf, WAY } from "./figure";

function movingWords(rise: TerminalRise, { language }: Units): string {
  const words = FIGURES.in(language);
  const pitch = degrees(rise.pitch);
  const plain = attitudeWords(pitch, language);
  const attitude =
    attitudeOf(pitch) === "level"
      ? plain
      : words.tell("moving.turned", { degrees: words.number(Math.abs(pitch), 0), attitude: plain });
  const drift = fromSI(rise.drift, "mm_s");
  if (Math.abs(drift) < 1) return attitude;
  return words.tell(drift > 0 ? "moving.ahead" : "moving.back", { attitude });
}

/** `rise` is null while it is being worked out. */
export function riseFigures({ statics }: Worked, rise: TerminalRise | null, units: Units): readonly Figure[] {
  const words = FIGURES.in(units.language);
  const speed = rise === null ? null : fromSI(rise.speed, "mm_s");
  const seconds = rise === null ? null : secondsOf(rise);
  const why: Figure["why"] = (units) => answers.now?.riseWhy(statics, rise, units) ?? null;
  return [
    {
      key: "rise",
      label: words.tell(speed !== null && speed < 0 ? "label.sinks" : "label.rises"),
      value: speed === null ? null : Math.abs(speed),
      unit: "mm/s",
      digits: 0,
      signed: false,
      words:
        rise === null
          ? words.tell("working")
          : rise.steady
            ? movingWords(rise, units)
            : words.tell("unsteady"),
      why,
    },
    {
      key: "seconds",
      label: words.tell("label.seconds", {
        way: units.show(WAY, "mm", 0),
      }),
      value: seconds,
      unit: "s",
      digits: 1,
      signed: false,
      words: rise === null ? words.tell("working") : seconds === null ? words.tell("hardly") : "",
      why,
    },
  ];
}
