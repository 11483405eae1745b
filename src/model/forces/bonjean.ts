import { type HalfSection, halfSection } from "./halfsection";

/** A section by heights from G; breadths are scaled to the area asked for. */
export interface SectionForm {
  readonly top: number;
  readonly widest: number;
  readonly bottom: number;
  readonly exponentAbove: number;
  readonly exponentBelow: number;
}

/**
 * Area under a level of one section, its Bonjean curve A(ζ), with two integrals and two derivatives: two half
 * superellipses that meet at the widest height. ζ is measured from G's level upwards as the section stands in the water
 * (`side` 1: back up; −1: belly up, all heights mirrored).
 */
export class Bonjean {
  readonly top: number;
  readonly bottom: number;
  readonly #widest: number;
  readonly #up: number;
  readonly #down: number;
  readonly #above: HalfSection;
  readonly #below: HalfSection;
  /** Whole breadth, scaled to the area asked for. */
  readonly #w: number;
  /** A, B, C at the widest height and at the top. */
  readonly #A0: number;
  readonly #B0: number;
  readonly #C0: number;
  readonly #A1: number;
  readonly #B1: number;
  readonly #C1: number;
  readonly #table = new Float64Array(5);

  /**
   * @param area the whole section's, m², to which breadths are scaled
   * @param centroidZ its centroid's height from G, m, to which the section is shifted
   */
  constructor(form: SectionForm, area: number, centroidZ: number, side: 1 | -1) {
    const exponents = [form.exponentAbove, form.exponentBelow] as const;
    const heights = [form.top - form.widest, form.widest - form.bottom] as const;
    const [i, j] = side === 1 ? ([0, 1] as const) : ([1, 0] as const);
    const above = halfSection(exponents[i]);
    const below = halfSection(exponents[j]);
    const up = heights[i];
    const down = heights[j];
    const plain = up * above.a1 + down * below.a1;
    const first = up * up * (above.a1 - above.b1) - down * down * (below.a1 - below.b1);
    const w = plain > 0 ? area / plain : 0;
    this.#w = w;
    this.#widest = side * centroidZ - (plain > 0 ? first / plain : 0);
    this.#up = up;
    this.#down = down;
    this.#above = above;
    this.#below = below;
    this.top = this.#widest + up;
    this.bottom = this.#widest - down;
    this.#A0 = w * down * below.a1;
    this.#B0 = this.#A0 * down - w * down * down * below.b1;
    this.#C0 = this.#B0 * down - (this.#A0 * down * down) / 2 + w * down ** 3 * below.c1;
    this.#A1 = this.#A0 + w * up * above.a1;
    this.#B1 = this.#B0 + this.#A0 * up + w * up * up * above.b1;
    this.#C1 = this.#C0 + this.#B0 * up + (this.#A0 * up * up) / 2 + w * up ** 3 * above.c1;
  }

  /** The part of the section below the level ζ (m from G's level): out = [A″, A′, A, B = ∫A, C = ∫B, ζB − 2C]. */
  below(zeta: number, out: Float64Array): void {
    const eta = zeta - this.#widest;
    const up = this.#up;
    const down = this.#down;
    if (eta >= up) {
      const e = eta - up;
      out[0] = 0;
      out[1] = 0;
      out[2] = this.#A1;
      out[3] = this.#B1 + this.#A1 * e;
      out[4] = this.#C1 + e * (this.#B1 + (this.#A1 * e) / 2);
      // ζB − 2C with its squares of e gone: nothing is lost for a bait on its end, where e is large
      out[5] = this.top * this.#B1 - 2 * this.#C1 + e * (this.#A1 * this.top - this.#B1);
      return;
    }
    if (eta <= -down) {
      out.fill(0);
      return;
    }
    const t = this.#table;
    const w = this.#w;
    const A0 = this.#A0;
    const B0 = this.#B0;
    const C0 = this.#C0;
    let B: number;
    let C: number;
    if (eta < 0) {
      this.#below.at(-eta / down, t);
      out[0] = (-w * (t[0] as number)) / down;
      out[1] = w * (t[1] as number);
      out[2] = A0 - w * down * (t[2] as number);
      B = B0 + A0 * eta + w * down * down * (t[3] as number);
      C = C0 + eta * (B0 + (A0 * eta) / 2) - w * down * down * down * (t[4] as number);
    } else {
      this.#above.at(eta / up, t);
      out[0] = (w * (t[0] as number)) / up;
      out[1] = w * (t[1] as number);
      out[2] = A0 + w * up * (t[2] as number);
      B = B0 + A0 * eta + w * up * up * (t[3] as number);
      C = C0 + eta * (B0 + (A0 * eta) / 2) + w * up * up * up * (t[4] as number);
    }
    out[3] = B;
    out[4] = C;
    out[5] = zeta * B - 2 * C;
  }
}
