import { cos, pow, sin, type Vec } from "../model/base";
import { stationOfPhi, type Section, type Shape } from "../model/shape";

/**
 * The body's curves as points, for every view that shows them: the drawn curve is the computed one. Points lie on the
 * model's curve, and are so dense that no chord leaves it by more than the tolerance.
 */

/** How far a chord may lie off the model's curve, m: a fifth of the width of a cut line. */
export const CHORD = 0.02e-3;

/** Number of pieces into which each smooth stretch is cut first, and how often a piece may then be halved. */
const FIRST_PIECES = 4;
const HALVINGS = 12;

/** Places within a piece where the chord's distance is checked. */
const LOOKED_AT = [0.25, 0.5, 0.75] as const;

const offChord = (p: Vec, a: Vec, b: Vec): number => {
  const [dx, dz] = [b.x - a.x, b.z - a.z];
  const size = Math.hypot(dx, dz);
  return size === 0 ? Math.hypot(p.x - a.x, p.z - a.z) : Math.abs((p.x - a.x) * dz - (p.z - a.z) * dx) / size;
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

/** Leaves out points that repeat the one before them, the last one against the first too. */
const once = (points: readonly Vec[]): Vec[] =>
  points.filter((p, i) => {
    const before = points.at(i - 1);
    return before === undefined || p.x !== before.x || p.z !== before.z;
  });

/** An edge of the body from nose to tail: x forward, and upward the edge's own height or breadth. m. */
const edge = (shape: Shape, of: (phi: number) => number, tolerance: number): Vec[] =>
  curvePoints((phi) => ({ x: -stationOfPhi(phi, shape.length), z: of(phi) }), shape.edges.breaks, tolerance);

/** Side view of the body as a closed polygon, body frame: over the back to the tail, and back along the belly. */
export const sideCurve = (shape: Shape, tolerance = CHORD): Vec[] =>
  once([
    ...edge(shape, (phi) => shape.edges.top(phi), tolerance),
    ...edge(shape, (phi) => shape.edges.bottom(phi), tolerance).reverse(),
  ]);

/** Top view of the body as a closed polygon: x forward, z the breadth to one side; the other side is its mirror. */
export function topCurve(shape: Shape, tolerance = CHORD): Vec[] {
  const half = edge(shape, (phi) => shape.edges.halfBreadth(phi), tolerance);
  return once([...half, ...half.map((p) => ({ x: p.x, z: 0 - p.z })).reverse()]);
}

/**
 * A section as a closed polygon: x the breadth, z the height. Each quarter is a quarter of a superellipse
 * |y/b|ⁿ + |ζ/h|ⁿ = 1, by its polar angle: (cos, sin)·(|cos|ⁿ + |sin|ⁿ)^(−1/n), scaled by b and h.
 */
export function sectionCurve(s: Section, tolerance = CHORD): Vec[] {
  const quarter = (t: number): Vec => {
    const [c, u] = [cos(t), sin(t)];
    const above = t >= 0;
    const n = above ? s.exponentAbove : s.exponentBelow;
    const h = above ? s.top - s.widest : s.widest - s.bottom;
    const rho = pow(pow(Math.max(0, c), n) + pow(Math.abs(u), n), -1 / n);
    return { x: s.halfBreadth * rho * Math.max(0, c), z: s.widest + h * rho * u };
  };
  const right = curvePoints(quarter, [-Math.PI / 2, -Math.PI / 4, 0, Math.PI / 4, Math.PI / 2], tolerance);
  return once([...right, ...right.map((p) => ({ x: 0 - p.x, z: p.z })).reverse()]);
}
