import { gaussLegendre } from "../base";

/**
 * Gauss points of the panels of a body, and the matrix that turns values at them into polynomials over a panel's t in [−1,
 * 1].
 */
export interface PanelRule {
  readonly points: number;
  readonly x: Float64Array;
  readonly w: Float64Array;
  /** Values at the points → coefficients of t⁰, t¹ …: row k, column i at k·points + i. */
  readonly toCoefficients: Float64Array;
  /** Barycentric weights of the points (Berrut & Trefethen 2004, SIAM Rev. 46:501–517, eq. 3.2). */
  readonly barycentric: Float64Array;
}

/** Most points of a rule. */
export const MOST_POINTS = 6;

/**
 * Where all panels are narrower than this (rad), fewer points are enough: a cubic needs four, and its integrals are as
 * exact.
 */
const NARROW = { width: 0.2, points: 4 };

function makeRule(points: number): PanelRule {
  const { x, w } = gaussLegendre(points);
  const toCoefficients = new Float64Array(points * points);
  for (let i = 0; i < points; i++) {
    // Lagrange's basis polynomial of point i, multiplied out
    let poly = [1];
    let scale = 1;
    for (let j = 0; j < points; j++) {
      if (j === i) continue;
      const xj = x[j] as number;
      scale *= (x[i] as number) - xj;
      poly = [...poly, 0].map((_, k) => (poly[k - 1] ?? 0) - xj * (poly[k] ?? 0));
    }
    poly.forEach((c, k) => (toCoefficients[k * points + i] = c / scale));
  }
  const barycentric = x.map((xi, i) =>
    x.reduce((product, xj, j) => (i === j ? product : product / (xi - xj)), 1),
  );
  return { points, x, w, toCoefficients, barycentric };
}

const few = makeRule(NARROW.points);
const many = makeRule(MOST_POINTS);

/** The rule for panels of which the widest has this width, rad. */
export const ruleFor = (widest: number): PanelRule => (widest <= NARROW.width ? few : many);
