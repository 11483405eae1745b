import { readBox } from "../box";
import { valueAt } from "../fields";
import type { Box, BoxThing } from "../box-schema";
import { merge, order } from "./merge";
import { same } from "./tree";

/** A box made from two tabs' edits, and what a person should know about it, in words. */
export interface MergedBox {
  readonly box: Box;
  readonly told: readonly string[];
}

/** How many names are tried for a thing that is there twice. */
const MOST_NAMES = 1000;

/**
 * Merges two edits of one box by the names of the things. A thing that only one tab changed, added or took out is as that
 * tab has it. A thing that one tab changed and the other took out stays. Of a thing that both changed in the same place,
 * both versions stand in the box, the second under a name with a number.
 */
export function mergeBoxes(base: Box, mine: Box, theirs: Box): MergedBox {
  if (same(mine, base)) return { box: theirs, told: [] };
  if (same(theirs, base) || same(mine, theirs)) return { box: mine, told: [] };
  const told: string[] = [];
  const [ofBase, ofMine, ofTheirs] = [byName(base), byName(mine), byName(theirs)];
  const names = order([...ofTheirs.keys()], [...ofMine.keys()]);
  const taken = new Set(names);
  const things = names.flatMap((name) => {
    const [was, my, their] = [ofBase.get(name), ofMine.get(name), ofTheirs.get(name)];
    const joined = joinThing(was, my, their);
    if (joined.length < 2) return joined;
    const [first, second] = joined as [BoxThing, BoxThing];
    const other = freeName(name, taken);
    taken.add(other);
    told.push(
      `Two tabs changed ‘${name}’ at the same time: both stand in the box, one as ‘${other}’. Take out the wrong one.`,
    );
    return [first, { ...second, name: other }];
  });
  const plain = (box: Box): Record<string, unknown> => {
    const { things: _, drills_mm: __, ...rest } = box;
    return rest;
  };
  const rest = merge(plain(base), plain(mine), plain(theirs));
  for (const way of rest.clashes) {
    const [stands, other] = [mine, theirs].map((box) => JSON.stringify(valueAt(box, way)));
    told.push(
      `Two tabs changed the box's ${way.join(".")}: ${String(stands)} stands, the other had ${String(other)}.`,
    );
  }
  const drills = joinDrills(base.drills_mm, mine.drills_mm, theirs.drills_mm);
  const read = readBox({ ...(rest.value as object), drills_mm: drills, things });
  // Too many things for one box, for example: what this tab has stays here, and the message says what stands in the way.
  if (!read.ok) throw new MergeError(read.problems[0]?.message ?? "The two boxes do not go together.");
  return { box: read.box, told };
}

/** Two boxes that cannot become one. */
export class MergeError extends Error {}

/** A box with what another one has besides: a thing of the same name that is unlike gets a name with a number. */
export function joinBoxes(mine: Box, other: Box): Box {
  const own = byName(mine);
  const taken = new Set(own.keys());
  const more = other.things.flatMap((one) => {
    const there = own.get(one.name);
    if (same(there, one)) return [];
    const name = there === undefined ? one.name : freeName(one.name, taken);
    taken.add(name);
    return [{ ...one, name }];
  });
  const drills = [...new Set([...mine.drills_mm, ...other.drills_mm])].sort((a, b) => a - b);
  const read = readBox({ ...mine, drills_mm: drills, things: [...mine.things, ...more] });
  if (!read.ok) throw new MergeError(read.problems[0]?.message ?? "The two boxes do not go together.");
  return read.box;
}

const byName = (box: Box): ReadonlyMap<string, BoxThing> => new Map(box.things.map((one) => [one.name, one]));

function joinThing(
  base: BoxThing | undefined,
  mine: BoxThing | undefined,
  theirs: BoxThing | undefined,
): readonly BoxThing[] {
  const both = [mine, theirs].filter((one) => one !== undefined);
  if (mine === undefined || theirs === undefined)
    // One side took it out (or has never had it): it stays only where the other side made or changed it.
    return base !== undefined && same(both[0], base) ? [] : both;
  if (mine.kind !== theirs.kind) return [mine, theirs];
  const { value, clashes } = merge(base, mine, theirs);
  return clashes.length === 0 ? [value as BoxThing] : [mine, theirs];
}

function freeName(name: string, taken: ReadonlySet<string>): string {
  for (let n = 2; n < MOST_NAMES; n++) {
    const other = `${name.slice(0, 100)} (${String(n)})`;
    if (!taken.has(other)) return other;
  }
  throw new MergeError(`No free name is left for ‘${name}’.`);
}

/** A drill is in the box where one side added it, and is gone where one side took it out. */
function joinDrills(base: readonly number[], mine: readonly number[], theirs: readonly number[]): number[] {
  return [...new Set([...mine, ...theirs])]
    .filter((one) => (mine.includes(one) && theirs.includes(one)) || !base.includes(one))
    .sort((a, b) => a - b);
}
