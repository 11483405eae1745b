import type { SurfacePlane, Vec } from "../base";
import type { BallSide, BenchResidual, Group, Warning } from "../bait";

/** Attitude of rest under water: B stands vertically above G. Body frame, SI. */
export interface RestTrim {
  /** rad, nose-up positive, in (−π, π]; null where BG < 0.1 mm. */
  readonly pitch: number | null;
  /** Further attitudes that agree with a resting place of the loose balls, rad, nearest first. */
  readonly others: readonly number[];
  /** Where the loose balls lie at `pitch`. */
  readonly side: BallSide;
  readonly G: Vec;
  readonly B: Vec;
  /** Distance from G to B, m. */
  readonly BG: number;
}

/** The bait held at one trim on the surface, free in height: the force balances, the moment may not. SI. */
export interface Afloat {
  /** rad, nose-up positive. */
  readonly pitch: number;
  /** The surface as the body has it; its level is minus the nose tip's height above the water, m. */
  readonly surface: SurfacePlane;
  readonly side: BallSide;
  readonly G: Vec;
  /** Centroid of everything immersed, body frame. */
  readonly B: Vec;
  /** Everything immersed, m³. */
  readonly volume: number;
  /** Immersed over displaced volume, everything counted. */
  readonly immersedFraction: number;
  /** Depth of the lowest point of the bare outline, m. */
  readonly draft: number;
  /** Bare body's waterline: transverse second moment ∫(2/3)y³dl (m⁴) and area (m²). */
  readonly waterplaneIT: number;
  readonly waterplaneArea: number;
  /** Transverse metacentric height (Z_B − Z_G) + I_T/V, m; negative: it lies on its side. */
  readonly GM: number;
  /** Righting lever in trim, X_B − X_G in world axes, m: above 0 lifts the nose. Times the weight, the moment. */
  readonly lever: number;
}

/** Equilibrium afloat; `others` are the further stable trims, in the order of their distance. */
export interface Floating extends Afloat {
  readonly others: readonly Afloat[];
}

/** One row of the account in the water at hand; rows add up to the totals. kg, m³. */
export interface AccountRow {
  readonly item: string;
  readonly group: Group;
  readonly mass: number;
  /** How much of the mass is filler in the hole of a weight, kg. */
  readonly filler: number;
  readonly displaced: number;
  /** The mass that the water carries, less its own mass, kg: above 0 it lifts. */
  readonly net: number;
}

/** Stability in roll. */
export interface Upright {
  /** Under water: righting lever GZ = BG·sin(heel), m. */
  readonly BG: number;
  /** Afloat: GM at the floating trim, m; null where it sinks. */
  readonly GM: number | null;
  /** Under water at rest the belly is down (|rest trim| < 90°); null where the rest trim is undefined. */
  readonly bellyDownUnderWater: boolean | null;
  /** Afloat it does not lie over; null where it sinks. */
  readonly uprightAfloat: boolean | null;
}

/** Everything of docs/model.md §3 and §5 but rise and bands. SI. */
export interface Statics {
  /** kg/m³ of the water. */
  readonly density: number;
  readonly mass: number;
  readonly displaced: number;
  /** kg, positive floats. */
  readonly netBuoyancy: number;
  /** Bare body: outline's volume with its volume factor (m³) and skin as drawn (m²). */
  readonly bodyVolume: number;
  readonly skinArea: number;
  readonly G: Vec;
  readonly B: Vec;
  readonly BG: number;
  readonly rest: RestTrim;
  /** Null where it sinks. */
  readonly floating: Floating | null;
  readonly upright: Upright;
  readonly account: readonly AccountRow[];
  readonly bench: {
    readonly bodyDensity: number;
    readonly volumeFactor: number;
    readonly residuals: readonly BenchResidual[];
  };
  /** What is odd about the bait. */
  readonly warnings: readonly Warning[];
  /** What a reader should know beside the figures, in words. */
  readonly notes: readonly string[];
}
