import { NO_TRAIL } from "../history";
import type { Trail } from "../history";
import { readScenario } from "../parse";
import type { Scenario } from "../schema";
import { deltaOf } from "./delta";
import { merge } from "./merge";
import type { Beside, KeptBait } from "./record";
import { isGroup, isList, keysOf, same, valueOf } from "./tree";

/** What is to be written, and what the writer has to do about it. */
export type Settled =
  /** The writer's record was the newest: it is kept as it is. */
  | { readonly kind: "kept"; readonly bait: KeptBait }
  /** Another tab had changed other things: the record holds both edits, and the writer takes it over. */
  | { readonly kind: "merged"; readonly bait: KeptBait; readonly clashes: readonly Clash[] }
  /** Another tab had changed the same things: the writer's bait goes on as one of its own, beside the other. */
  | { readonly kind: "parted"; readonly bait: KeptBait; readonly other: KeptBait };

/** A single value beside the document that both tabs have set: one stands, the other is to be told. */
export interface Clash {
  /** Of the view's state: the keys that lead to the value. */
  readonly way: readonly string[];
  readonly stands: unknown;
  readonly other: unknown;
}

/** What undo calls the edits that came from another tab. */
export const ELSEWHERE = "edits of another tab";

/**
 * Decides what becomes of a write. `base`: the record that the writer last read or wrote (null: a new bait). `mine`:
 * the writer's record now. `kept`: what the browser keeps at this moment (null: nothing). Nobody's edit is lost.
 */
export function settle(
  base: KeptBait | null,
  mine: KeptBait,
  kept: KeptBait | null,
  freshId: () => string,
): Settled {
  if (kept === null) return { kind: "kept", bait: { ...mine, revision: mine.revision + 1 } };
  if (base !== null && kept.revision === base.revision)
    return { kind: "kept", bait: { ...mine, revision: kept.revision + 1 } };
  const scenario = mergeScenarios(base?.scenario ?? null, mine.scenario, kept.scenario);
  if (scenario === null)
    return { kind: "parted", bait: { ...mine, id: freshId(), revision: 1, own: true }, other: kept };
  const beside = mergeBeside(base?.beside ?? {}, mine.beside, kept.beside);
  const edited = base === null || !same(mine.scenario, base.scenario);
  return {
    kind: "merged",
    clashes: beside.clashes,
    bait: {
      ...kept,
      revision: kept.revision + 1,
      scenario,
      trail: joinTrails(base, mine, kept, scenario),
      beside: beside.beside,
      own: kept.own || mine.own,
      changed: Math.max(kept.changed, mine.changed),
      // Who still edits a bait wants to keep it.
      binned: edited ? mine.binned : kept.binned,
      inFile: mine.inFile === (base?.inFile ?? null) ? kept.inFile : mine.inFile,
      tags: joinTags(base?.tags ?? [], mine.tags ?? [], kept.tags ?? []),
    },
  };
}

/** Tags that either side added, less those that either side took off. */
const joinTags = (base: readonly string[], mine: readonly string[], kept: readonly string[]): string[] =>
  [...new Set([...kept, ...mine])].filter(
    (one) => (mine.includes(one) && kept.includes(one)) || !base.includes(one),
  );

/** Two edits of one document put together; null where they clash, or where the two together are no bait. */
export function mergeScenarios(base: Scenario | null, mine: Scenario, theirs: Scenario): Scenario | null {
  if (same(mine, theirs)) return theirs;
  if (base === null) return null;
  if (same(mine, base)) return theirs;
  if (same(theirs, base)) return mine;
  const { value, clashes } = merge(base, mine, theirs);
  if (clashes.length > 0) return null;
  const read = readScenario(value);
  return read.ok ? read.scenario : null;
}

/** The steps that lead to the merged document: those of the side that edited; of both, theirs as one step on mine. */
function joinTrails(base: KeptBait | null, mine: KeptBait, kept: KeptBait, scenario: Scenario): Trail {
  if (same(scenario, kept.scenario)) return kept.trail;
  if (same(scenario, mine.scenario)) return mine.trail;
  if (base === null) return NO_TRAIL;
  const delta = deltaOf(mine.scenario, scenario);
  return { past: [...mine.trail.past, { label: ELSEWHERE, delta }], future: [] };
}

/**
 * What views keep beside the document, put together. Lists (times, readings, ticks) keep what either side added and
 * lose what either side took out. Where both set one value, it is mine, which is on the screen in front of the writer,
 * and the other is told. Where on the page one is belongs to each tab: there is nothing to tell of it.
 */
export function mergeBeside(
  base: Beside,
  mine: Beside,
  theirs: Beside,
): { readonly beside: Beside; readonly clashes: readonly Clash[] } {
  const clashes: Clash[] = [];
  const beside = joinValues(base, mine, theirs, [], clashes) as Beside;
  return { beside, clashes: clashes.filter(({ way }) => way[0]?.startsWith("work/") === true) };
}

function joinValues(
  base: unknown,
  mine: unknown,
  theirs: unknown,
  way: readonly string[],
  clashes: Clash[],
): unknown {
  if (same(mine, base)) return theirs;
  if (same(theirs, base) || same(mine, theirs)) return mine;
  if (isList(mine) && isList(theirs)) return joinLists(isList(base) ? base : [], mine, theirs);
  if (!isGroup(mine) || !isGroup(theirs)) {
    if (mine !== undefined && theirs !== undefined) clashes.push({ way, stands: mine, other: theirs });
    return mine ?? theirs;
  }
  const of = isGroup(base) ? base : {};
  const keys = [...new Set([...keysOf(theirs), ...keysOf(mine)])];
  const entries = keys.map((key): [string, unknown] => [
    key,
    joinValues(valueOf(of, key), valueOf(mine, key), valueOf(theirs, key), [...way, key], clashes),
  ]);
  return Object.fromEntries(entries.filter(([, value]) => value !== undefined));
}

/** Theirs, less what mine took out of the base, and what mine added to it. Equal entries count one by one. */
function joinLists(
  base: readonly unknown[],
  mine: readonly unknown[],
  theirs: readonly unknown[],
): unknown[] {
  const gone = without(base, mine);
  const added = without(mine, base);
  return [...without(theirs, gone), ...added];
}

/** The entries of a list less those of another, each taken away once. */
function without(list: readonly unknown[], less: readonly unknown[]): unknown[] {
  const left = [...less];
  return list.filter((one) => {
    const at = left.findIndex((other) => same(one, other));
    if (at < 0) return true;
    left.splice(at, 1);
    return false;
  });
}
