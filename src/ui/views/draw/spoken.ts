import { pointsOf } from "../../../document";
import type { Units } from "../../state";
import type { Language } from "../../words/base";
import { DRAW } from "../../words/draw";
import type { DrawWords } from "../../words/draw";
import { FILE } from "../../words/file";
import { nameOf } from "./parts.svelte";
import type { Board } from "./state.svelte";

/** What is chosen on the board, in words: read out, and shown under the drawing. */
export function spokenOf(board: Board, units: Units, language: Language): string {
  const mm = (value: number): string => units.show(value, "mm", 1);
  const words = DRAW.in(language);
  switch (board.job) {
    case "whole":
    case "trace":
      return "";
    case "section":
      return sectionWords(board, mm, words);
    case "parts": {
      const part = board.parts.held;
      if (part === null) return noHandle(board, language);
      const place = { station: mm(part.at[0]), height: mm(part.at[1]) };
      if (part.moves === null) return words.tell("spoken.tie", place);
      const below = FILE.in(language);
      const said = words.tell("spoken.part", {
        part: below.of(part.name),
        handle: below.of(part.moves),
        ...place,
      });
      const { bib } = board.shown.bait;
      if (part.part.key !== "bib" || bib === undefined) return said;
      return words.tell("spoken.bib", {
        bib: said,
        angle: units.show(bib.angle_deg, "°", 1),
        other: units.show(90 - bib.angle_deg, "°", 1),
        long: mm(bib.length_mm),
      });
    }
    case "outline":
      return pointWords(board, mm, words);
  }
}

/** A part that has no place on the drawing, as a coat, is chosen in the list. */
function noHandle({ parts: { at, entry } }: Board, language: Language): string {
  const words = DRAW.in(language);
  if (at?.key === "body") return words.tell("spoken.byNumber", { part: words.tell("part.body") });
  if (entry === null) return words.tell("spoken.noPart");
  return words.tell("spoken.byNumber", { part: FILE.in(language).of(nameOf(entry)) });
}

function sectionWords(board: Board, mm: (value: number) => string, words: DrawWords): string {
  const { sectionGrip: grip } = board;
  const station = mm(board.station);
  if (grip === "station") return words.tell("spoken.section", { station });
  const what = words.tell(`section.${grip}`);
  const value = board.valueAt(grip, board.station);
  if (value === null) return words.tell("spoken.noValue", { what, station });
  const shown = grip === "widest" ? mm(value) : words.number(value, 2);
  return words.tell("spoken.value", { what, station, value: shown });
}

function pointWords(board: Board, mm: (value: number) => string, words: DrawWords): string {
  const { groups, count } = board;
  const [first] = board.held;
  const points = pointsOf(board.shown.bait, board.curve);
  const curve = words.tell(`curve.${board.curve}`);
  if (count === 0) return words.tell("spoken.noPoint", { curve });
  if (count > 1 || first === undefined) {
    const which = groups.map(([key, { length }]) =>
      words.tell("spoken.countOf", { count: length, curve: words.tell(`curveOf.${key}`) }),
    );
    return words.tell("spoken.points", { count, which: which.join(", ") });
  }
  const [s = 0, v = 0] = points[first] ?? [];
  return words.tell(board.curve === "halfBreadth" ? "spoken.breadth" : "spoken.height", {
    curve,
    point: first + 1,
    all: points.length,
    station: mm(s),
    value: mm(v),
  });
}
