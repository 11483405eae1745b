import type { FORCE_LEGEND } from "../../../model/forces";
import type { Material } from "../../../model/materials";
import type { Units, Why } from "../../state";
import type { Language } from "../../words/base";
import { FILE } from "../../words/file";
import { WHY } from "../../words/why";

/** What the shared components answer to 'why'. It loads with the first question. */

export const ready = (language: Language): Promise<void> => WHY.ready(language);

interface Force {
  readonly legend: Pick<(typeof FORCE_LEGEND)[number], "label"> &
    Partial<Pick<(typeof FORCE_LEGEND)[number], "formula" | "source">>;
  /** N: along the retrieve, up, and its size. */
  readonly x: number;
  readonly z: number;
  readonly size: number;
}

/** A force of the moment, or, where its legend has no formula, the sum of all. */
function force({ legend, x, z, size }: Force, units: Units, language: Language): Why {
  const words = WHY.in(language);
  const file = FILE.in(language);
  const { formula, source } = legend;
  // As at the arrows: a bait's forces in mN, so that small ones keep their figures.
  const [unit, digits] = size < 1 ? (["mN", 2] as const) : (["N", 3] as const);
  return {
    title: file.of(legend.label),
    value: units.showSI(size, unit, digits),
    meaning: words.tell(formula === undefined ? "sum.meaning" : "force.meaning"),
    formula: formula === undefined ? words.tell("sum.formula") : file.of(formula),
    inputs: [
      { name: words.tell("force.forward"), value: units.showSI(x, unit, digits, true) },
      { name: words.tell("force.up"), value: units.showSI(z, unit, digits, true) },
    ],
    source: source === undefined ? words.tell("sum.source") : file.of(source),
  };
}

function density(of: Material, units: Units, language: Language): Why {
  const words = WHY.in(language);
  const file = FILE.in(language);
  const { range, note } = of;
  return {
    title: words.tell("density", { name: file.of(of.name) }),
    value: units.showSI(of.density, "g/mL", 3),
    meaning: words.tell(of.kind === "wood" ? "density.wood" : "density.other"),
    formula: words.tell("density.table"),
    inputs:
      range === undefined
        ? []
        : [
            {
              name: words.tell("density.spread"),
              value: words.tell("to", {
                from: units.bareSI(range[0], "g/mL", 3),
                to: units.showSI(range[1], "g/mL", 3),
              }),
            },
          ],
    source: file.of(of.source),
    ...(note === undefined ? {} : { note: file.of(note) }),
  };
}

/** A number of the moment on the stage: its name, it and its time as shown. */
function moment(
  key: "depth" | "pitch" | "speed" | "line",
  value: string,
  time: string,
  language: Language,
): Why {
  const words = WHY.in(language);
  return {
    title: words.tell(`moment.${key}`),
    value,
    meaning: words.tell(`moment.${key}.meaning`),
    formula: words.tell(`moment.${key}.formula`),
    inputs: [{ name: words.tell("moment.time"), value: time }],
    source: words.tell("moment.source"),
    note: words.tell("moment.note"),
  };
}

/** Each answer by what is asked. */
export const whys = { force, density, moment };
