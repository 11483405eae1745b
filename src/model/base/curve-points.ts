import { hypot } from "./powers";
import type { Vec } from "./types";

/** How far a chord may lie off the model's curve, m: a fifth of the width of a cut line. */
export const CHORD = 0.02e-3;

/** Number of pieces into which each smooth stretch is cut first, and how often a piece may then be halved. */
const FIRST_PIECES = 4;
const HALVINGS = 12;

/** Places within a piece where the chord's distance is checked. */
const LOOKED_AT = [0.25, 0.5, 0.75] as const;

const offChord = (p: Vec, a: Vec, b: Vec): number => {
  const [dx, dz] = [b.x - a.x, b.z - a.z];
  const size = hypot(dx, dz);
  return size === 0 ? hypot(p.x - a.x, p.z - a.z) : Math.abs((p.x - a.x) * dz - (p.z - a.z) * dx) / size;
};

/**
 * A smooth curve between neighbouring `breaks` of its parameter, as points from the first break to the last one.
 * @throws RangeError where the curve has a point that is not finite
 */
export function curvePoints(
  curve: (t: number) => Vec,
  breaks: readonly number[],
  tolerance: number = CHORD,
): Vec[] {
  if (!(tolerance > 0)) throw new RangeError(`curvePoints: tolerance ${tolerance} m must be above 0`);
  const at = (t: number): Vec => {
    const p = curve(t);
    if (!Number.isFinite(p.x + p.z)) throw new RangeError(`curvePoints: the curve has no point at ${t}`);
    return p;
  };
  const out: Vec[] = [];
  const refine = (t0: number, a: Vec, t1: number, b: Vec, left: number): void => {
    const near = LOOKED_AT.every((k) => offChord(at(t0 + (t1 - t0) * k), a, b) <= 0.7 * tolerance);
    if (near || left === 0) {
      out.push(b);
      return;
    }
    const t = (t0 + t1) / 2;
    const middle = at(t);
    refine(t0, a, t, middle, left - 1);
    refine(t, middle, t1, b, left - 1);
  };
  breaks.forEach((t1, i) => {
    const t0 = breaks[i - 1];
    if (t0 === undefined) {
      out.push(at(t1));
      return;
    }
    let [from, a] = [t0, at(t0)];
    for (let k = 1; k <= FIRST_PIECES; k++) {
      const to = k === FIRST_PIECES ? t1 : t0 + ((t1 - t0) * k) / FIRST_PIECES;
      const b = at(to);
      refine(from, a, to, b, HALVINGS);
      [from, a] = [to, b];
    }
  });
  return out;
}
