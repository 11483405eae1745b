/** Righting lever (m) at a trim (rad), and its slope (m/rad). */
export interface Sloped {
  readonly pitch: number;
  readonly lever: number;
  readonly slope: number;
}

/** Two trims this close count as one, rad. */
const CLOSE = 1e-7;
/** A bound above this fraction of the smaller lever is believed: a lever that bends back a little can pass its tangents. */
const SURE = 0.5;
/** The next trim is no nearer to an end than this fraction of the range; else we take the middle. */
const NEAR_END = 0.02;

/**
 * May the lever turn near zero between two neighbouring trims of a scan (`a`, `b`)? It may if one of them is nearly zero, and
 * the trims before and after them lead towards zero. `slack` is how far these levers may be wrong, m.
 */
export function mayTurn(
  before: number | undefined,
  a: number,
  b: number,
  after: number | undefined,
  slack: number,
): boolean {
  if (Math.min(Math.abs(a), Math.abs(b)) > slack) return false;
  const sign = a > 0 ? 1 : -1;
  // How far the lever comes nearer to zero in one step, from either side.
  const down = before === undefined ? Infinity : sign * (before - a);
  const up = after === undefined ? Infinity : sign * (after - b);
  return down > -slack && up > -slack;
}

/** Where the tangents at two trims meet: how far behind the first (rad), and how far from zero on the side of its lever (m). */
function tangents(a: Sloped, b: Sloped): { readonly behind: number; readonly bound: number } | null {
  const sign = a.lever > 0 ? 1 : -1;
  const down = -sign * a.slope;
  const up = sign * b.slope;
  if (!(down > 0 && up > 0)) return null;
  const behind = (sign * (a.lever - b.lever) + up * (b.pitch - a.pitch)) / (down + up);
  return { behind, bound: sign * a.lever - down * behind };
}

/**
 * Can the lever reach zero between two trims at which it has the same sign? Not if it leads away from zero at one of them, nor
 * if the tangents meet well before zero: a hollow is never deeper than where they meet.
 */
export function canReach(a: Sloped, b: Sloped): boolean {
  const met = tangents(a, b);
  return met !== null && met.bound <= SURE * Math.min(Math.abs(a.lever), Math.abs(b.lever));
}

/**
 * A trim between two others at which the lever has the other sign; null if there is none. We look where the tangents meet, and
 * go on with the half in which the lever turns, until the other sign is found or cannot be reached.
 */
export function otherSign(a: Sloped, b: Sloped, at: (pitch: number) => Sloped): Sloped | null {
  while (b.pitch - a.pitch > CLOSE && canReach(a, b)) {
    const width = b.pitch - a.pitch;
    const behind = tangents(a, b)?.behind ?? NaN;
    const inside = behind > NEAR_END * width && behind < (1 - NEAR_END) * width;
    const here = at(a.pitch + (inside ? behind : width / 2));
    if (here.lever > 0 !== a.lever > 0) return here;
    if (here.slope * a.slope > 0) a = here;
    else b = here;
  }
  return null;
}
