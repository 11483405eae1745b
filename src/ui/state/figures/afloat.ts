import { FIGURES } from "../../words/figures";
import type { Units } from "../units";
import type { Worked } from "../workspace.svelte";
import { answers } from "./answers.svelte";
import { attitudeWords, degrees, type Figure, millimetres, rollWords } from "./figure";

export function floatFigures({ statics }: Worked, units: Units): readonly Figure[] {
  const { floating } = statics;
  if (floating === null) return [];
  const words = FIGURES.in(units.language);
  return [
    {
      key: "trim",
      label: words.tell("label.trim"),
      value: degrees(floating.pitch),
      unit: "°",
      digits: 1,
      signed: true,
      words: attitudeWords(degrees(floating.pitch), units.language),
      why: (units) => answers.now?.trimWhy(statics, floating, units) ?? null,
    },
    {
      key: "draft",
      label: words.tell("label.draft"),
      value: millimetres(floating.draft),
      unit: "mm",
      digits: 1,
      signed: false,
      words: words.tell("under", { share: words.number(100 * floating.immersedFraction, 0) }),
      why: (units) => answers.now?.draftWhy(floating, units) ?? null,
    },
    {
      key: "GM",
      label: words.tell("label.GM"),
      value: millimetres(floating.GM),
      unit: "mm",
      digits: 2,
      signed: true,
      words: rollWords(floating, units),
      why: (units) => answers.now?.GMWhy(floating, units) ?? null,
    },
  ];
}
