import type { Units, Why } from "../../state";
import type { Line, StageAccount } from "./account";
import { BARE_TEST, countsOf } from "../../../document";
import type { Moment } from "../../../document";

const WATER =
  "Water: UNESCO equation of state EOS-80, Fofonoff & Millard 1983, Unesco Tech. Pap. Mar. Sci. 44.";

const BODY =
  "The body displaces its whole outline, cut or not. Wood that is cut away for holes, chambers, wires and the slot no longer weighs: that much lift is gained.";
const CORRECTION = "What a reading in the tub says beyond the account.";

/** How a row of a group counts: each kind of part says it of its own groups. */
const reason = (group: Line["group"]): string => countsOf(group) ?? (group === "body" ? BODY : CORRECTION);

/** A stage as it is spoken of: the bait is … */
export const stageWords = (at: Moment): string =>
  at === "blank" ? "a blank" : at === BARE_TEST ? "in its first tub test, bare with hooks" : at;

/** Behind the net of one line of the account. `density` of the water, kg/m³. */
export function whyLine(one: Line, density: number, units: Units): Why {
  return {
    title: `${one.item}: net in water`,
    value: units.showSI(one.net, "g", 3, true),
    meaning: `${reason(one.group)} Above zero it lifts, below it pulls down.`,
    formula: "net = ρ · V − m",
    inputs: [
      { name: "ρ, density of the water", value: units.show(density, "kg/m³", 2) },
      { name: "V, water displaced", value: units.showSI(one.displaced, "mL", 4) },
      { name: "m, mass in air", value: units.showSI(one.mass, "g", 4) },
      ...(one.filler > 0
        ? [{ name: "of it, filler in the hole", value: units.showSI(one.filler, "g", 4) }]
        : []),
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
        units.bareSI(line.mass, "g", 3),
        units.bareSI(line.displaced, "mL", 3),
        units.bareSI(line.net, "g", 3, true),
      ]),
    );
  return {
    title: `The bait when it is ${stageWords(one.stage)}`,
    value: units.showSI(one.net, "g", 2, true),
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
        units.bareSI(one.mass, "g", 3),
        units.bareSI(one.displaced, "mL", 3),
        units.bareSI(one.net, "g", 3, true),
      ],
    },
    source: `docs/model.md §3. ${WATER} Usual order of the stages: common practice, no source.`,
  };
}
