import { ballast } from "./ballast";
import { bib } from "./bib";
import { chamber } from "./chamber";
import { coat } from "./coat";
import { fitting } from "./fitting";
import { hanger } from "./hanger";
import { wire } from "./wire";
import type { Part, Row } from "./types";

/**
 * Every kind of part that a body may carry, by its key in the document and in `BaitSpec`, in the order of the account. The
 * types below follow from this list. The lists of other rooms must name exactly these keys to compile.
 */
export const PARTS = {
  chambers: chamber,
  ballast,
  wires: wire,
  bib,
  hangers: hanger,
  fittings: fitting,
  coats: coat,
} as const;

type Parts = typeof PARTS;
export type PartKey = keyof Parts;
/** Kinds of which a bait has a list. Of the other kinds it has one or none. */
export type ListKey = { [K in PartKey]: Parts[K]["many"] extends true ? K : never }[PartKey];

type SpecOf<P> = P extends Part<infer Spec, string, string, boolean> ? Spec : never;
/** One entry of a kind. */
export type PartSpec<K extends PartKey> = { [Key in K]: SpecOf<Parts[Key]> }[K];
/** What a bait's spec holds of each kind. */
export type PartSpecs = {
  readonly [K in PartKey]: K extends ListKey ? readonly PartSpec<K>[] : PartSpec<K> | null;
};

/** Groups of the account: the body, those of the parts, and corrections by readings. */
export type Group = "body" | Parts[PartKey]["groups"][number] | "corrections";
/** Which of the things in one entry a row stands for. */
export type PieceName = Parts[PartKey]["pieces"][number];

/** One row of the account. */
export interface Item extends Row {
  readonly group: Group;
  readonly part: PieceName;
}

/** A kind without its own types: what all kinds have in common. Its functions take only specs of their own entries. */
export type AnyPart = Part<unknown, Group, PieceName, boolean>;
const ANY: Readonly<Record<PartKey, AnyPart>> = PARTS;

export const PART_KEYS = Object.keys(PARTS) as readonly PartKey[];
/** All groups of the parts in the order of the account. */
export const PART_GROUPS: readonly Group[] = PART_KEYS.flatMap((key) => ANY[key].groups);

/** One entry of a bait's spec, with its kind. */
export interface Entry {
  readonly key: PartKey;
  readonly part: AnyPart;
  /** The entry itself: hand it to the functions of `part`. */
  readonly spec: unknown;
  readonly index: number;
  /** Its place in the document. */
  readonly path: string;
}

/** All entries of a bait in the order of the account. */
export function entriesOf(spec: PartSpecs): Entry[] {
  return PART_KEYS.flatMap((key): Entry[] => {
    const part = ANY[key];
    const held: unknown = spec[key];
    if (part.many)
      return (held as readonly unknown[]).map((one, index) => ({
        key,
        part,
        spec: one,
        index,
        path: `bait.${key}[${index}]`,
      }));
    return held === null ? [] : [{ key, part, spec: held, index: 0, path: `bait.${key}` }];
  });
}

/** The parts of a bait with each entry changed; an entry for which `change` gives null is left out. */
export function mapParts(spec: PartSpecs, change: (entry: Entry) => unknown): PartSpecs {
  const entries = entriesOf(spec);
  const changed = Object.fromEntries(
    PART_KEYS.map((key): [PartKey, unknown] => {
      const left = entries.flatMap((e) => (e.key === key ? [change(e)] : [])).filter((one) => one !== null);
      return [key, ANY[key].many ? left : (left[0] ?? null)];
    }),
  );
  return changed as unknown as PartSpecs;
}

/** The parts of a bait with other entries in the place of one. */
export function replaced(spec: PartSpecs, { key, part, index }: Entry, by: readonly unknown[]): PartSpecs {
  const held: unknown = spec[key];
  const now = part.many
    ? (held as readonly unknown[]).flatMap((one, i) => (i === index ? by : [one]))
    : (by[0] ?? null);
  return { ...spec, [key]: now };
}

/** The kind that a group of the account belongs to; null for the body and for corrections. */
export function partKeyOf(group: Group): PartKey | null {
  return PART_KEYS.find((key) => ANY[key].groups.includes(group)) ?? null;
}

/** A bait's parts with nothing in them. */
export const noParts = (): PartSpecs =>
  Object.fromEntries(PART_KEYS.map((key) => [key, ANY[key].many ? [] : null])) as unknown as PartSpecs;
