import { fromSI } from "../../../units";
import type { Figure, Worked } from "../../state";
import type { DrawWords } from "../../words/draw";

/** Volume of the bare body, with its 'why'. */
export function volumeFigure({ statics }: Worked, words: () => DrawWords): Figure {
  const value = fromSI(statics.bodyVolume, "mL");
  return {
    key: "volume",
    label: words().tell("volume.title"),
    value,
    unit: "mL",
    digits: 2,
    signed: false,
    words: "",
    why: (units) => ({
      title: words().tell("volume.title"),
      value: units.show(value, "mL", 3),
      meaning: words().tell("volume.means"),
      formula: words().tell("volume.formula"),
      inputs: [
        { name: words().tell("volume.skin"), value: units.show(fromSI(statics.skinArea, "mm2"), "mm²", 0) },
      ],
      source: words().tell("volume.source"),
    }),
  };
}
