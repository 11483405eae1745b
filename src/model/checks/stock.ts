import type { Shape } from "../shape";
import { outline } from "../shape";

/**
 * The board that a bait is cut from: its length lies along the datum line, its width upright, its thickness across. Two
 * halves are cut from two such boards and glued along the plane of symmetry.
 */
export interface StockSpec {
  readonly pieces: "one" | "halves";
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
}

/** A direction in which the body is larger than its board, m. */
export interface StockMiss {
  readonly along: "length" | "width" | "thickness";
  readonly needs: number;
  readonly has: number;
}

/** A difference of less than this is a matter of the knife, m. */
const SLACK = 1e-5;
const LOOKS = 400;

/** What the bare body takes up: lowest and highest edge, and its whole breadth, m. */
export function bodyRoom(body: Shape): {
  readonly low: number;
  readonly high: number;
  readonly broad: number;
} {
  const heights = outline(body, LOOKS).map(({ z }) => z);
  return { low: Math.min(...heights), high: Math.max(...heights), broad: 2 * body.maxHalfBreadth };
}

/** Directions in which the body does not fit its board. */
export function stockMisses(body: Shape, stock: StockSpec): readonly StockMiss[] {
  const { low, high, broad } = bodyRoom(body);
  const all: readonly StockMiss[] = [
    { along: "length", needs: body.length, has: stock.length },
    { along: "width", needs: high - low, has: stock.width },
    { along: "thickness", needs: broad, has: (stock.pieces === "halves" ? 2 : 1) * stock.thickness },
  ];
  return all.filter(({ needs, has }) => needs > has + SLACK);
}
