import { exp, gaussLegendre, log, square } from "../base";

/** Cells of the table across the half height, narrowing towards its end: t_k = 1 − (1 − k/CELLS)². */
const CELLS = 32;
/** Numbers kept for each cell: t, c, b, a, y at its start, and the two upper coefficients of a. */
const STRIDE = 7;

/**
 * The half superellipse y(t) = (1 − tⁿ)^(1/n), 0 ≤ t ≤ 1, as a table of a(t) = ∫₀ᵗ y: piecewise cubic through the exact
 * values and slopes at 33 heights, with its exact integrals b = ∫a and c = ∫b.
 *
 * It matters that y, a, b, c are exact derivatives of each other: then forces made from them have a potential to round-off,
 * however coarse the table is. Compared with the true curve, a is within 1e-5 of its total for n up to 10.
 */
export class HalfSection {
  /** Values at t = 1. */
  readonly a1: number;
  readonly b1: number;
  readonly c1: number;
  readonly #cells: Float64Array;

  constructor(readonly exponent: number) {
    const n = exponent;
    if (!(n >= 1 && n < 100)) throw new RangeError(`section exponent ${n}: give a number from 1 to 10`);
    const y = (t: number): number => (t <= 0 ? 1 : t >= 1 ? 0 : exp(log(1 - exp(n * log(t))) / n));
    const cells = new Float64Array(CELLS * STRIDE);
    let a = 0;
    let b = 0;
    let c = 0;
    let t = 0;
    let y0 = 1;
    for (let k = 0; k < CELLS; k++) {
      const last = k + 1 === CELLS;
      const end = last ? 1 : 1 - square(1 - (k + 1) / CELLS);
      const h = end - t;
      const y1 = y(end);
      const gain = area(y, t, h, last);
      // cubic from a to a + gain with slopes y0, y1
      const a2 = (3 * gain - (2 * y0 + y1) * h) / (h * h);
      const a3 = ((y0 + y1) * h - 2 * gain) / (h * h * h);
      cells.set([t, c, b, a, y0, a2, a3], k * STRIDE);
      c += h * (b + h * (a / 2 + h * (y0 / 6 + h * (a2 / 12 + (h * a3) / 20))));
      b += h * (a + h * (y0 / 2 + h * (a2 / 3 + (h * a3) / 4)));
      a += gain;
      t = end;
      y0 = y1;
    }
    this.a1 = a;
    this.b1 = b;
    this.c1 = c;
    this.#cells = cells;
  }

  /** At t in [0, 1]: out = [y′, y, a, b, c]. */
  at(t: number, out: Float64Array): void {
    const p = this.#cells;
    const cell = t < 1 ? (CELLS * (1 - Math.sqrt(1 - t))) | 0 : CELLS - 1;
    const i = (cell < CELLS ? cell : CELLS - 1) * STRIDE;
    // rounding may put t just outside its cell: there the curve of the neighbour differs only by the third power of that
    // distance
    const u = t - (p[i] as number);
    const c0 = p[i + 1] as number;
    const b0 = p[i + 2] as number;
    const a0 = p[i + 3] as number;
    const y0 = p[i + 4] as number;
    const a2 = p[i + 5] as number;
    const a3 = p[i + 6] as number;
    out[0] = 2 * a2 + 6 * a3 * u;
    out[1] = y0 + u * (2 * a2 + 3 * a3 * u);
    out[2] = a0 + u * (y0 + u * (a2 + u * a3));
    out[3] = b0 + u * (a0 + u * (y0 / 2 + u * (a2 / 3 + (u * a3) / 4)));
    out[4] = c0 + u * (b0 + u * (a0 / 2 + u * (y0 / 6 + u * (a2 / 12 + (u * a3) / 20))));
  }
}

/** ∫ y over a cell. In the last cell y ends like a root: there the integral runs over v with 1 − t = h v⁴. */
function area(y: (t: number) => number, from: number, h: number, last: boolean): number {
  const { n, x, w } = gaussLegendre(last ? 12 : 4);
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const v = (1 + (x[i] as number)) / 2;
    const weight = (w[i] as number) / 2;
    sum += last ? weight * y(1 - h * v * v * v * v) * 4 * v * v * v : weight * y(from + h * v);
  }
  return sum * h;
}

const known = new Map<number, HalfSection>();

/** The table of an exponent; up to 256 are kept. */
export function halfSection(exponent: number): HalfSection {
  let found = known.get(exponent);
  if (!found) {
    if (known.size >= 256) known.clear();
    found = new HalfSection(exponent);
    known.set(exponent, found);
  }
  return found;
}
