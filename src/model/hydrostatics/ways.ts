import type { Vec } from "../base";
import type { Item } from "../bait";
import { sphereRadius } from "./going-under";

/** A straight piece from a to b, its volume (m³) spread evenly. */
export interface Piece {
  readonly a: Vec;
  readonly b: Vec;
  readonly volume: number;
}

export interface Ball {
  readonly at: Vec;
  readonly radius: number;
  readonly volume: number;
}

/** What displaces water besides the body, sorted by how it goes under (docs/model.md §5). Body frame. */
export interface Ways {
  /** By the length under water. */
  readonly pieces: readonly Piece[];
  /** As a sphere of the item's volume. */
  readonly spheres: readonly Ball[];
  /** By the share of the bare skin under water: all coats together (m³), and their centre. */
  readonly coats: { readonly volume: number; readonly centre: Vec | null };
  /** Hooks and rings, at their eyes. */
  readonly hanging: readonly { readonly at: Vec; readonly volume: number }[];
}

/**
 * Sorts a bait's items by how they go under.
 *
 * @throws RangeError where an item displaces water and does not say how it goes under
 */
export function waysOf(items: readonly Item[]): Ways {
  const pieces: Piece[] = [];
  const spheres: Ball[] = [];
  const hanging: { at: Vec; volume: number }[] = [];
  let coats = 0;
  let centre: Vec | null = null;
  for (const item of items) {
    if (item.displaced === 0) continue;
    const how = item.immersing;
    if (how === null)
      throw new RangeError(
        `"${item.item}" displaces ${item.displaced} m³ but no rule says how it goes under`,
      );
    switch (how.as) {
      case "body": // the shape's own: see immersion.ts
        break;
      case "skin":
        coats += item.displaced;
        centre = item.displacedCentre;
        break;
      case "pieces":
        pieces.push(...how.pieces);
        break;
      case "sphere":
        spheres.push({ at: how.at, volume: how.volume, radius: sphereRadius(how.volume) });
        break;
      case "always":
        hanging.push({ at: how.at, volume: how.volume });
        break;
      default:
        how satisfies never;
    }
  }
  return { pieces, spheres, coats: { volume: coats, centre }, hanging };
}
