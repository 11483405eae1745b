import type { SurfacePlane, Vec } from "../base";

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

/** What lies under the surface of the whole body. */
export interface Immersion {
  /** m³. */
  readonly volume: number;
  /** Centroid of the immersed volume, body frame; the surface point nearest to it where volume is 0. */
  readonly centroid: Vec;
  /** Transverse second moment of the waterplane about the centre plane, ∫(2/3)y³ dl, m⁴, l along the surface. */
  readonly waterplaneIT: number;
  /** Area of the waterplane, m². */
  readonly waterplaneArea: number;
  /** ∫X dA (m³) and ∫X² dA (m⁴) over the waterplane, X forward along the surface from the nose tip's vertical. */
  readonly waterplaneMoment: number;
  readonly waterplaneSecond: number;
  /** Share of the bare skin under water (0–1) and that part's centroid in the body frame. */
  readonly skinFraction: number;
  readonly skinCentroid: Vec;
  /**
   * How fast skin goes under as the surface rises, dS/dl (m), and ∫X dS/dl, ∫X² dS/dl (m², m³). The skin's slope along the
   * body is left out: up to a tenth too small on a rounded body, a quarter on a blunt one. For steps towards a balance, not
   * for results.
   */
  readonly skinCut: number;
  readonly skinCutMoment: number;
  readonly skinCutSecond: number;
}

/** A body's geometry with its integrals. Immutable. */
export interface Shape {
  readonly edges: Edges;
  readonly length: number;
  /** m³ */
  readonly volume: number;
  /** Body frame. */
  readonly centroid: Vec;
  /** ∫(x−xc)² dV and ∫(z−zc)² dV, m⁵: their sum times a density is the pitch inertia about the centroid. */
  readonly secondMomentX: number;
  readonly secondMomentZ: number;
  /** Skin area (m²) with blunt faces, and its centroid in the body frame. */
  readonly skinArea: number;
  readonly skinCentroid: Vec;
  /** Greatest half-breadth, and greatest (top − bottom) at one station, m. */
  readonly maxHalfBreadth: number;
  readonly maxHeight: number;
  /** Quadrature stations from nose to tail, fine enough for 1e-5 on the integrals. */
  readonly stations: readonly Station[];
  /** Section at a station s in [0, L] (clamped to it only within round-off; outside throws RangeError). */
  section(s: number): Section;
  /** Immersed part of the body under a surface; accurate to 1e-5 of the volume at any trim. */
  immersion(surface: SurfacePlane, options?: { readonly skin?: boolean }): Immersion;
  /** Same drawing with every half-breadth multiplied (the volume factor of bench readings). Skin is kept as drawn. */
  withBreadthFactor(factor: number): Shape;
}
