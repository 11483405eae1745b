import { isGroup, isList, keysOf, same, valueOf } from "./tree";
import type { Group, Way } from "./tree";

/** The result of merging two edits of one thing, and the places that both changed to different values. */
export interface Merged {
  readonly value: unknown;
  readonly clashes: readonly Way[];
}

/**
 * Merges two edits of one base. A branch that only one of them changed is taken from that one. Where both changed the same
 * place to different values, the place is a clash, and the value there is `mine`.
 */
export function merge(base: unknown, mine: unknown, theirs: unknown): Merged {
  const clashes: Way[] = [];
  const value = join(base, mine, theirs, [], clashes);
  return { value, clashes };
}

function join(base: unknown, mine: unknown, theirs: unknown, at: Way, clashes: Way[]): unknown {
  if (same(mine, base)) return theirs;
  if (same(theirs, base) || same(mine, theirs)) return mine;
  if (isGroup(mine) && isGroup(theirs))
    return joinGroups(isGroup(base) ? base : {}, mine, theirs, at, clashes);
  if (isList(base) && isList(mine) && isList(theirs)) {
    const names = [base, mine, theirs].map(named);
    const [ofBase, ofMine, ofTheirs] = names;
    if (ofBase && ofMine && ofTheirs) return joinNamed(ofBase, ofMine, ofTheirs, at, clashes);
    if (base.length === mine.length && base.length === theirs.length)
      return mine.map((one, i) => join(base[i], one, theirs[i], [...at, i], clashes));
  }
  clashes.push(at);
  return mine;
}

function joinGroups(base: Group, mine: Group, theirs: Group, at: Way, clashes: Way[]): Group {
  const keys = new Set([...keysOf(theirs), ...keysOf(mine)]);
  const entries = [...keys].map((key): [string, unknown] => [
    key,
    join(valueOf(base, key), valueOf(mine, key), valueOf(theirs, key), [...at, key], clashes),
  ]);
  return Object.fromEntries(entries.filter(([, value]) => value !== undefined));
}

type Named = ReadonlyMap<string, unknown>;

/** A list whose entries are groups with a name each has alone; null where it is not. */
function named(list: readonly unknown[]): Named | null {
  const out = new Map<string, unknown>();
  for (const one of list) {
    const name = isGroup(one) ? one["name"] : undefined;
    if (typeof name !== "string" || out.has(name)) return null;
    out.set(name, one);
  }
  return out;
}

/** Entries belong together by their names. An entry that one side changed and the other took out is a clash. */
function joinNamed(base: Named, mine: Named, theirs: Named, at: Way, clashes: Way[]): readonly unknown[] {
  return order([...theirs.keys()], [...mine.keys()])
    .map((name) => join(base.get(name), mine.get(name), theirs.get(name), [...at, name], clashes))
    .filter((one) => one !== undefined);
}

/** The names of the first list in their order; what only the second has follows what it follows there. */
export function order(first: readonly string[], second: readonly string[]): readonly string[] {
  const out = [...first];
  second.forEach((name, i) => {
    if (out.includes(name)) return;
    const before = second[i - 1];
    out.splice(before === undefined ? 0 : out.indexOf(before) + 1, 0, name);
  });
  return out;
}
