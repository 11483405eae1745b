import type { Statics } from "../../../model/statics";
import type { Swap } from "../../../model/bench";
import { SUSPENDS_WITHIN_G } from "../../../runner";
import type { SwapAnswer, TubAnswer } from "../../../runner";
import type { Units, Why } from "../../state";
import type { Language } from "../../words/base";
import { FILE } from "../../words/file";
import { WHY } from "../../words/why";
import type { Due } from "./due";
import type { Kind } from "./reading.svelte";
import type { SeasonLine } from "./season";

/** What this view answers to 'why'. It loads with the first question. */

export const ready = (language: Language): Promise<void> => WHY.ready(language);

/** The lever that turns the bait back when it heels. */
function heel({ BG, floating }: Statics, units: Units): Why {
  const words = WHY.in(units.language);
  return {
    title: words.tell("heel.title"),
    value: `BG ${units.showSI(BG, "mm", 2)}`,
    meaning: words.tell("heel.meaning"),
    formula: words.tell("heel.formula"),
    inputs: [
      { name: "BG", value: units.showSI(BG, "mm", 2) },
      ...(floating === null ? [] : [{ name: "GM", value: units.showSI(floating.GM, "mm", 2, true) }]),
    ],
    source: words.tell("righting.source"),
    note: words.tell("heel.note"),
  };
}

/** The moment that turns the bait to its trim; `value`: where it rests, in words. */
function trim({ mass, displaced, density }: Statics, value: string, units: Units): Why {
  const words = WHY.in(units.language);
  return {
    title: words.tell("trim.title"),
    value,
    meaning: words.tell("trim.meaning"),
    formula: words.tell("trim.formula"),
    inputs: [
      { name: "Σm", value: units.showSI(mass, "g", 3) },
      { name: "ΣV", value: units.showSI(displaced, "mL", 3) },
      { name: "ρ", value: units.show(density, "kg/m³", 2) },
    ],
    source: words.tell("righting.source"),
    note: words.tell("trim.note", { mass: units.unit("g"), length: units.unit("mm") }),
  };
}

interface SeasonTold {
  readonly lines: readonly (SeasonLine & { readonly title: string })[];
  /** What the bait does in its own water, in words. */
  readonly own: string;
  /** The season's ends as shown. */
  readonly coldest: string;
  readonly warmest: string;
  readonly statics: Pick<Statics, "displaced" | "mass">;
}

function season({ lines, own, coldest, warmest, statics }: SeasonTold, units: Units): Why {
  const words = WHY.in(units.language);
  const unit = units.unit("g");
  return {
    title: words.tell("season.title"),
    value: own,
    meaning: words.tell("season.meaning"),
    formula: words.tell("season.formula"),
    inputs: [
      { name: words.tell("season.displaced"), value: units.showSI(statics.displaced, "mL", 3) },
      { name: words.tell("season.mass"), value: units.showSI(statics.mass, "g", 3) },
      { name: words.tell("season.season"), value: words.tell("to", { from: coldest, to: warmest }) },
      { name: words.tell("season.suspends"), value: `±${units.show(SUSPENDS_WITHIN_G, "g", 2)}` },
    ],
    table: {
      head: [
        words.tell("season.water"),
        words.tell("season.salinity"),
        words.tell("season.cold", { unit }),
        words.tell("season.warm", { unit }),
      ],
      rows: lines.map((line) => [
        line.title,
        units.show(line.salinity, "g/kg", 0),
        units.bareSI(line.points[0]?.net ?? NaN, "g", 3, true),
        units.bareSI(line.points.at(-1)?.net ?? NaN, "g", 3, true),
      ]),
      foot: [],
    },
    source: words.tell("season.source"),
    note: words.tell("season.note"),
  };
}

interface DueTold {
  readonly due: Due;
  /** kg */
  readonly wanted: number | null;
  /** Water that the bait displaces in the tub, m³. */
  readonly displaced: number;
}

function due({ due: now, wanted, displaced }: DueTold, units: Units): Why {
  const words = WHY.in(units.language);
  const g = (kg: number): string => units.showSI(kg, "g", 2, true);
  return {
    title: words.tell("due.title"),
    value: now.due === null ? "–" : g(now.due),
    meaning: words.tell("due.meaning"),
    formula: words.tell("due.formula"),
    inputs: [
      { name: words.tell("due.wanted"), value: wanted === null ? "–" : g(wanted) },
      { name: words.tell("due.coats"), value: g(now.coats) },
      { name: words.tell("due.others"), value: g(now.others) },
      { name: words.tell("due.displaced"), value: units.showSI(displaced, "mL", 2) },
      { name: words.tell("due.account"), value: g(now.net) },
    ],
    source: words.tell("due.source"),
  };
}

/** What a reading in the tub says; `offset` tells how far G lies from B. */
function reading(kind: Kind, said: TubAnswer | null, offset: (x: number) => string, units: Units): Why {
  const words = WHY.in(units.language);
  const file = FILE.in(units.language);
  const g = (kg: number): string => units.showSI(kg, "g", 2, true);
  const { net, offset: place } = said?.tub ?? { net: null, offset: null };
  return {
    title: words.tell("reading.title"),
    value: net !== null ? g(net.value) : place !== null ? offset(place.value) : "–",
    meaning: words.tell("reading.meaning"),
    formula: words.tell(`reading.formula.${kind}`),
    inputs:
      said === null
        ? []
        : [
            ...(said.timed === null
              ? []
              : [
                  {
                    name: words.tell("reading.mean"),
                    value: `${units.show(said.timed.repeats.mean, "s", 2)} ± ${units.show(said.timed.repeats.deviation, "s", 2)}`,
                  },
                  {
                    name: words.tell("reading.steady"),
                    value: units.showSI(said.timed.speed.value, "mm/s", 1, true),
                  },
                  {
                    name: words.tell("reading.plain"),
                    value: units.showSI(said.timed.plain, "mm/s", 1, true),
                  },
                ]),
            { name: words.tell("reading.net"), value: g(said.tub.computed.net) },
            { name: words.tell("reading.offset"), value: offset(said.tub.computed.offset) },
            ...said.tub.sources.map((one) => ({
              name: words.tell("reading.from", { source: file.of(one.source) }),
              value:
                net === null ? units.showSI(one.deviation, "mm", 3) : units.showSI(one.deviation, "g", 3),
            })),
          ],
    source: words.tell("reading.source"),
  };
}

interface SwapTold {
  readonly swap: Swap;
  readonly answer: SwapAnswer | null;
  /** Net buoyancy wanted, g. */
  readonly wanted: number;
  /** A change, an angle and a speed in words. */
  readonly change: (one: Swap["changes"][number]) => string;
  readonly angle: (rad: number | null) => string;
  readonly speed: (rise: { readonly speed: number } | null) => string;
}

function swap({ swap: one, answer, wanted, change, angle, speed }: SwapTold, units: Units): Why {
  const words = WHY.in(units.language);
  const g = (kg: number): string => units.showSI(kg, "g", 2, true);
  return {
    title: words.tell("swap.title"),
    value: `${g(one.net)}, ${angle(one.trim)}`,
    meaning: words.tell("swap.meaning"),
    formula: words.tell("swap.formula"),
    inputs: [
      ...one.changes.map((made) => ({
        name: change(made),
        value: words.tell("swap.change", { mass: g(made.mass), net: g(made.net) }),
      })),
      { name: words.tell("swap.wanted"), value: units.show(wanted, "g", 2, true) },
      ...(answer === null
        ? []
        : [
            {
              name: words.tell("swap.without"),
              value: `${g(answer.before.net)}, ${angle(answer.before.trim)}`,
            },
            { name: words.tell("swap.netWithin"), value: units.showSI(answer.goal.netTolerance, "g", 2) },
            ...(answer.goal.trim === null
              ? []
              : [
                  {
                    name: words.tell("swap.trimWithin"),
                    value: units.showSI(answer.goal.trimTolerance, "°", 1),
                  },
                ]),
          ]),
      ...(one.rise === null ? [] : [{ name: words.tell("swap.rise"), value: speed(one.rise) }]),
      ...(answer?.goalRise === null || answer === null
        ? []
        : [{ name: words.tell("swap.goalRise"), value: speed(answer.goalRise) }]),
      { name: words.tell("swap.misfit"), value: words.number(one.misfit, 2) },
    ],
    source: words.tell("swap.source"),
    note: words.tell("swap.note"),
  };
}

/** Each answer by what is asked. */
export const whys = { heel, trim, season, due, reading, swap };
