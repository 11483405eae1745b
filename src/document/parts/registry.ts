import type { z } from "zod";
import { PART_KEYS, PARTS } from "../../model/parts";
import type { Group, Item, PartKey, PartSpecs } from "../../model/parts";
import type { Problem } from "../problem";
import { STAGES } from "../schema-bench";
import type { Stage } from "../schema-bench";
import { ballast } from "./ballast";
import { bib } from "./bib";
import { chambers } from "./chambers";
import { coats } from "./coats";
import { fittings } from "./fittings";
import { hangers } from "./hangers";
import type { PartFile, Stretch } from "./types";
import { wires } from "./wires";

type AnyFile = PartFile<PartKey, unknown, z.ZodType>;

/**
 * How each kind of part stands in the file. The list must name exactly the kinds of the model's `PARTS`: a kind that is
 * missing here, or that the model does not know, does not compile.
 */
const FILES = { chambers, ballast, wires, bib, hangers, fittings, coats } satisfies {
  readonly [K in PartKey]: PartFile<K, unknown, z.ZodType>;
};
type Files = typeof FILES;

export const PART_FILES: Readonly<Record<PartKey, AnyFile>> = FILES;

/** The schema's fields of all kinds, in the canonical order of the file. */
export const partFields = Object.fromEntries(
  Object.entries(FILES).map(([key, { field }]) => [key, field]),
) as unknown as { [K in PartKey]: Files[K]["field"] };

/** What a bait of the document holds of each kind; a key that the file leaves out is absent or an empty list. */
export type HeldParts = { readonly [K in PartKey]?: unknown };

/** One entry of the document with its kind. */
export interface FileEntry {
  readonly key: PartKey;
  readonly file: AnyFile;
  /** The entry itself: hand it to the functions of `file`. */
  readonly entry: object;
  readonly index: number;
  /** Its place, as steps and in words. */
  readonly steps: readonly (string | number)[];
  readonly path: string;
}

const isMany = (key: PartKey): boolean => PARTS[key].many;

/** All entries of a bait of the document, in the order of the account. */
export function fileEntries(bait: HeldParts): FileEntry[] {
  return PART_KEYS.flatMap((key): FileEntry[] => {
    const file = PART_FILES[key];
    const held = bait[key];
    if (isMany(key))
      return ((held ?? []) as readonly object[]).map((entry, index) => ({
        key,
        file,
        entry,
        index,
        steps: ["bait", key, index],
        path: `bait.${key}[${index}]`,
      }));
    if (held === undefined) return [];
    return [{ key, file, entry: held as object, index: 0, steps: ["bait", key], path: `bait.${key}` }];
  });
}

/** The entry that a row of the account stands for; null for the body and for corrections. */
export function fileEntryOf(bait: HeldParts, item: { readonly group: Group; readonly index: number }) {
  const key = PART_KEYS.find((one) => (PARTS[one].groups as readonly Group[]).includes(item.group));
  if (key === undefined) return null;
  return fileEntries(bait).find((one) => one.key === key && one.index === item.index) ?? null;
}

/** All parts in SI and in the body frame. */
export function compileParts(bait: HeldParts): PartSpecs {
  const entries = fileEntries(bait).map(({ key, file, entry }) => ({ key, spec: file.compile(entry) }));
  const specs = Object.fromEntries(
    PART_KEYS.map((key): [PartKey, unknown] => {
      const own = entries.filter((one) => one.key === key).map(({ spec }) => spec);
      return [key, isMany(key) ? own : (own[0] ?? null)];
    }),
  );
  return specs as unknown as PartSpecs;
}

/** What the kinds' own rules find wrong. */
export const partRules = (bait: HeldParts): Problem[] =>
  fileEntries(bait).flatMap(({ file, entry, path }) => file.rules?.(entry, path) ?? []);

/** Everything that needs a material or a density, with its place. */
export const denseThings = (bait: HeldParts): (readonly [path: string, thing: object])[] =>
  fileEntries(bait).flatMap(({ file, entry, path }) =>
    (file.dense?.(entry) ?? []).map(([below, thing]) => [`${path}${below}`, thing] as const),
  );

/** The stage that the file gives an entry, or null. */
export const ownStage = ({ entry }: FileEntry): Stage | null =>
  (entry as { readonly stage?: Stage }).stage ?? null;

/**
 * Stage at which a part's row of the account comes onto the bait: as the file says, else as is usual for its kind.
 * `rowStages` knows the corrections' too.
 */
export function stageOf(bait: HeldParts, item: Pick<Item, "group" | "index" | "part">): Stage {
  const found = fileEntryOf(bait, item);
  // The body, which is there first; a correction has no place in the file's parts.
  if (found === null) return "blank";
  const usual = found.file.usualStage(found.entry, item.part);
  return found.file.fixedStage?.includes(item.part) === true ? usual : (ownStage(found) ?? usual);
}

/** Whether `stage` is `at` or comes before it. */
export const byStage = (stage: Stage, at: Stage): boolean => STAGES.indexOf(stage) <= STAGES.indexOf(at);

/** The parts in a stretched copy of the bait. */
export function stretchParts<Bait extends HeldParts>(bait: Bait, by: Stretch): Bait {
  const entries = fileEntries(bait).map(({ key, file, entry }) => ({ key, now: file.stretch(entry, by) }));
  const changed = PART_KEYS.flatMap((key): [PartKey, unknown][] => {
    const own = entries.filter((one) => one.key === key).map(({ now }) => now);
    if (isMany(key)) return bait[key] === undefined ? [] : [[key, own]];
    return own.length === 0 ? [] : [[key, own[0]]];
  });
  return { ...bait, ...Object.fromEntries(changed) };
}

/** One sentence on how the rows of a group count in the account; null for the body and for corrections. */
export function countsOf(group: Group): string | null {
  for (const key of PART_KEYS) {
    const at = (PARTS[key].groups as readonly Group[]).indexOf(group);
    if (at < 0) continue;
    const { counts } = PART_FILES[key];
    return typeof counts === "string" ? counts : (counts[at] ?? null);
  }
  return null;
}
