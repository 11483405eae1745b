/** A group of keys: any object that is no list. */
export type Group = Readonly<Record<string, unknown>>;

/** The way to a value: keys of groups and places in lists. */
export type Way = readonly (string | number)[];

export const isGroup = (value: unknown): value is Group =>
  typeof value === "object" && value !== null && !Array.isArray(value);

export const isList = (value: unknown): value is readonly unknown[] => Array.isArray(value);

/** The keys of a group that hold something: a key with `undefined` counts as absent, as in a file. */
export const keysOf = (group: Group): readonly string[] =>
  Object.keys(group).filter((key) => group[key] !== undefined);

/** The value of a key of the group itself; undefined where it is absent. */
export const valueOf = (group: Group, key: string): unknown =>
  Object.hasOwn(group, key) ? group[key] : undefined;

/** A group with one key set, or taken away where the value is `undefined`. */
export function withKey(group: Group, key: string, value: unknown): Group {
  const entries = Object.entries(group).filter(([one]) => one !== key || value !== undefined);
  const next = entries.map(([one, old]): [string, unknown] => [one, one === key ? value : old]);
  if (value !== undefined && !Object.hasOwn(group, key)) next.push([key, value]);
  // fromEntries defines each key on the object itself: a key named "__proto__" stays a key.
  return Object.fromEntries(next);
}

/** Two values hold the same. The order of a group's keys does not matter. */
export function same(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (isList(a) && isList(b)) return a.length === b.length && a.every((one, i) => same(one, b[i]));
  if (!isGroup(a) || !isGroup(b)) return false;
  const keys = keysOf(a);
  return keys.length === keysOf(b).length && keys.every((key) => same(a[key], valueOf(b, key)));
}
