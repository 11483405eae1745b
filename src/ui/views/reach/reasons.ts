import type { Reason } from "../../../model/tow";
import type { ReachCell } from "../../../runner";
import { FILE } from "../../words/file";
import type { ReachWords } from "../../words/reach";

/** How what does not run is hatched on a map: each reason its own lines and its own letter. */
export interface Hatch {
  readonly letter: string;
  /** Angle of the lines, degrees, and their distance, px. */
  readonly angle: number;
  readonly gap: number;
  readonly crossed: boolean;
}

const HATCHES: Readonly<Record<Reason, Hatch>> = {
  "turns over": { letter: "O", angle: 90, gap: 7, crossed: true },
  "nose lifts": { letter: "N", angle: -45, gap: 5, crossed: false },
  "tail sinks": { letter: "T", angle: 45, gap: 5, crossed: false },
  "bib stalls": { letter: "S", angle: -45, gap: 8, crossed: false },
  "too little downforce at this speed": { letter: "D", angle: 0, gap: 6, crossed: false },
  "cannot get under": { letter: "U", angle: 90, gap: 6, crossed: false },
};

/** Stand in a reason's place: of a design that the model refuses, and where no reason is given. */
const UNBUILT = "unbuilt";
const NONE = "none";

/** Why something does not run, by the name that all of one reason share. */
export const reasonOf = ({ built, why }: Pick<ReachCell, "built" | "why">): string =>
  built ? (why ?? NONE) : UNBUILT;

/** A reason in words. */
export const reasonText = (reason: string, words: ReachWords): string =>
  reason === UNBUILT
    ? words.tell("unbuilt")
    : reason === NONE
      ? words.tell("doesNotRun")
      : FILE.in(words.language).of(reason);

const OTHER: Hatch = { letter: "X", angle: 45, gap: 6, crossed: true };

export const hatchOf = (reason: string): Hatch =>
  (HATCHES as Readonly<Partial<Record<string, Hatch>>>)[reason] ?? OTHER;

/** A key that can stand in a document's id. */
export const keyOf = (why: string): string => why.replaceAll(/[^a-z]+/gi, "-");

/** A stretch of a curve that does not run, for one reason. */
interface Strip {
  readonly from: number;
  to: number;
  readonly why: string;
}

/** The stretches of a curve that do not run, from half-way to the point before to half-way to the next. */
export function stripsOf(values: readonly number[], cells: readonly ReachCell[]): readonly Readonly<Strip>[] {
  const found: Strip[] = [];
  cells.forEach((cell, i) => {
    if (cell.runs) return;
    const why = reasonOf(cell);
    const half = (k: number): number => ((values[i] ?? 0) + (values[k] ?? values[i] ?? 0)) / 2;
    const last = found.at(-1);
    if (last !== undefined && last.why === why && last.to >= half(i - 1) - 1e-9) last.to = half(i + 1);
    else found.push({ from: half(i - 1), to: half(i + 1), why });
  });
  return found;
}
