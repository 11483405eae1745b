import type { Vec } from "../base";
import type { Ball, BallSide, Item, PartSpecs, Stuff, UncertaintySpec, Warning } from "../parts";
import type { Shape, ShapeSpec } from "../shape";

export interface BenchReading {
  readonly kind: "displacement" | "weighing";
  /** kg shown by the scale. */
  readonly reading: number;
  readonly resolution: number;
  /** °C (ITS-90), displacement only. */
  readonly tapTemperature: number | null;
  /** Groups or names of single items on the scale. */
  readonly with: readonly string[];
  /** Correct the reading for air buoyancy. */
  readonly air: boolean;
  /**
   * Groups or names of what was not yet cut into the body when the reading was taken (holes of ballast, chambers, the
   * slot): a blank that was weighed before it was drilled. Absent: the body was as it is now.
   */
  readonly before?: readonly string[];
  /** Pins of the pusher under water with the piece, m³ (displacement only); absent: none. */
  readonly pusher?: number;
}

/**
 * What a tub reading adds to the computed account (docs/model.md §3, Bench readings). It displaces nothing. Its mass stands
 * at the G that the bait has without it, so that only `shift` moves G.
 */
export interface CorrectionSpec {
  readonly name: string;
  /** kg, below 0 where the bait is lighter than computed. */
  readonly mass: number;
  /** Further shift of the whole bait's G, m (x forward, z up). */
  readonly shift: Vec;
  /**
   * Standard uncertainty of the reading, as net buoyancy (kg) and as the place of G (m); null where the reading tells
   * nothing about it.
   */
  readonly deviation: { readonly mass: number | null; readonly x: number | null; readonly z: number | null };
  /** Groups or names of items that were not on the bait when it was read. */
  readonly without: readonly string[];
}

/** Everything a maker says about one bait, in SI, body frame. Made by `compile(document)`. The parts come from `PARTS`. */
export interface BaitSpec extends PartSpecs {
  readonly name: string;
  readonly shape: ShapeSpec;
  readonly body: Stuff;
  readonly tie: Vec;
  readonly bench: readonly BenchReading[];
  /** Corrections by tub readings, each a row of the account; absent: none. */
  readonly corrections?: readonly CorrectionSpec[];
  readonly uncertainty: UncertaintySpec;
}

/** Mass, displacement and inertia of a chosen set of items taken as one rigid body. */
export interface RigidSet {
  readonly mass: number;
  readonly G: Vec;
  /** About G, kg·m². */
  readonly inertia: number;
  /** m³ and its centre. */
  readonly displaced: number;
  readonly B: Vec;
}

/** One bench reading beside what the reconciled bait would show on the same scale, kg. */
export interface BenchResidual {
  readonly kind: "displacement" | "weighing";
  readonly reading: number;
  readonly model: number;
  /** reading − model. */
  readonly residual: number;
  /** True where the reading entered the volume factor or the body density (the body was on the scale). */
  readonly used: boolean;
}

/** The assembled bait: fixed, immutable. */
export interface Bait {
  readonly spec: BaitSpec;
  /** Volume factor applied. */
  readonly shape: Shape;
  /** As drawn (skin and coats use this one). */
  readonly drawn: Shape;
  /** kg/m³ of the body material after the bench readings. */
  readonly bodyDensity: number;
  readonly volumeFactor: number;
  /** The bench readings in their order, with residuals. */
  readonly bench: readonly BenchResidual[];
  /** All items with the balls at `mid` on the floor; balls have their own rows. */
  readonly items: readonly Item[];
  /** The same rows with the balls of every chamber on the given side. */
  itemsWith(side: BallSide): readonly Item[];
  /** Every loose ball (in the order of what holds them) where it lies on the given side, body frame, m. */
  balls(side: BallSide): readonly Ball[];
  /** The whole bait as one rigid body. */
  rigid(side: BallSide): RigidSet;
  /**
   * The bait without hooks and rings, without loose balls, or without both (they are bodies of their own in the
   * swim). Balls that stay lie on `side`, by default at mid-length on the floor.
   */
  rigidWithout(parts: { readonly hooks: boolean; readonly balls: boolean }, side?: BallSide): RigidSet;
  readonly warnings: readonly Warning[];
}
