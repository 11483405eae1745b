import type { Band, Statics } from "../../../model/statics";
import { floats } from "../../../runner";
import { fromSI } from "../../../units";
import { FIGURES } from "../../words/figures";
import type { Units } from "../units";
import type { Worked } from "../workspace.svelte";
import { answers } from "./answers.svelte";
import { type Figure, grams } from "./figure";

/** The verdict as one spoken sentence: the live region and the page's title. */
export function verdictSentence(statics: Statics, units: Units): string {
  const net = grams(statics.netBuoyancy);
  const by = units.show(Math.abs(net), "g", 2);
  const verdict = floats(net);
  const key = verdict === "suspends" ? (net >= 0 ? "light" : "heavy") : verdict;
  return FIGURES.in(units.language).tell(`verdict.${key}`, { by });
}

export function netFigure({ statics }: Worked, { language }: Units): Figure {
  const words = FIGURES.in(language);
  const net = grams(statics.netBuoyancy);
  return {
    key: "net",
    label: words.tell("label.net"),
    value: net,
    unit: "g",
    digits: 2,
    signed: true,
    words: words.tell(`word.${floats(net)}`),
    why: (units) => answers.now?.netWhy(statics, units) ?? null,
  };
}

/** `band` is null while it is being worked out. */
export function chanceFigure({ statics }: Worked, band: Band | null, { language }: Units): Figure {
  const words = FIGURES.in(language);
  const chance = band === null ? null : fromSI(band.chanceOfSinking, "percent");
  return {
    key: "chance",
    label: words.tell("label.chance"),
    value: chance,
    unit: "%",
    digits: 0,
    signed: false,
    words: chance === null ? words.tell("working") : chance > 0 && chance < 0.5 ? words.tell("notNone") : "",
    why: (units) => answers.now?.chanceWhy(statics, band, units) ?? null,
  };
}
