import { isGroup, isList, keysOf, same, valueOf, withKey } from "./tree";
import type { Way } from "./tree";

/**
 * One difference between two documents, stored so that it can be done and undone. Either a value changed at a place (`from`
 * absent: it was not there; `to` absent: it is removed), or entries of a list were taken out and put in.
 */
export type Change =
  | { readonly at: Way; readonly from?: unknown; readonly to?: unknown }
  | {
      readonly at: Way;
      readonly start: number;
      readonly out: readonly unknown[];
      readonly in: readonly unknown[];
    };

export type Delta = readonly Change[];

/** The delta does not belong to the document that it was applied to. */
export class DeltaError extends Error {}

/** All differences from one document to another; empty where they hold the same. */
export function deltaOf(from: unknown, to: unknown): Delta {
  const out: Change[] = [];
  collect(from, to, [], out);
  return out;
}

function collect(from: unknown, to: unknown, at: Way, out: Change[]): void {
  if (from === to) return;
  if (isGroup(from) && isGroup(to)) {
    for (const key of new Set([...keysOf(from), ...keysOf(to)]))
      collect(valueOf(from, key), valueOf(to, key), [...at, key], out);
  } else if (isList(from) && isList(to)) {
    if (from.length === to.length) from.forEach((one, i) => collect(one, to[i], [...at, i], out));
    else out.push(splice(from, to, at));
  } else out.push({ at, ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) });
}

/** What differs between two lists of different length, without what they have in common at both ends. */
function splice(from: readonly unknown[], to: readonly unknown[], at: Way): Change {
  const shorter = Math.min(from.length, to.length);
  let start = 0;
  while (start < shorter && same(from[start], to[start])) start++;
  let end = 0;
  while (end < shorter - start && same(from.at(-1 - end), to.at(-1 - end))) end++;
  return { at, start, out: from.slice(start, from.length - end), in: to.slice(start, to.length - end) };
}

/** The document after the changes. Branches that no change touches stay the same objects. */
export const forth = (document: unknown, delta: Delta): unknown =>
  delta.reduce((now, change) => put(now, change.at, 0, change), document);

/** The document before the changes. */
export const back = (document: unknown, delta: Delta): unknown =>
  delta.toReversed().reduce((now, change) => put(now, change.at, 0, turned(change)), document);

function turned(change: Change): Change {
  if ("start" in change) return { ...change, out: change.in, in: change.out };
  const { at } = change;
  return {
    at,
    ...("to" in change ? { from: change.to } : {}),
    ...("from" in change ? { to: change.from } : {}),
  };
}

function put(now: unknown, at: Way, depth: number, change: Change): unknown {
  const step = at[depth];
  if (step === undefined) return changed(now, change);
  if (isList(now) && typeof step === "number" && step < now.length)
    return now.map((one, i) => (i === step ? put(one, at, depth + 1, change) : one));
  if (isGroup(now) && typeof step === "string")
    return withKey(now, step, put(valueOf(now, step), at, depth + 1, change));
  throw new DeltaError(`There is no place ${at.join(".")} in this document.`);
}

function changed(now: unknown, change: Change): unknown {
  const wrong = (): never => {
    throw new DeltaError(`The document holds something else at ${change.at.join(".")} than the step knows.`);
  };
  if (!("start" in change)) return same(now, change.from) ? change.to : wrong();
  const { start, out } = change;
  if (!isList(now) || !same(now.slice(start, start + out.length), out)) return wrong();
  return [...now.slice(0, start), ...change.in, ...now.slice(start + out.length)];
}
