import type { Shape } from "../shape";
import { entriesOf, PART_GROUPS } from "./registry";
import type { AnyPart, Entry, Group, Item, PartKey, PartSpecs } from "./registry";
import { rowOf } from "./rows";
import type { BallSide, Bodies, Sketch, Solid, Warning } from "./types";

/** Labels that are unique within the bait: "belly", "belly 2" … */
export class Labels {
  readonly #taken: Set<string>;
  constructor(taken: readonly string[] = ["body"]) {
    this.#taken = new Set(taken);
  }
  unique(wanted: string): string {
    let label = wanted;
    for (let k = 2; this.#taken.has(label); k++) label = `${wanted} ${k}`;
    this.#taken.add(label);
    return label;
  }
}

/** Refuses numbers that no part can have. `checkLayout` looks at the parts in their body. */
export function checkNumbers(spec: PartSpecs): void {
  for (const { part, spec: one, path } of entriesOf(spec)) part.check(one, path);
}

/** Refuses what cannot be built into this body, and lists what is odd but possible. */
export const checkLayout = (spec: PartSpecs, body: Shape): Warning[] =>
  entriesOf(spec).flatMap(({ part, spec: one, path }) => part.layout?.(one, path, body) ?? []);

/** Rows of everything but the body, in the order of the account (docs/model.md §3, the table and its exact readings). */
export function fittedItems(spec: PartSpecs, bodies: Bodies, side: BallSide): Item[] {
  const all = entriesOf(spec).flatMap((e) =>
    e.part.rows(e.spec, bodies, side).map((draft) => rowOf(draft, e.index)),
  );
  // One group after the other, each in the order of its entries.
  const rows = PART_GROUPS.flatMap((group) => all.filter((row) => row.group === group));
  const labels = new Labels();
  return rows.map((row) => ({ ...row, item: labels.unique(row.item) }));
}

/** The entry of the spec that a row stands for; null for the body and for corrections. */
export function entryFinder(spec: PartSpecs): (item: Pick<Item, "group" | "index">) => Entry | null {
  const byGroup = new Map<Group, Entry[]>();
  for (const e of entriesOf(spec))
    for (const group of e.part.groups) {
      const list = byGroup.get(group);
      if (list) list.push(e);
      else byGroup.set(group, [e]);
    }
  return ({ group, index }) => byGroup.get(group)?.[index] ?? null;
}

/** Rows with the loose balls on another side: only the places of the balls are computed anew. */
export function itemsOnSide(
  items: readonly Item[],
  spec: PartSpecs,
  bodies: Bodies,
  side: BallSide,
): readonly Item[] {
  const find = entryFinder(spec);
  return items.map((item) => {
    if (item.apart !== "balls") return item;
    const entry = find(item);
    const draft = entry?.part.rows(entry.spec, bodies, side).find((d) => d.part === item.part);
    return draft ? rowOf({ ...draft, item: item.item }, item.index) : item;
  });
}

/** One entry as it looks from the side. `what` names it for a pointer: "ballast:belly", "bib". */
export interface EntrySketch extends Sketch {
  readonly what: string;
  readonly path: string;
}

/** "ballast:belly", or "bib" where a bait has but one. */
const whole = ({ part, spec }: Entry): string => (part.many ? `${part.word}:${part.name(spec)}` : part.word);

/** What a pointer finds on the thing that a row stands for; null for a correction, which has no place on the bait. */
export function whatOf(spec: PartSpecs, item: Pick<Item, "group" | "index" | "part">): string | null {
  if (item.group === "body") return "body";
  const entry = entryFinder(spec)(item);
  return entry === null ? null : (entry.part.shown?.(entry.spec, item.part) ?? whole(entry));
}

/** How all parts look from the side, in the order of the account. */
export const sketches = (spec: PartSpecs, bodies: Bodies): EntrySketch[] =>
  entriesOf(spec).map((entry) => ({
    ...entry.part.sketch(entry.spec, bodies),
    what: whole(entry),
    path: entry.path,
  }));

/** A solid with the kind and the entry that it belongs to. */
export interface KeepOut {
  readonly key: PartKey;
  readonly part: AnyPart;
  readonly index: number;
  readonly path: string;
  readonly solid: Solid;
}

/** What other things inside the body should keep clear of: overlap warnings and the ballast plan read this list. */
export const keepOuts = (spec: PartSpecs, bodies: Bodies): KeepOut[] =>
  entriesOf(spec).flatMap(({ key, part, spec: one, index, path }) =>
    (part.keepOuts?.(one, bodies) ?? []).map((solid) => ({ key, part, index, path, solid })),
  );
