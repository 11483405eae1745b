/** Finds room for small labels: each near its point, clear of those placed before, inside the stage. Screen px, y down. */

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** How much farther a label may stand than it would like, px, and how far round the place, rad: tried in this order. */
const EXTRA = [0, 12, 24, 40, 60];
const TURNS = [0, 0.7, -0.7, 1.4, -1.4, 2.2, -2.2, Math.PI];

interface Rect {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

export class Placer {
  readonly #bounds: Rect;
  readonly #taken: Rect[] = [];

  constructor(bounds: Rect) {
    this.#bounds = bounds;
  }

  /** Keeps labels off this box, given by its middle. */
  block(x: number, y: number, width: number, height: number): void {
    this.#taken.push(boxAt({ x, y }, width, height));
  }

  /**
   * Middle of a label of this size near `at`, on the side of `direction` (rad, counter-clockwise from +x as seen) where
   * there is room; where there is none, its first choice moved into the stage.
   */
  place(at: Spot, direction: number, width: number, height: number, clearance = 7): Spot {
    const found = this.find(at, direction, width, height, clearance);
    if (found !== null) return found;
    const spot = this.#beside(at, direction, width, height, clearance);
    this.#taken.push(boxAt(spot, width, height));
    return spot;
  }

  /** The same, but null where there is no room near `at`. */
  find(at: Spot, direction: number, width: number, height: number, clearance = 7): Spot | null {
    for (const extra of EXTRA)
      for (const turn of TURNS) {
        const spot = this.#beside(at, direction + turn, width, height, clearance + extra);
        const box = boxAt(spot, width, height);
        if (this.#taken.some((t) => overlap(t, box))) continue;
        this.#taken.push(box);
        return spot;
      }
    return null;
  }

  /** The label's nearest edge, not its middle, stands off by the clearance. */
  #beside(at: Spot, direction: number, width: number, height: number, clearance: number): Spot {
    const c = Math.cos(direction);
    const s = Math.sin(direction);
    const reach = clearance + Math.abs(c) * (width / 2) + Math.abs(s) * (height / 2);
    return this.#into({ x: at.x + c * reach, y: at.y - s * reach }, width, height);
  }

  #into(p: Spot, width: number, height: number): Spot {
    const b = this.#bounds;
    return {
      x: Math.max(b.x0 + width / 2, Math.min(b.x1 - width / 2, p.x)),
      y: Math.max(b.y0 + height / 2, Math.min(b.y1 - height / 2, p.y)),
    };
  }
}

const boxAt = (p: Spot, width: number, height: number): Rect => ({
  x0: p.x - width / 2,
  y0: p.y - height / 2,
  x1: p.x + width / 2,
  y1: p.y + height / 2,
});

const overlap = (a: Rect, b: Rect): boolean => a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1;
