import type { RunEvent, EventKind } from "../../../model/motion";
import type { ScenarioEntry, ScenarioMove } from "../../../document";
import { kindLabel } from "../../state";
import type { Units } from "../../state";

/** Words and signs of what happens in a run. The sign tells kinds apart without colour. */
export const EVENTS: Readonly<
  Record<EventKind, { readonly words: string; readonly sign: string; readonly warn: boolean }>
> = {
  under: { words: "goes under", sign: "▽", warn: false },
  surface: { words: "breaks the surface", sign: "△", warn: false },
  runs: { words: "runs", sign: "▸", warn: false },
  unsteady: { words: "does not come to run", sign: "✕", warn: true },
  weed: { words: "in the weed", sign: "Ψ", warn: true },
  bottom: { words: "touches the bottom", sign: "⊥", warn: true },
  slack: { words: "line slack", sign: "∿", warn: false },
};

/** An event in words: what, where, and how long where it lasts. */
export function eventText(event: RunEvent, units: Units): string {
  const lasts = event.end - event.time;
  const place = `${units.show(event.depth, "m", 2)} deep`;
  return `${EVENTS[event.kind].words}, ${place}${lasts >= 0.1 ? `, for ${units.show(lasts, "s", 1)}` : ""}`;
}

/** A move as a name that fits on a strip. */
export function moveText(move: ScenarioMove, units: Units): string {
  switch (move.do) {
    case "reel":
      return `reel ${units.show(move.speed_m_s, "m/s", 2)}`;
    case "twitch":
      return `twitch ${units.show(move.travel_m, "m", 2)}`;
    case "lift":
      return `${move.height_m < 0 ? "lower" : "lift"} ${units.show(Math.abs(move.height_m), "m", 2)}`;
    default:
      return kindLabel(move.do).toLowerCase();
  }
}

/** An entry of the cadence in words: a move, or how often a block is done and what. */
export function entryText(entry: ScenarioEntry, rounds: number, units: Units): string {
  if (entry.do !== "repeat") return moveText(entry, units);
  return `${oftenText(entry.times, rounds)} ${entry.moves.map((move) => moveText(move, units)).join(", ")}`;
}

/** The same as short as can be. */
export const entryShort = (entry: ScenarioEntry, rounds: number): string =>
  entry.do === "repeat" ? `${rounds}×` : kindLabel(entry.do).toLowerCase();

const oftenText = (times: number | undefined, rounds: number): string =>
  times === undefined ? `until the line is in (${rounds}×)` : `${times}×`;

/** The page's id of a move in the chosen block. */
export const innerId = (index: number): string => `swim-inner-${index}`;
