import type { Vec } from "../base";
import type { Row, RowDraft } from "./types";

/** A full row of the account from what its part gives; a number that the part leaves out is 0. */
export function rowOf<G extends string, P extends string>(
  draft: RowDraft<G, P>,
  index: number,
): Row & { readonly group: G; readonly part: P } {
  return {
    filler: 0,
    moment: { x: 0, z: 0 },
    inertia: 0,
    displaced: 0,
    displacedCentre: draft.massCentre,
    immersing: null,
    removed: 0,
    removedCentre: draft.massCentre,
    removedInertia: 0,
    ownVolume: 0,
    apart: null,
    ...draft,
    index,
  };
}

/** "belly" and "hook" give "belly hook"; a name that already ends with the word stays as it is. */
export const named = (name: string, word: string): string =>
  name.trim() === ""
    ? word
    : name.toLowerCase().split(/\s+/).at(-1) === word
      ? name.trim()
      : `${name.trim()} ${word}`;

/** The name, or the word where there is none. */
export const nameOr = (name: string, word: string): string => (name.trim() === "" ? word : name.trim());

/** Mean of places by their weights; `otherwise` where no weight is above 0. */
export function weighted(parts: readonly { readonly w: number; readonly at: Vec }[], otherwise: Vec): Vec {
  const w = parts.reduce((sum, p) => sum + p.w, 0);
  if (!(w > 0)) return otherwise;
  return {
    x: parts.reduce((sum, p) => sum + p.w * p.at.x, 0) / w,
    z: parts.reduce((sum, p) => sum + p.w * p.at.z, 0) / w,
  };
}
