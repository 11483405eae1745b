import { FORMS } from "../../model/shaping";
import type { Wish } from "./wish";

/** What a maker says of a bait before there is one. Units of the file: mm, °C, g/kg. */
export interface Answers {
  readonly name: string;
  /** What the file says of it, in the maker's language. */
  readonly notes: string;
  readonly length: number;
  readonly height: number;
  readonly breadth: number;
  /** One of `FORMS`, by its key. */
  readonly form: string;
  /** A wood of the table of materials. */
  readonly wood: string;
  readonly temperature: number;
  readonly salinity: number;
  /** What it is meant to do; null: not said. */
  readonly wish: Wish | null;
}

/** Bounds of the three sizes, mm: what the wires, the hooks and the bib of a new bait are made for. Common practice, no source. */
export const SIZES = { length: [30, 300], height: [5, 100], breadth: [4, 80] } as const;

export const formOf = (key: string): (typeof FORMS)[number] => {
  const found = FORMS.find((one) => one.key === key);
  if (found === undefined) throw new RangeError(`There is no form ‘${key}’.`);
  return found;
};

/** Height and breadth that are usual for a form of this length, mm. */
export function usualSizes(key: string, length: number): { height: number; breadth: number } {
  const { height, breadth } = formOf(key);
  const half = (mm: number): number => Math.round(mm * 2) / 2;
  return { height: half(height * length), breadth: half(breadth * length) };
}

/** Answers to begin with: invented, round numbers. */
export function usualAnswers(): Answers {
  const length = 90;
  return {
    name: "New bait",
    notes:
      "A plain lipped blank of the sizes given. Its hooks, eyes, coats and first weights are guesses: weigh yours.",
    length,
    ...usualSizes("slender", length),
    form: "slender",
    wood: "basswood",
    temperature: 15,
    salinity: 0,
    wish: null,
  };
}
