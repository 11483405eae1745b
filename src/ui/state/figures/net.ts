import type { Band, Statics } from "../../../model/statics";
import { floats, SUSPENDS_WITHIN_G } from "../../../runner";
import type { Units } from "../units";
import type { Worked } from "../workspace.svelte";
import { fromSI } from "../../../units";
import { type Figure, grams, millilitres, WATER } from "./figure";

/** The verdict as one spoken sentence: the live region and the page's title. */
export function verdictSentence(statics: Statics, units: Units): string {
  const net = grams(statics.netBuoyancy);
  const by = units.show(Math.abs(net), "g", 2);
  switch (floats(net)) {
    case "floats":
      return `Floats by ${by}`;
    case "sinks":
      return `Sinks by ${by}`;
    case "suspends":
      return `Suspends: ${by} ${net >= 0 ? "light" : "heavy"}`;
  }
}

export function netFigure({ statics }: Worked): Figure {
  const net = grams(statics.netBuoyancy);
  const verdict = floats(net);
  return {
    key: "net",
    label: "Net buoyancy",
    value: net,
    unit: "g",
    digits: 2,
    signed: true,
    words: verdict,
    why: (units) => ({
      title: "Net buoyancy",
      value: `${units.show(net, "g", 2, true)} · ${verdict}`,
      meaning:
        "What the water carries less what the bait weighs, all of it under water. Above zero it floats. " +
        `'Suspends' is said within ±${units.show(SUSPENDS_WITHIN_G, "g", 2)}: finer than that no scale and no paint brush works.`,
      formula: "net = ρ · ΣV − Σm",
      inputs: [
        { name: "ρ, density of the water", value: units.show(statics.density, "kg/m³", 2) },
        { name: "ΣV, water displaced", value: units.show(millilitres(statics.displaced), "mL", 3) },
        { name: "Σm, mass of everything fitted", value: units.show(grams(statics.mass), "g", 3) },
      ],
      table: {
        head: [
          "item",
          `mass, ${units.unit("g")}`,
          `displaces, ${units.unit("mL")}`,
          `net, ${units.unit("g")}`,
        ],
        rows: statics.account.map((row) => [
          row.item,
          units.bare(grams(row.mass), "g", 3),
          units.bare(millilitres(row.displaced), "mL", 3),
          units.bare(grams(row.net), "g", 3, true),
        ]),
        foot: [
          "together",
          units.bare(grams(statics.mass), "g", 3),
          units.bare(millilitres(statics.displaced), "mL", 3),
          units.bare(net, "g", 3, true),
        ],
      },
      source: `Archimedes' principle. ${WATER} The account: docs/model.md §3. Words: common practice, no source.`,
      note:
        "What is inside the body counts in full; what is outside counts by what it exceeds the water it displaces. " +
        "Hooks and rings count whole.",
    }),
  };
}

const MONTE_CARLO =
  "JCGM 101:2008, propagation of distributions by Monte Carlo; default uncertainties docs/model.md §3.";

/** `band` is null while it is being worked out. */
export function chanceFigure({ statics }: Worked, band: Band | null): Figure {
  const chance = band === null ? null : fromSI(band.chanceOfSinking, "percent");
  return {
    key: "chance",
    label: "Chance of sinking",
    value: chance,
    unit: "%",
    digits: 0,
    signed: false,
    words: chance === null ? "working …" : chance > 0 && chance < 0.5 ? "but not none" : "",
    why: (units) => ({
      title: "Chance that it sinks",
      value: chance === null ? "being worked out" : units.show(chance, "%", 1),
      meaning:
        "No density, mass or length is known exactly. Drawn at random within what is not known, this share of the baits made to these numbers would sink.",
      formula: "share of samples with net < 0; the band holds 95 % of them",
      inputs: [
        { name: "net buoyancy as calculated", value: units.show(grams(statics.netBuoyancy), "g", 3, true) },
        ...(band === null
          ? []
          : [
              {
                name: "95 % of the baits",
                value: `${units.bare(grams(band.netBuoyancy[0]), "g", 2, true)} to ${units.show(grams(band.netBuoyancy[1]), "g", 2, true)}`,
              },
              { name: "samples", value: String(band.samples) },
              ...band.contributions.slice(0, 4).map((one) => ({
                name: `from ${one.input}`,
                value: `± ${units.show(grams(one.netBuoyancy), "g", 3)}`,
              })),
            ]),
      ],
      source: MONTE_CARLO,
      note: "Weigh the blank and the hooks: a bench reading narrows this more than any drawing does.",
    }),
  };
}
