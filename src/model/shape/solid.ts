import type { Vec } from "../base";
import type { Prefix } from "./integrals";
import type { Skin } from "./skin";
import type { SectionTable } from "./table";
import type { Edges, Section, Station } from "./types";

/** A drawn body as tables: its sections, their running sums from the nose, its centroid and its skin. */
export interface Solid {
  readonly table: SectionTable;
  readonly prefix: Prefix;
  readonly centroid: Vec;
  readonly skin: Skin;
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
  /** The tables of the body as it was drawn, and the factor by which this one is broader than that. */
  readonly solid: Solid;
  readonly breadthFactor: number;
  /** Same drawing with every half-breadth multiplied (the volume factor of bench readings). Skin is kept as drawn. */
  withBreadthFactor(factor: number): Shape;
}
