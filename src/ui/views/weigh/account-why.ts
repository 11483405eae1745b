import type { Units, Why } from "../../state";
import type { Line, StageAccount } from "./account";
import type { Stage } from "../../../document";

const WATER =
  "Water: UNESCO equation of state EOS-80, Fofonoff & Millard 1983, Unesco Tech. Pap. Mar. Sci. 44.";

const REASONS: Readonly<Record<Line["group"], string>> = {
  body: "The body displaces its whole outline, cut or not. Wood that is cut away for holes, chambers, wires and the slot no longer weighs: that much lift is gained.",
  chambers: "A void weighs nothing; the wood it takes the place of no longer weighs.",
  balls: "Balls lie inside: they count in full.",
  ballast: "Inside it counts in full; outside by what it exceeds the water it displaces.",
  wires: "The part inside counts in full; the part outside by what it exceeds the water it displaces.",
  bib: "The part in the slot counts in full; the part outside by what it exceeds the water it displaces.",
  hangers: "Hooks and rings hang in the water: they count by what they exceed the water they displace.",
  fittings: "Inside it counts in full; outside by what it exceeds the water it displaces.",
  coats: "A coat displaces its own volume: a gram of a 1.1 g/mL film costs about a tenth of a gram of lift.",
  corrections: "What a reading in the tub says beyond the account.",
};

/** A stage as it is spoken of: the bait is … */
export const stageWords = (stage: Stage): string => (stage === "blank" ? "a blank" : stage);

/** Behind the net of one line of the account. `density` of the water, kg/m³. */
export function whyLine(one: Line, density: number, units: Units): Why {
  return {
    title: `${one.item}: net in water`,
    value: units.show(one.net * 1e3, "g", 3, true),
    meaning: `${REASONS[one.group]} Above zero it lifts, below it pulls down.`,
    formula: "net = ρ · V − m",
    inputs: [
      { name: "ρ, density of the water", value: units.show(density, "kg/m³", 2) },
      { name: "V, water displaced", value: units.show(one.displaced * 1e6, "mL", 4) },
      { name: "m, mass in air", value: units.show(one.mass * 1e3, "g", 4) },
    ],
    source: `Archimedes' principle; docs/model.md §3. ${WATER}`,
  };
}

/** Behind the sum of a stage and of all before it. `density` of the water, kg/m³. */
export function whySum(
  account: readonly StageAccount[],
  one: StageAccount,
  density: number,
  units: Units,
): Why {
  const at = account.indexOf(one);
  const rows = account
    .slice(0, at + 1)
    .flatMap((stage) =>
      stage.lines.map((line) => [
        line.item,
        units.bare(line.mass * 1e3, "g", 3),
        units.bare(line.displaced * 1e6, "mL", 3),
        units.bare(line.net * 1e3, "g", 3, true),
      ]),
    );
  return {
    title: `The bait when it is ${stageWords(one.stage)}`,
    value: units.show(one.net * 1e3, "g", 2, true),
    meaning: "Everything that is on the bait by then, wholly under water.",
    formula: "net = Σ (ρ · V − m) of this stage and all before it",
    inputs: [{ name: "ρ, density of the water", value: units.show(density, "kg/m³", 2) }],
    table: {
      head: [
        "item",
        `in air, ${units.unit("g")}`,
        `displaces, ${units.unit("mL")}`,
        `net, ${units.unit("g")}`,
      ],
      rows,
      foot: [
        "together",
        units.bare(one.mass * 1e3, "g", 3),
        units.bare(one.displaced * 1e6, "mL", 3),
        units.bare(one.net * 1e3, "g", 3, true),
      ],
    },
    source: `docs/model.md §3. ${WATER} Usual order of the stages: common practice, no source.`,
  };
}
