import { CHORD, cos, curvePoints, pow, sin, type Vec } from "../model/base";
import { stationOfPhi, type Section, type Shape } from "../model/shape";

/**
 * The body's curves as points, for every view that shows them: the drawn curve is the computed one. Points lie on the
 * model's curve, and are so dense that no chord leaves it by more than the tolerance.
 */

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
