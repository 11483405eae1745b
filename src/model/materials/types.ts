/** The class decides a material's default standard uncertainty (docs/model.md §3): wood 10 %, metal 1 %, plastic 2 %. */
export type MaterialClass = "wood" | "metal" | "plastic" | "other";

/** A material with its published density. */
export interface Material {
  /** The key that scenarios use. */
  readonly name: string;
  /** Other names that find the same entry. */
  readonly otherNames?: readonly string[];
  /** kg/m³. */
  readonly density: number;
  /** Published spread, kg/m³. */
  readonly range?: readonly [number, number];
  readonly kind: MaterialClass;
  /** Standard uncertainty as a share of the density, where it is known to be wider than the class's. */
  readonly relativeUncertainty?: number;
  readonly source: string;
  readonly note?: string;
}

/** What a fishing line is made of. */
export interface LineMaterial {
  readonly name: string;
  readonly otherNames?: readonly string[];
  /** kg/m³. */
  readonly density: number;
  readonly range?: readonly [number, number];
  /** Young's modulus in tension, Pa: EA = E·π d²/4. */
  readonly modulus: number;
  readonly source: string;
  readonly note?: string;
}
