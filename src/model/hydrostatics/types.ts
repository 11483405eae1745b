import type { Vec } from "../base";
import type { Bait, BallSide, RigidSet } from "../bait";

/** What the surface can cut of a swimmer in motion. Places relative to the G of its rigid set, m. */
export interface Cuttable {
  readonly bait: Bait;
  readonly options: { readonly side: BallSide };
  readonly rigid: RigidSet;
  /** The body's strips from nose to tail: thickness (m), heights, and the volume that each stands for (m³). */
  readonly strips: readonly {
    readonly x: number;
    readonly ds: number;
    readonly top: number;
    readonly bottom: number;
    readonly volume: number;
  }[];
  /** Hooks that are not bodies of their own: eye, mass with ring (kg), volume (m³). */
  readonly hooks: readonly { readonly at: Vec; readonly mass: number; readonly displaced: number }[];
  /** The bib's part outside the body; null without one. */
  readonly blade: { readonly root: Vec; readonly tip: Vec } | null;
}
