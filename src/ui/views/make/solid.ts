import type { Scenario } from "../../../document";
import type { MadeFile, SolidFigures } from "../../../sheet";

/** What the page and the worker that makes solids say to each other. */
export interface SolidAsked {
  readonly scenario: Scenario;
  /** Drills at hand; none: the usual ones. */
  readonly drills_mm: readonly number[];
}

export interface SolidMade {
  readonly figures: SolidFigures;
  /** Of one half: edges, and those that do not join two triangles. */
  readonly edges: number;
  readonly open: number;
  readonly cuts: readonly string[];
  /** Weights whose holes come out of the wood. */
  readonly out: readonly string[];
  readonly triangles: number;
  readonly files: readonly MadeFile[];
}

export type SolidTold =
  /** `what`: "library", "files", or the name of what is being cut. */
  | { readonly kind: "progress"; readonly done: number; readonly of: number; readonly what: string }
  | { readonly kind: "made"; readonly made: SolidMade }
  | { readonly kind: "failed"; readonly why: string };
