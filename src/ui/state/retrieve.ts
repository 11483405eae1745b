import { movesOf } from "../../document";
import type { Scenario } from "../../document";
import { toSI } from "../../units";
import { inputAt } from "./inputs";
import type { Input } from "./inputs";

/** Marks in the water and the reel's gear: keys that the document has only where somebody wants them. Pure. */

/** The speed of a document's first retrieve, m/s; 1 where it has none. Reach and Swim begin from it. */
export function retrieveSpeed(scenario: Scenario): number {
  for (const move of movesOf(scenario.cadence))
    if (move.do === "reel" && move.speed_m_s > 0) return move.speed_m_s;
  return 1;
}

/** The time (s) at which a document's first move begins: before it the bait lies still. */
export function firstMoveAt(scenario: Scenario): number {
  let time = 0;
  for (const move of movesOf(scenario.cadence)) {
    if (move.do !== "settle") return time;
    time += move.for_s;
  }
  // Nothing ever moves it: its rest is shown from the beginning.
  return 0;
}

/** The numbers of weed and strike zone, those that are there. */
export function columnInputs(scenario: Scenario): readonly Input[] {
  const { weed_m, strikeZone } = scenario.water;
  const max = scenario.water.depth_m;
  const slider = { slider: { min: 0, max, step: 0.05 } };
  return [
    ...(weed_m === undefined ? [] : [inputAt(scenario, ["water", "weed_m"], slider)]),
    ...(strikeZone === undefined
      ? []
      : [
          inputAt(scenario, ["water", "strikeZone", "from_m"], slider),
          inputAt(scenario, ["water", "strikeZone", "to_m"], slider),
        ]),
  ];
}

export function reelInputs(scenario: Scenario): readonly Input[] {
  return scenario.tackle.reel === undefined
    ? []
    : [inputAt(scenario, ["tackle", "reel", "ratio"]), inputAt(scenario, ["tackle", "reel", "spool_mm"])];
}

const tidy = (metres: number): number => Number(metres.toFixed(2));

/** The document with weed that grows up to two thirds of the water's depth, or without. */
export function withWeed({ water: { weed_m: _, ...water }, ...from }: Scenario, there: boolean): Scenario {
  return { ...from, water: there ? { ...water, weed_m: tidy((2 * water.depth_m) / 3) } : water };
}

/** The document with a strike zone in the middle third of the water, or without. */
export function withZone(
  { water: { strikeZone: _, ...water }, ...from }: Scenario,
  there: boolean,
): Scenario {
  const strikeZone = { from_m: tidy(water.depth_m / 3), to_m: tidy((2 * water.depth_m) / 3) };
  return { ...from, water: there ? { ...water, strikeZone } : water };
}

/** The document with a reel of usual size (common practice, no source), or without. */
export function withReel({ tackle: { reel: _, ...tackle }, ...from }: Scenario, there: boolean): Scenario {
  return { ...from, tackle: there ? { ...tackle, reel: { ratio: 5.2, spool_mm: 140 } } : tackle };
}

/** Line that one turn of the handle takes in, m; null where the reel is not told. */
export function lineTurn({ tackle: { reel: one } }: Scenario): number | null {
  return one === undefined ? null : toSI(one.ratio * one.spool_mm, "mm");
}
