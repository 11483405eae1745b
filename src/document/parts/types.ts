import type { z } from "zod";
import type { PartKey, PartSpec, PieceName } from "../../model/parts";
import type { Problem } from "../problem";
import type { Stage } from "../schema-bench";
import type { Drawn } from "./drawn";

/** A value of the file as the program holds it: never changed in place. */
export type Frozen<T> = T extends object ? { readonly [K in keyof T]: Frozen<T[K]> } : T;

/** What an entry's schema reads. */
export type Read<Schema extends z.ZodType> = Frozen<z.output<Schema>>;

/** How a copy of a bait is stretched: each function takes and gives a number of the file, mm. */
export interface Stretch {
  /** A station along the bait, and a height above the datum line. */
  station(s: number): number;
  height(z: number): number;
  /** Sizes up and across. */
  tall(size: number): number;
  wide(size: number): number;
}

export const stretchPoint = (by: Stretch, [station, height]: readonly [number, number]): [number, number] => [
  by.station(station),
  by.height(height),
];

/** One number that a maker turns at the bench, below its entry. */
export interface Turned {
  readonly path: readonly (string | number)[];
  /** What its slider covers: the range of the field, the bait's length, or the heights of its edges. */
  readonly slider: "field" | "along" | "up";
}

/** How one kind of part stands in the file, and in the words of the account. `Key` is its key in the bait. */
export interface PartFile<Key extends PartKey, Entry, Field extends z.ZodType> {
  /** The key's whole value: a list of entries, or one entry that may be left out. */
  readonly field: Field;
  /** One entry in SI and in the body frame. */
  compile(entry: Entry): PartSpec<Key>;
  /** What no single field knows of itself. Runs after the schema, so types and ranges are right already. */
  rules?(entry: Entry, path: string): Problem[];
  /** What needs a material or a density: its place below the entry ("" for the entry itself), and the thing. */
  dense?(entry: Entry): readonly (readonly [below: string, thing: object])[];
  /** When one of its things comes onto the bait where the file does not say it (common practice, no source). */
  usualStage(entry: Entry, piece: PieceName): Stage;
  /** Things of an entry whose stage the file cannot change. */
  readonly fixedStage?: readonly PieceName[];
  /** The entry in a stretched copy of the bait. */
  stretch(entry: Entry, by: Stretch): Entry;
  /** How a maker puts it onto the drawing. */
  readonly board: Drawn<Entry>;
  /** The section of live inputs; null: none of its numbers is turned at the bench. */
  readonly section: { readonly key: string; readonly title: string } | null;
  turned(entry: Entry): readonly Turned[];
  /** The mass that the section shows (g), or the words that it shows. */
  gist(entry: Entry): number | string;
  /** How its rows count in the account, one sentence for each of its groups. */
  readonly counts: string | readonly string[];
}
