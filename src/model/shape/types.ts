/** One knot of a curve along the bait: station s (m aft of the nose tip) and its value (m, or an exponent). */
export interface Knot {
  readonly s: number;
  readonly v: number;
}

/** The drawn body, as knots. Edges run from station 0 to `length`, stations strictly rising. */
export interface ShapeSpec {
  readonly length: number;
  readonly top: readonly Knot[];
  readonly bottom: readonly Knot[];
  readonly halfBreadth: readonly Knot[];
  /** Height of greatest breadth; absent: midway between the edges. */
  readonly widest?: readonly Knot[] | undefined;
  /** Superellipse exponents, linear in φ, constant beyond their ends. */
  readonly exponentAbove: readonly Knot[];
  readonly exponentBelow: readonly Knot[];
}

/**
 * The body's edges as functions of φ, s = L(1 − cos φ)/2, φ in [0, π]. Made from knots by
 * `edgesFromKnots`, or given exactly (tests with closed forms do that). `breaks` are the φ of all
 * knots, 0 and π included, rising: between two breaks every curve is smooth, so quadrature panels end there.
 */
export interface Edges {
  readonly length: number;
  readonly breaks: readonly number[];
  top(phi: number): number;
  bottom(phi: number): number;
  halfBreadth(phi: number): number;
  widest(phi: number): number;
  exponentAbove(phi: number): number;
  exponentBelow(phi: number): number;
}

/** One cross-section, two half superellipses that meet at `widest`. Lengths m; heights above the datum line. */
export interface Section {
  readonly s: number;
  readonly top: number;
  readonly bottom: number;
  readonly widest: number;
  readonly halfBreadth: number;
  readonly exponentAbove: number;
  readonly exponentBelow: number;
}

/** A quadrature station: a section, its weight ds (m) and its whole area and first moment. */
export interface Station extends Section {
  /** Integration weight: ∫ f ds ≈ Σ f·ds. */
  readonly ds: number;
  /** Section area, m². */
  readonly area: number;
  /** Height of the section's centroid, m. */
  readonly centroidZ: number;
}

/** What lies under the surface of one section. */
export interface SectionImmersion {
  /** m² under the surface. */
  area: number;
  /** First moment of that area about the datum line, m³ (area × centroid height). */
  momentZ: number;
  /** Half-breadth at the surface, m; 0 where the section is wholly under or above. */
  waterHalfBreadth: number;
}
