import { pointsOf } from "../../../document";
import type { Units } from "../../state";
import { SECTION_WORDS } from "./section";
import { CURVE_WORDS } from "./state.svelte";
import type { Board } from "./state.svelte";

/** What is chosen on the board, in words: read out, and shown under the drawing. */
export function spokenOf(board: Board, units: Units): string {
  const mm = (value: number): string => units.show(value, "mm", 1);
  switch (board.job) {
    case "whole":
    case "trace":
      return "";
    case "section":
      return sectionWords(board, mm);
    case "parts": {
      const part = board.parts.held;
      if (part === null) return board.parts.at === null ? "No part is chosen" : "";
      return `${part.words}: station ${mm(part.at[0])}, height ${mm(part.at[1])}`;
    }
    case "outline":
      return pointWords(board, mm);
  }
}

function sectionWords(board: Board, mm: (value: number) => string): string {
  const { sectionGrip: grip, station } = board;
  const at = `at station ${mm(station)}`;
  if (grip === "station") return `Section ${at}`;
  const value = board.valueAt(grip, station);
  if (value === null) return `${SECTION_WORDS[grip]} ${at}`;
  return `${SECTION_WORDS[grip]} ${at}: ${grip === "widest" ? mm(value) : value.toFixed(2)}`;
}

function pointWords(board: Board, mm: (value: number) => string): string {
  const { groups, count, curve } = board;
  const [first] = board.held;
  const points = pointsOf(board.shown.bait, curve);
  if (count === 0) return `${CURVE_WORDS[curve]}: no point is chosen`;
  if (count > 1 || first === undefined) {
    const of = groups.map(([key, which]) => `${which.length} of ${CURVE_WORDS[key].toLowerCase()}`);
    return `${count} ${count === 1 ? "point is" : "points are"} chosen: ${of.join(", ")}`;
  }
  const [s = 0, v = 0] = points[first] ?? [];
  const value = curve === "halfBreadth" ? "half-breadth" : "height";
  return `${CURVE_WORDS[curve]}, point ${first + 1} of ${points.length}: station ${mm(s)}, ${value} ${mm(v)}`;
}
