import type { FileEntry } from "../../../document";
import type { PartAt, PartsBoard } from "./parts.svelte";
import type { Remark } from "./remarks";

const TIE = "bait.tie_mm";

/** The entry of a part that a place in the document lies in. */
export const entryAt = (parts: PartsBoard, path: string): FileEntry | null =>
  parts.entries.find((one) => path === one.path || path.startsWith(`${one.path}.`)) ?? null;

/** The part that a place in the document is about; null: it is about no part. */
export function partOf(parts: PartsBoard, path: string): PartAt | null {
  if (path.startsWith(TIE)) return { key: "tie", index: 0 };
  if (path.startsWith("bait.body")) return { key: "body", index: 0 };
  const entry = entryAt(parts, path);
  return entry === null ? null : { key: entry.key, index: entry.index };
}

/** Where that part is drawn from the side, mm; null where it has no place of its own, as a coat. */
export function placeOf(parts: PartsBoard, path: string): readonly [station: number, height: number] | null {
  const part = partOf(parts, path);
  return parts.handles.find((one) => one.part.key === part?.key && one.part.index === part.index)?.at ?? null;
}

/** A place of the side view (mm) about which something is said. */
export interface Sign {
  readonly at: readonly [station: number, height: number];
  readonly texts: readonly string[];
}

/** One sign for all that is said about one place. */
export function signsOf(parts: PartsBoard, remarks: readonly Remark[]): readonly Sign[] {
  const found = new Map<string, Sign>();
  for (const { path, text } of remarks) {
    const at = placeOf(parts, path);
    if (at === null) continue;
    const key = at.join(" ");
    found.set(key, { at, texts: [...(found.get(key)?.texts ?? []), text] });
  }
  return [...found.values()];
}
