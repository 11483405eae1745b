import type { Band, Statics } from "../../../../model/statics";
import { floats, SUSPENDS_WITHIN_G } from "../../../../runner";
import { fromSI } from "../../../../units";
import { FIGURES } from "../../../words/figures";
import { FILE } from "../../../words/file";
import { REASONS } from "../../../words/reasons";
import type { Units } from "../../units";
import type { Why } from "../../why.svelte";
import { grams, millilitres } from "../figure";

export function netWhy(statics: Statics, units: Units): Why {
  const words = REASONS.in(units.language);
  const file = FILE.in(units.language);
  const net = grams(statics.netBuoyancy);
  const verdict = FIGURES.in(units.language).tell(`word.${floats(net)}`);
  return {
    title: words.tell("net.title"),
    value: `${units.show(net, "g", 2, true)} · ${verdict}`,
    meaning: words.tell("net.meaning", { within: units.show(SUSPENDS_WITHIN_G, "g", 2) }),
    formula: words.tell("net.formula"),
    inputs: [
      { name: words.tell("net.density"), value: units.show(statics.density, "kg/m³", 2) },
      { name: words.tell("net.displaced"), value: units.show(millilitres(statics.displaced), "mL", 3) },
      { name: words.tell("net.mass"), value: units.show(grams(statics.mass), "g", 3) },
    ],
    table: {
      head: [
        words.tell("net.item"),
        words.tell("net.headMass", { unit: units.unit("g") }),
        words.tell("net.headDisplaced", { unit: units.unit("mL") }),
        words.tell("net.headNet", { unit: units.unit("g") }),
      ],
      rows: statics.account.map((row) => [
        file.of(row.item),
        units.bare(grams(row.mass), "g", 3),
        units.bare(millilitres(row.displaced), "mL", 3),
        units.bare(grams(row.net), "g", 3, true),
      ]),
      foot: [
        words.tell("net.together"),
        units.bare(grams(statics.mass), "g", 3),
        units.bare(millilitres(statics.displaced), "mL", 3),
        units.bare(net, "g", 3, true),
      ],
    },
    source: words.tell("net.source", { water: words.tell("waterSource") }),
    note: words.tell("net.note"),
  };
}

/** `band` is null while it is being worked out. */
export function chanceWhy(statics: Statics, band: Band | null, units: Units): Why {
  const words = REASONS.in(units.language);
  const file = FILE.in(units.language);
  return {
    title: words.tell("chance.title"),
    value:
      band === null ? words.tell("pending") : units.show(fromSI(band.chanceOfSinking, "percent"), "%", 1),
    meaning: words.tell("chance.meaning"),
    formula: words.tell("chance.formula"),
    inputs: [
      {
        name: words.tell("chance.calculated"),
        value: units.show(grams(statics.netBuoyancy), "g", 3, true),
      },
      ...(band === null
        ? []
        : [
            {
              name: words.tell("chance.most"),
              value: words.tell("range", {
                low: units.bare(grams(band.netBuoyancy[0]), "g", 2, true),
                high: units.show(grams(band.netBuoyancy[1]), "g", 2, true),
              }),
            },
            { name: words.tell("chance.samples"), value: String(band.samples) },
            ...band.contributions.slice(0, 4).map((one) => ({
              name: words.tell("chance.from", { input: file.of(one.input) }),
              value: `± ${units.show(grams(one.netBuoyancy), "g", 3)}`,
            })),
          ]),
    ],
    source: words.tell("chance.source"),
    note: words.tell("chance.note"),
  };
}
