import { pickFrom } from "../../../drawing";
import type { Mark } from "../../../drawing";
import type { Vec } from "../../../model/base";
import type { PartAt, PartKey } from "./parts.svelte";
import type { Board } from "./state.svelte";

/** Kinds of parts by what a pointer finds on the drawing. */
const KINDS: Readonly<Record<string, PartKey>> = {
  chamber: "chambers",
  ballast: "ballast",
  wire: "wires",
  bib: "bib",
  hanger: "hangers",
  hook: "hangers",
  fitting: "fittings",
};

/** A press counts as on a part from this near, px. */
const NEAR = 4;

/** The part that is drawn at a place of a view (m); null: none. */
export function partAt(board: Board, marks: readonly Mark[], at: Vec, scale: number): PartAt | null {
  const things = marks.filter((m) => m.what !== "body");
  const what = pickFrom(things, at, NEAR / scale);
  const [kind = "", name = ""] = what?.split(/:(.*)/s) ?? [];
  if (kind === "tie") return { key: "tie", index: 0 };
  const found = board.parts.entries.find(
    ({ key, entry }) =>
      key === KINDS[kind] && (key === "bib" || (entry as { readonly name?: string }).name === name),
  );
  return found === undefined ? null : { key: found.key, index: found.index };
}
