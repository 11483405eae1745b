import type { Floating, Statics } from "../../../../model/statics";
import { REASONS } from "../../../words/reasons";
import type { Units } from "../../units";
import type { Why } from "../../why.svelte";
import { attitudeWords, degrees, grams, millilitres, millimetres, rollWords } from "../figure";

export function trimWhy({ mass }: Statics, floating: Floating, units: Units): Why {
  const words = REASONS.in(units.language);
  const trim = degrees(floating.pitch);
  return {
    title: words.tell("trim.title"),
    value: `${units.show(trim, "°", 1, true)} · ${attitudeWords(trim, units.language)}`,
    meaning: words.tell("trim.meaning"),
    formula: words.tell("trim.formula"),
    inputs: [
      { name: words.tell("trim.immersed"), value: units.show(millilitres(floating.volume), "mL", 3) },
      { name: words.tell("trim.mass"), value: units.show(grams(mass), "g", 3) },
      { name: words.tell("trim.draft"), value: units.show(millimetres(floating.draft), "mm", 1) },
      ...floating.others.map((other, i) => ({
        name: words.tell("trim.other", { number: i + 1 }),
        value: units.show(degrees(other.pitch), "°", 1, true),
      })),
    ],
    source: words.tell("trim.source", { book: words.tell("hydrostatics") }),
    ...(floating.GM <= 0 ? { note: words.tell("trim.over") } : {}),
  };
}

export function draftWhy(floating: Floating, units: Units): Why {
  const words = REASONS.in(units.language);
  return {
    title: words.tell("draft.title"),
    value: units.show(millimetres(floating.draft), "mm", 1),
    meaning: words.tell("draft.meaning"),
    formula: words.tell("draft.formula"),
    inputs: [
      { name: words.tell("draft.trim"), value: units.show(degrees(floating.pitch), "°", 1, true) },
      { name: words.tell("draft.share"), value: `${words.number(100 * floating.immersedFraction, 1)} %` },
    ],
    source: words.tell("hydrostatics"),
  };
}

export function GMWhy(floating: Floating, units: Units): Why {
  const words = REASONS.in(units.language);
  const GM = millimetres(floating.GM);
  const ratio = millimetres(floating.waterplaneIT / floating.volume);
  return {
    title: words.tell("GM.title"),
    value: `${units.show(GM, "mm", 2, true)} · ${rollWords(floating, units)}`,
    meaning: words.tell("GM.meaning"),
    formula: "GM = (Z_B − Z_G) + I_T / V",
    inputs: [
      { name: words.tell("GM.waterline"), value: units.showSI(floating.waterplaneIT, "mm⁴", 0) },
      { name: words.tell("GM.immersed"), value: units.show(millilitres(floating.volume), "mL", 3) },
      { name: "I_T / V", value: units.show(ratio, "mm", 2) },
      { name: "Z_B − Z_G", value: units.show(GM - ratio, "mm", 2, true) },
    ],
    source: words.tell("hydrostatics"),
    note: words.tell("GM.note"),
  };
}
