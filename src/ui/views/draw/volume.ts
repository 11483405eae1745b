import { fromSI } from "../../../units";
import type { Figure, Worked } from "../../state";

/** Volume of the bare body, with its 'why'. */
export function volumeFigure({ statics }: Worked): Figure {
  const value = fromSI(statics.bodyVolume, "mL");
  return {
    key: "volume",
    label: "Volume of the bare body",
    value,
    unit: "mL",
    digits: 2,
    signed: false,
    words: "",
    why: (units) => ({
      title: "Volume of the bare body",
      value: units.show(value, "mL", 3),
      meaning:
        "What the drawn outline and its sections hold, before anything is cut out of it or fitted to it.",
      formula: "V = ∫ A(s) ds, with A the area of the section at station s",
      inputs: [{ name: "skin", value: units.show(fromSI(statics.skinArea, "mm2"), "mm²", 0) }],
      source: "Quadrature of the sections, docs/model.md §2.",
    }),
  };
}
