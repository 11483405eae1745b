import type { Band } from "../../../model/statics";
import { FIGURES } from "../../words/figures";
import type { Units } from "../units";
import type { Worked } from "../workspace.svelte";
import { answers } from "./answers.svelte";
import { attitudeWords, degrees, type Figure, millimetres } from "./figure";

/** `band` is null while it is being worked out. */
export function restFigure({ statics }: Worked, band: Band | null, { language }: Units): Figure {
  const words = FIGURES.in(language);
  const { pitch } = statics.rest;
  return {
    key: "rest",
    label: words.tell("label.rest"),
    value: pitch === null ? null : degrees(pitch),
    unit: "°",
    digits: 1,
    signed: true,
    words: pitch === null ? words.tell("attitude.any") : attitudeWords(degrees(pitch), language),
    why: (units) => answers.now?.restWhy(statics, band, units) ?? null,
  };
}

export function leverFigure({ statics }: Worked, { language }: Units): Figure {
  return {
    key: "BG",
    label: FIGURES.in(language).tell("label.BG"),
    value: millimetres(statics.BG),
    unit: "mm",
    digits: 2,
    signed: false,
    words: "",
    why: (units) => answers.now?.leverWhy(statics, units) ?? null,
  };
}

/** Upright or not under water, as words for a bait that has no waterline. */
export function uprightUnderWater({ statics }: Worked, { language }: Units): string {
  const words = FIGURES.in(language);
  switch (statics.upright.bellyDownUnderWater) {
    case null:
      return words.tell("upright.none");
    case true:
      return words.tell("upright.down");
    case false:
      return words.tell("upright.up");
  }
}
