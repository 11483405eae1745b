import type { Worked } from "../workspace.svelte";
import { formatIn } from "../../../units";
import { type Figure, grams, millilitres, WATER } from "./figure";

export function massFigures({ statics, compiled }: Worked): readonly Figure[] {
  const mass = grams(statics.mass);
  const displaced = millilitres(statics.displaced);
  return [
    {
      key: "mass",
      label: "Mass",
      value: mass,
      unit: "g",
      digits: 2,
      signed: false,
      words: "",
      why: (units) => ({
        title: "Mass of the finished bait",
        value: units.show(mass, "g", 2),
        meaning:
          "Everything fitted, in air: body less what is cut out of it, ballast, wire, bib, hooks, rings, coats.",
        formula: "Σm = ρ_body · (V_body − ΣV_removed) + Σm_items",
        inputs: [
          { name: "body density", value: units.showSI(compiled.bait.bodyDensity, "g/mL", 4) },
          { name: "volume of the bare body", value: units.show(millilitres(statics.bodyVolume), "mL", 3) },
          {
            name: "removed from it",
            value: units.show(
              millilitres(compiled.bait.items.reduce((sum, one) => sum + one.removed, 0)),
              "mL",
              3,
            ),
          },
        ],
        source: "The account: docs/model.md §3. Densities: the table of materials, or the file's own.",
      }),
    },
    {
      key: "displaced",
      label: "Displaces",
      value: displaced,
      unit: "mL",
      digits: 2,
      signed: false,
      words: "",
      why: (units) => ({
        title: "Water displaced",
        value: units.show(displaced, "mL", 2),
        meaning:
          "The volume of all that touches the water: the body by its outline, and what stands outside it.",
        formula: "ΣV = V_body + ΣV_outside",
        inputs: [
          { name: "bare body", value: units.show(millilitres(statics.bodyVolume), "mL", 3) },
          {
            name: "outside it",
            value: units.show(millilitres(statics.displaced - statics.bodyVolume), "mL", 3),
          },
        ],
        source: "Volume by quadrature of the sections, docs/model.md §2 and §3.",
      }),
    },
    {
      key: "water",
      label: "Water",
      value: statics.density,
      unit: "kg/m³",
      digits: 1,
      signed: false,
      words: "",
      why: (units) => ({
        title: "Density of the water",
        value: units.show(statics.density, "kg/m³", 3),
        meaning:
          "Cold water is denser than warm, salt water denser than fresh: from fresh to sea water a bait gains about 2.7 % of its volume in grams.",
        formula: "ρ(S, T) at one atmosphere",
        inputs: [
          { name: "temperature", value: units.show(compiled.water.temperature, "°C", 1) },
          { name: "salinity", value: units.show(compiled.water.salinity, "g/kg", 1) },
          { name: "viscosity", value: formatIn(compiled.water.viscosity, "mPa_s", 4) },
        ],
        source: `${WATER} Viscosity: Sharqawy, Lienhard & Zubair 2010.`,
      }),
    },
  ];
}
