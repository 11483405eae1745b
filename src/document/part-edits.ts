import { hypot } from "../model/base";
import { PART_KEYS, PARTS } from "../model/parts";
import type { PartKey, PartSpecs } from "../model/parts";
import { compileParts, fileEntries, PART_FILES } from "./parts";
import type { FileEntry } from "./parts";
import { UNSHIFTED } from "./parts/drawn";
import type { Drawn, PartHandle, Place, Shift, StartBody } from "./parts/drawn";
import type { Scenario } from "./schema";

/** Parts of the bait added, removed, doubled and dragged: each gives a new document. */

/** Kinds of parts by their plain names, in the order of the account. */
export const partKinds: readonly { readonly key: PartKey; readonly words: string; readonly many: boolean }[] =
  PART_KEYS.map((key) => ({ key, words: PART_FILES[key].board.words, many: PARTS[key].many }));

/** A kind without its own types: its functions take the entries of their own kind only. */
const drawnOf = (key: PartKey): Drawn<object> => PART_FILES[key].board as Drawn<object>;

const listOf = (from: Scenario, key: PartKey): readonly object[] =>
  fileEntries(from.bait).flatMap((one) => (one.key === key ? [one.entry] : []));

function withList(from: Scenario, key: PartKey, list: readonly object[]): Scenario {
  if (PARTS[key].many) return { ...from, bait: { ...from.bait, [key]: list } };
  const { [key]: _, ...rest } = from.bait as Scenario["bait"] & Record<string, unknown>;
  const bait = list[0] === undefined ? rest : { ...rest, [key]: list[0] };
  return { ...from, bait: bait as Scenario["bait"] };
}

/** The entry under a name that no other part of the bait has: bench readings call parts by name. */
function named(from: Scenario, entry: object): object {
  const { name } = entry as { readonly name?: string };
  if (name === undefined) return entry;
  const taken = new Set(fileEntries(from.bait).map((one) => (one.entry as { readonly name?: string }).name));
  const stem = name.replace(/ \d+$/, "");
  let free = name;
  for (let k = 2; taken.has(free); k++) free = `${stem} ${k}`;
  return { ...entry, name: free };
}

export interface PartAdded {
  readonly scenario: Scenario;
  readonly index: number;
  /** False: no free place was found, and it stands at its usual one. */
  readonly free: boolean;
}

/** Whether a part, by itself as the model has it, stands free in the bait. */
export type StandsFree = (fresh: PartSpecs) => boolean;

/** Steps in which a free place is looked for: along by a share of the length, up by a share of the height, at least so much. mm */
const STEPS = { along: 1 / 80, up: 1 / 24, least: 0.5 } as const;

/** The first of the entries, from the usual place outward, that stands free; else the one at the usual place. */
function freest<Entry extends object>(
  key: PartKey,
  body: StartBody,
  isFree: StandsFree,
  shifted: (by: Shift) => Entry,
): { readonly entry: Entry; readonly free: boolean } {
  const usual = shifted(UNSHIFTED);
  const { ways } = drawnOf(key);
  const most = Array.from({ length: 21 }, (_, i) => body.at((i / 20) * body.length));
  const tall = Math.max(...most.map(({ top }) => top)) - Math.min(...most.map(({ bottom }) => bottom));
  const along = grid(
    ways.includes("along") ? body.length : 0,
    Math.max(STEPS.least, STEPS.along * body.length),
  );
  const up = grid(ways.includes("up") ? tall : 0, Math.max(STEPS.least, STEPS.up * tall));
  const shifts = along.flatMap((a) => up.map((u): Shift => ({ along: a, up: u })));
  // Where two are as near, the lower one comes first: a low weight holds the bait upright.
  shifts.sort((a, b) => hypot(a.along, a.up) - hypot(b.along, b.up) || a.up - b.up);
  for (const by of shifts) {
    const entry = by === shifts[0] ? usual : shifted(by);
    if (isFree(compileParts({ [key]: PARTS[key].many ? [entry] : entry }))) return { entry, free: true };
  }
  return { entry: usual, free: ways.length === 0 };
}

/** From −most to +most. */
function grid(most: number, step: number): readonly number[] {
  const n = Math.floor(most / step);
  return Array.from({ length: 2 * n + 1 }, (_, i) => (i - n) * step);
}

/**
 * A new part of a kind in this body: at its usual place, or at the nearest one where it stands free. Null where a bait has
 * only one of the kind, and it is there.
 */
export function addPart(from: Scenario, key: PartKey, body: StartBody, isFree: StandsFree): PartAdded | null {
  const list = listOf(from, key);
  if (!PARTS[key].many && list.length > 0) return null;
  const { entry, free } = freest(key, body, isFree, (by) => drawnOf(key).start(body, by));
  return { scenario: withList(from, key, [...list, named(from, entry)]), index: list.length, free };
}

export const removePart = (from: Scenario, key: PartKey, index: number): Scenario =>
  withList(
    from,
    key,
    listOf(from, key).filter((_, i) => i !== index),
  );

/** A second part like this one, behind it in the list and a little aft of it, or at the nearest place where it stands free. */
export function doublePart(
  from: Scenario,
  key: PartKey,
  index: number,
  body: StartBody,
  isFree: StandsFree,
): PartAdded | null {
  const found = fileEntries(from.bait).find((one) => one.key === key && one.index === index);
  if (found === undefined || !PARTS[key].many) return null;
  const aft = Number((0.06 * from.bait.length_mm).toFixed(1));
  const same = (mm: number): number => mm;
  const { entry, free } = freest(key, body, isFree, ({ along, up }) => {
    const station = (s: number): number => Number((s + aft + along).toFixed(3));
    const height = (z: number): number => Number((z + up).toFixed(3));
    return found.file.stretch(found.entry, { station, height, tall: same, wide: same }) as object;
  });
  const list = listOf(from, key);
  return {
    scenario: withList(from, key, [
      ...list.slice(0, index + 1),
      named(from, entry),
      ...list.slice(index + 1),
    ]),
    index: index + 1,
    free,
  };
}

/** Places of a part that a hand drags; the first moves the whole part. */
export const partHandles = ({ key, entry }: Pick<FileEntry, "key" | "entry">): readonly PartHandle[] =>
  drawnOf(key).handles(entry);

/** A part with one of its handles at another place. */
export function dragPart(from: Scenario, key: PartKey, index: number, handle: string, to: Place): Scenario {
  return withList(
    from,
    key,
    listOf(from, key).map((entry, i) => (i === index ? drawnOf(key).drag(entry, handle, to) : entry)),
  );
}
