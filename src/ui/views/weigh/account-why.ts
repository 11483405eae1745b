import type { Units, Why } from "../../state";
import type { WeighWords } from "../../words/weigh";
import { nameOf } from "./account";
import type { Line, StageAccount } from "./account";
import { countsOf } from "../../../document";
import type { FileWords } from "./plan";

/** How a row of a group counts: each kind of part says it of its own groups. */
function reason(group: Line["group"], words: WeighWords, file: FileWords): string {
  const counts = countsOf(group);
  return counts === null ? words.tell(group === "body" ? "why.body" : "why.correction") : file.of(counts);
}

/** Behind the net of one line of the account. `density` of the water, kg/m³. */
export function whyLine(one: Line, density: number, units: Units, words: WeighWords, file: FileWords): Why {
  return {
    title: words.tell("why.title", { item: nameOf(one, words, file) }),
    value: units.showSI(one.net, "g", 3, true),
    meaning: words.tell("why.meaning", { reason: reason(one.group, words, file) }),
    formula: words.tell("why.formula"),
    inputs: [
      { name: words.tell("density"), value: units.show(density, "kg/m³", 2) },
      { name: words.tell("why.volume"), value: units.showSI(one.displaced, "mL", 4) },
      { name: words.tell("why.mass"), value: units.showSI(one.mass, "g", 4) },
      ...(one.filler > 0
        ? [{ name: words.tell("why.filler"), value: units.showSI(one.filler, "g", 4) }]
        : []),
    ],
    source: words.tell("why.source"),
  };
}

/** Behind the sum of a stage and of all before it. `density` of the water, kg/m³. */
export function whySum(
  account: readonly StageAccount[],
  one: StageAccount,
  density: number,
  units: Units,
  words: WeighWords,
  file: FileWords,
): Why {
  const at = account.indexOf(one);
  const rows = account
    .slice(0, at + 1)
    .flatMap((stage) =>
      stage.lines.map((line) => [
        nameOf(line, words, file),
        units.bareSI(line.mass, "g", 3),
        units.bareSI(line.displaced, "mL", 3),
        units.bareSI(line.net, "g", 3, true),
      ]),
    );
  return {
    title: words.tell("sum.title", { is: words.tell(`is.${one.stage}`) }),
    value: units.showSI(one.net, "g", 2, true),
    meaning: words.tell("sum.meaning"),
    formula: words.tell("sum.formula"),
    inputs: [{ name: words.tell("density"), value: units.show(density, "kg/m³", 2) }],
    table: {
      head: [
        words.tell("account.item"),
        words.tell("account.inAir", { unit: units.unit("g") }),
        words.tell("sum.displaces", { unit: units.unit("mL") }),
        words.tell("account.net", { unit: units.unit("g") }),
      ],
      rows,
      foot: [
        words.tell("sum.together"),
        units.bareSI(one.mass, "g", 3),
        units.bareSI(one.displaced, "mL", 3),
        units.bareSI(one.net, "g", 3, true),
      ],
    },
    source: words.tell("sum.source"),
  };
}
