import type { RunEvent, EventKind, RunSummary } from "../../../model/motion";
import type { ScenarioEntry, ScenarioMove } from "../../../document";
import type { Units } from "../../state";
import type { SwimWords } from "../../words/swim";

/** Signs of what happens in a run. The sign tells kinds apart without colour. */
export const EVENTS: Readonly<Record<EventKind, { readonly sign: string; readonly warn: boolean }>> = {
  under: { sign: "▽", warn: false },
  surface: { sign: "△", warn: false },
  runs: { sign: "▸", warn: false },
  unsteady: { sign: "✕", warn: true },
  weed: { sign: "Ψ", warn: true },
  bottom: { sign: "⊥", warn: true },
  slack: { sign: "∿", warn: false },
};

/** An event in words: what, where, and how long where it lasts. */
export function eventText({ kind, depth, time, end }: RunEvent, units: Units, words: SwimWords): string {
  const told = { event: words.tell(`event.${kind}`), depth: units.show(depth, "m", 2) };
  const lasts = end - time;
  return lasts < 0.1
    ? words.tell("eventAt", told)
    : words.tell("eventFor", { ...told, time: units.show(lasts, "s", 1) });
}

/** A move as a name that fits on a strip. */
export function moveText(move: ScenarioMove, units: Units, words: SwimWords): string {
  switch (move.do) {
    case "reel":
      return words.tell("move.reel", { speed: units.show(move.speed_m_s, "m/s", 2) });
    case "twitch":
      return words.tell("move.twitch", { way: units.show(move.travel_m, "m", 2) });
    case "lift":
      return words.tell(move.height_m < 0 ? "move.lower" : "move.lift", {
        way: units.show(Math.abs(move.height_m), "m", 2),
      });
    default:
      return words.tell(`short.${move.do}`);
  }
}

/** An entry of the cadence in words: a move, or how often a block is done and what. */
export function entryText(entry: ScenarioEntry, rounds: number, units: Units, words: SwimWords): string {
  if (entry.do !== "repeat") return moveText(entry, units, words);
  const moves = entry.moves.map((move) => moveText(move, units, words)).join(", ");
  return entry.times === undefined
    ? words.tell("untilIn", { times: rounds, moves })
    : words.tell("repeated", { times: entry.times, moves });
}

/** The same as short as can be. */
export const entryShort = (entry: ScenarioEntry, rounds: number, words: SwimWords): string =>
  entry.do === "repeat" ? `${rounds}×` : words.tell(`short.${entry.do}`);

/** The depth track in a sentence. `steady`: the depth of the steady tow in words, where it is known. */
export function trackText(
  deepest: RunSummary["deepest"],
  steady: string | null,
  units: Units,
  words: SwimWords,
): string {
  if (deepest === null) return words.tell("trackNone");
  const way = {
    depth: units.show(deepest.value, "m", 2),
    way: units.show(deepest.x, "m", 1),
    time: units.show(deepest.time, "s", 1),
  };
  return steady === null ? words.tell("track", way) : words.tell("trackSteady", { ...way, steady });
}

/** The page's id of a move in the chosen block. */
export const innerId = (index: number): string => `swim-inner-${index}`;
