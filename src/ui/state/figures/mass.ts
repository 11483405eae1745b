import { FIGURES } from "../../words/figures";
import type { Units } from "../units";
import type { Worked } from "../workspace.svelte";
import { answers } from "./answers.svelte";
import { type Figure, grams, millilitres } from "./figure";

export function massFigures({ statics, compiled }: Worked, { language }: Units): readonly Figure[] {
  const words = FIGURES.in(language);
  return [
    {
      key: "mass",
      label: words.tell("label.mass"),
      value: grams(statics.mass),
      unit: "g",
      digits: 2,
      signed: false,
      words: "",
      why: (units) => answers.now?.massWhy(statics, compiled, units) ?? null,
    },
    {
      key: "displaced",
      label: words.tell("label.displaced"),
      value: millilitres(statics.displaced),
      unit: "mL",
      digits: 2,
      signed: false,
      words: "",
      why: (units) => answers.now?.displacedWhy(statics, units) ?? null,
    },
    {
      key: "water",
      label: words.tell("label.water"),
      value: statics.density,
      unit: "kg/m³",
      digits: 1,
      signed: false,
      words: "",
      why: (units) => answers.now?.waterWhy(statics, compiled, units) ?? null,
    },
  ];
}
