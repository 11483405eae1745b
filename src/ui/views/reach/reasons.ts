/** How what does not run is hatched on a map: each reason its own lines and its own letter. */
export interface Hatch {
  readonly letter: string;
  /** Angle of the lines, degrees, and their distance, px. */
  readonly angle: number;
  readonly gap: number;
  readonly crossed: boolean;
}

const HATCHES: Readonly<Record<string, Hatch>> = {
  "turns over": { letter: "O", angle: 90, gap: 7, crossed: true },
  "nose lifts": { letter: "N", angle: -45, gap: 5, crossed: false },
  "tail sinks": { letter: "T", angle: 45, gap: 5, crossed: false },
  "bib stalls": { letter: "S", angle: -45, gap: 8, crossed: false },
  "too little downforce at this speed": { letter: "D", angle: 0, gap: 6, crossed: false },
  "cannot get under": { letter: "U", angle: 90, gap: 6, crossed: false },
};

/** Said of a design that the model refuses. */
export const UNBUILT = "cannot be built";

const OTHER: Hatch = { letter: "X", angle: 45, gap: 6, crossed: true };

export const hatchOf = (why: string): Hatch => HATCHES[why] ?? OTHER;

/** A key that can stand in a document's id. */
export const keyOf = (why: string): string => why.replaceAll(/[^a-z]+/gi, "-");
