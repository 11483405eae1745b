import type { Compiled } from "../../../../document";
import type { Statics } from "../../../../model/statics";
import { formatIn } from "../../../../units";
import { marked } from "../../../words/base";
import { REASONS } from "../../../words/reasons";
import type { Units } from "../../units";
import type { Why } from "../../why.svelte";
import { grams, millilitres } from "../figure";

export function massWhy(statics: Statics, { bait }: Compiled, units: Units): Why {
  const words = REASONS.in(units.language);
  const removed = bait.items.reduce((sum, one) => sum + one.removed, 0);
  return {
    title: words.tell("mass.title"),
    value: units.show(grams(statics.mass), "g", 2),
    meaning: words.tell("mass.meaning"),
    formula: words.tell("mass.formula"),
    inputs: [
      { name: words.tell("mass.density"), value: units.showSI(bait.bodyDensity, "g/mL", 4) },
      { name: words.tell("mass.volume"), value: units.show(millilitres(statics.bodyVolume), "mL", 3) },
      { name: words.tell("mass.removed"), value: units.show(millilitres(removed), "mL", 3) },
    ],
    source: words.tell("mass.source"),
  };
}

export function displacedWhy({ displaced, bodyVolume }: Statics, units: Units): Why {
  const words = REASONS.in(units.language);
  return {
    title: words.tell("displaced.title"),
    value: units.show(millilitres(displaced), "mL", 2),
    meaning: words.tell("displaced.meaning"),
    formula: words.tell("displaced.formula"),
    inputs: [
      { name: words.tell("bareBody"), value: units.show(millilitres(bodyVolume), "mL", 3) },
      {
        name: words.tell("displaced.outside"),
        value: units.show(millilitres(displaced - bodyVolume), "mL", 3),
      },
    ],
    source: words.tell("displaced.source"),
  };
}

export function waterWhy({ density }: Statics, { water }: Compiled, units: Units): Why {
  const words = REASONS.in(units.language);
  return {
    title: words.tell("water.title"),
    value: units.show(density, "kg/m³", 3),
    meaning: words.tell("water.meaning"),
    formula: words.tell("water.formula"),
    inputs: [
      { name: words.tell("water.temperature"), value: units.show(water.temperature, "°C", 1) },
      { name: words.tell("water.salinity"), value: units.show(water.salinity, "g/kg", 1) },
      {
        name: words.tell("water.viscosity"),
        value: marked(formatIn(water.viscosity, "mPa_s", 4), units.language),
      },
    ],
    source: words.tell("water.source", { water: words.tell("waterSource") }),
  };
}
