/** Righting lever (m) at a trim (rad), and its slope (m/rad). */
export interface Sloped {
  readonly pitch: number;
  readonly lever: number;
  readonly slope: number;
}

/** Two trims this close count as one, rad. */
const CLOSE = 1e-7;
/**
 * A bound above this fraction of the smaller lever is believed, and above this fraction of the way from `a` down to it: a lever
 * that bends back can pass its tangents.
 */
const SURE = 0.5;
const BENT = 0.25;
/** A lever that crosses zero once between two trims has a slope there of at least this many times the mean slope. */
export const FLAT = 1 / 3;
/** A lever keeps its direction between two trims if neither slope there is more than this many times the mean slope. */
const EVEN = 2.5;
/** In less than this a lever crosses zero once, rad. */
const FINE = 3e-4;
/** The next trim is no nearer to an end than this fraction of the range; else we take the middle. */
const NEAR_END = 0.02;

/** Levers at two neighbouring trims of a scan (`a`, `b`) and at the trims before and after them, m. */
export interface Run {
  readonly before: number;
  readonly a: number;
  readonly b: number;
  readonly after: number;
}

/**
 * May the lever turn near zero between `a` and `b`, at which it has the same sign? It may if the trims before and after lead
 * towards zero, and if the two lines through these levers meet near zero or beyond it. It may as well beside a trim where it
 * crosses zero, if it is much flatter here than there. `slack`: how far these levers may be wrong, m.
 */
export function mayTurn({ before, a, b, after }: Run, slack: number): boolean {
  const sign = a > 0 ? 1 : -1;
  const [nearA, nearB] = [sign * a, sign * b];
  // How far the lever comes nearer to zero in one step, from either side.
  const down = sign * before - nearA;
  const up = sign * after - nearB;
  const flatA = sign * before <= 0 && nearB - nearA < -FLAT * down;
  const flatB = sign * after <= 0 && nearA - nearB < -FLAT * up;
  if (!((down > -slack || flatA) && (up > -slack || flatB))) return false;
  if (Math.min(nearA, nearB) <= slack) return true;
  const met = (nearA - nearB + up) / (down + up);
  return down > 0 && up > 0 && nearA - down * met <= slack;
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
 * if the tangents meet between them well before zero: a hollow is never deeper than where they meet. Where they meet outside,
 * the lever is no plain hollow, and we cannot tell.
 */
export function canReach(a: Sloped, b: Sloped): boolean {
  const met = tangents(a, b);
  if (!met) return false;
  const outside = met.behind < 0 || met.behind > b.pitch - a.pitch;
  const [levelA, levelB] = [Math.abs(a.lever), Math.abs(b.lever)];
  return outside || met.bound <= SURE * Math.min(levelA, levelB) + BENT * (levelA - met.bound);
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

/** Does the lever keep its direction between two trims? A cubic does if no slope is more than three times the mean one. */
function straight(a: Sloped, b: Sloped): boolean {
  const mean = (b.lever - a.lever) / (b.pitch - a.pitch);
  const [from, to] = [a.slope / mean, b.slope / mean];
  return from > 0 && to > 0 && from <= EVEN && to <= EVEN;
}

/** Is a slope near a zero about the mean slope between the trims on both sides? Then the lever crosses zero once there. */
export const plain = (slope: number, mean: number): boolean => slope / mean >= FLAT && slope / mean <= EVEN;

/** A pair of trims between which the lever falls through zero once: there is a stable trim between them. */
export type Fall = readonly [Sloped, Sloped];

/** All falls of the lever between two trims. We look between its turning points, as far as they can reach zero. */
export function fallsIn(a: Sloped, b: Sloped, at: (pitch: number) => Sloped): Fall[] {
  const same = a.lever > 0 === b.lever > 0;
  if (!same && (straight(a, b) || b.pitch - a.pitch <= FINE)) return a.lever > 0 ? [[a, b]] : [];
  const between = same ? otherSign(a, b, at) : at((a.pitch + b.pitch) / 2);
  return between ? [...fallsIn(a, between, at), ...fallsIn(between, b, at)] : [];
}
