import { type HalfSection, halfSection } from "./halfsection";

/**
 * Area below a level in half a section (its Bonjean curve A(ζ)), with two integrals and two derivatives. The half is a half
 * superellipse on the widest line of the section: a dome rises from this line, a bowl hangs from it. ζ is a height above
 * G's level, as the section stands in the water.
 */
export class Bonjean {
  readonly top: number;
  readonly bottom: number;
  readonly #dome: boolean;
  readonly #line: number;
  readonly #h: number;
  readonly #table: HalfSection;
  /** Breadth at the widest line, and A, B, C at the upper end. */
  readonly #w: number;
  readonly #A1: number;
  readonly #B1: number;
  readonly #C1: number;
  readonly #at = new Float64Array(5);

  /**
   * @param dome whether it rises from its widest line
   * @param height of the half, m, above 0
   * @param area m²; the breadth follows from it
   * @param centroid its height above G's level, m
   */
  constructor(dome: boolean, exponent: number, height: number, area: number, centroid: number) {
    const table = halfSection(exponent);
    const { a1, b1, c1 } = table;
    const h = height;
    this.#table = table;
    this.#dome = dome;
    this.#h = h;
    this.#w = area / (h * a1);
    this.#A1 = area;
    const arm = (h * (a1 - b1)) / a1; // centroid's distance from the widest line
    this.#line = dome ? centroid - arm : centroid + arm;
    this.top = dome ? this.#line + h : this.#line;
    this.bottom = dome ? this.#line : this.#line - h;
    const w = this.#w;
    // B and C at the upper end: for a dome its own b and c; for a bowl what its curve lacks to the full area
    this.#B1 = dome ? w * h * h * b1 : area * h - w * h * h * b1;
    this.#C1 = dome ? w * h * h * h * c1 : this.#B1 * h - (area * h * h) / 2 + w * h * h * h * c1;
  }

  /** The part below the level ζ (m from G's level): out = [A″, A′, A, B = ∫A, C = ∫B, ζB − 2C]. */
  below(zeta: number, out: Float64Array): void {
    const h = this.#h;
    if (zeta >= this.top) {
      const e = zeta - this.top;
      const A1 = this.#A1;
      const B1 = this.#B1;
      out[0] = 0;
      out[1] = 0;
      out[2] = A1;
      out[3] = B1 + A1 * e;
      out[4] = this.#C1 + e * (B1 + (A1 * e) / 2);
      // ζB − 2C without the squares of e, which cancel: so no digits are lost for a bait on its end, where e is large
      out[5] = this.top * B1 - 2 * this.#C1 + e * (A1 * this.top - B1);
      return;
    }
    if (zeta <= this.bottom) {
      out[0] = out[1] = out[2] = out[3] = out[4] = out[5] = 0;
      return;
    }
    const t = this.#at;
    const w = this.#w;
    let B: number;
    let C: number;
    if (this.#dome) {
      this.#table.at((zeta - this.#line) / h, t);
      out[0] = (w * (t[0] as number)) / h;
      out[2] = w * h * (t[2] as number);
      B = w * h * h * (t[3] as number);
      C = w * h * h * h * (t[4] as number);
    } else {
      const eta = zeta - this.#line; // below 0
      this.#table.at(-eta / h, t);
      out[0] = (-w * (t[0] as number)) / h;
      out[2] = this.#A1 - w * h * (t[2] as number);
      B = this.#B1 + this.#A1 * eta + w * h * h * (t[3] as number);
      C = this.#C1 + eta * (this.#B1 + (this.#A1 * eta) / 2) - w * h * h * h * (t[4] as number);
    }
    out[1] = w * (t[1] as number);
    out[3] = B;
    out[4] = C;
    out[5] = zeta * B - 2 * C;
  }
}
