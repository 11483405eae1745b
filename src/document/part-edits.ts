import { PART_KEYS, PARTS } from "../model/parts";
import type { PartKey } from "../model/parts";
import { fileEntries, PART_FILES } from "./parts";
import type { FileEntry } from "./parts";
import type { Drawn, PartHandle, Place, StartBody } from "./parts/drawn";
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
}

/** A new part of a kind at its usual place in this body; null where a bait has only one of the kind, and it is there. */
export function addPart(from: Scenario, key: PartKey, body: StartBody): PartAdded | null {
  const list = listOf(from, key);
  if (!PARTS[key].many && list.length > 0) return null;
  const entry = named(from, drawnOf(key).start(body));
  return { scenario: withList(from, key, [...list, entry]), index: list.length };
}

export const removePart = (from: Scenario, key: PartKey, index: number): Scenario =>
  withList(
    from,
    key,
    listOf(from, key).filter((_, i) => i !== index),
  );

/** A second part like this one, behind it in the list and a little aft of it, where its kind has a place. */
export function doublePart(from: Scenario, key: PartKey, index: number): PartAdded | null {
  const found = fileEntries(from.bait).find((one) => one.key === key && one.index === index);
  if (found === undefined || !PARTS[key].many) return null;
  const aft = Number((0.06 * from.bait.length_mm).toFixed(1));
  const same = (mm: number): number => mm;
  const by = { station: (s: number) => Number((s + aft).toFixed(3)), height: same, tall: same, wide: same };
  const entry = named(from, found.file.stretch(found.entry, by) as object);
  const list = listOf(from, key);
  return {
    scenario: withList(from, key, [...list.slice(0, index + 1), entry, ...list.slice(index + 1)]),
    index: index + 1,
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
