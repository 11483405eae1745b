import type { Worked } from "../workspace.svelte";
import { attitudeWords, degrees, type Figure, grams, HYDROSTATICS, millilitres, millimetres } from "./figure";

export function floatFigures({ statics }: Worked): readonly Figure[] {
  const { floating } = statics;
  if (floating === null) return [];
  const trim = degrees(floating.pitch);
  const GM = millimetres(floating.GM);
  const over = floating.GM <= 0;
  const roll = over
    ? "rolls over; drawn held upright"
    : attitudeWords(trim) === "belly up"
      ? "stays belly up"
      : "stays upright";
  return [
    {
      key: "trim",
      label: "Afloat",
      value: trim,
      unit: "°",
      digits: 1,
      signed: true,
      words: attitudeWords(trim),
      why: (units) => ({
        title: "Trim afloat",
        value: `${units.show(trim, "°", 1, true)} · ${attitudeWords(trim)}`,
        meaning:
          "The attitude in which the bait lies on still water: as much under as carries it, B straight above G.",
        formula: "ρ · V_immersed = Σm and X_B(θ) = X_G(θ)",
        inputs: [
          { name: "immersed", value: units.show(millilitres(floating.volume), "mL", 3) },
          { name: "mass", value: units.show(grams(statics.mass), "g", 3) },
          { name: "draft", value: units.show(millimetres(floating.draft), "mm", 1) },
          ...floating.others.map((other, i) => ({
            name: `also stable (${i + 1})`,
            value: units.show(degrees(other.pitch), "°", 1, true),
          })),
        ],
        source: `${HYDROSTATICS} Hooks hang under water at their eyes.`,
        ...(over
          ? {
              note: "Drawn held from rolling: let go, this bait rolls over. The model moves in one plane and does not show it.",
            }
          : {}),
      }),
    },
    {
      key: "draft",
      label: "Draft",
      value: millimetres(floating.draft),
      unit: "mm",
      digits: 1,
      signed: false,
      words: `${(100 * floating.immersedFraction).toFixed(0)} % under`,
      why: (units) => ({
        title: "Draft",
        value: units.show(millimetres(floating.draft), "mm", 1),
        meaning: "How deep the lowest point of the bare body lies while the bait floats.",
        formula: "depth of the lowest point of the outline at the floating trim and level",
        inputs: [
          { name: "trim", value: units.show(trim, "°", 1, true) },
          {
            name: "immersed share of all it displaces",
            value: `${(100 * floating.immersedFraction).toFixed(1)} %`,
          },
        ],
        source: HYDROSTATICS,
      }),
    },
    {
      key: "GM",
      label: "GM afloat",
      value: GM,
      unit: "mm",
      digits: 2,
      signed: true,
      words: roll,
      why: (units) => ({
        title: "Metacentric height",
        value: `${units.show(GM, "mm", 2, true)} · ${roll}`,
        meaning: "Above zero the floating bait rights itself when it heels; below zero it lies over.",
        formula: "GM = (Z_B − Z_G) + I_T / V",
        inputs: [
          {
            name: "I_T, waterline's second moment across",
            value: units.showSI(floating.waterplaneIT, "mm⁴", 0),
          },
          { name: "V, immersed", value: units.show(millilitres(floating.volume), "mL", 3) },
          {
            name: "I_T / V",
            value: units.show(millimetres(floating.waterplaneIT / floating.volume), "mm", 2),
          },
          {
            name: "Z_B − Z_G",
            value: units.show(GM - millimetres(floating.waterplaneIT / floating.volume), "mm", 2, true),
          },
        ],
        source: HYDROSTATICS,
        note: "Under water the waterline is gone and only B above G keeps it upright.",
      }),
    },
  ];
}
