import type { Sym3, Vec, Wrench } from "../base";
import type { Bait, RigidSet } from "../bait";
import type { FlatPlate } from "./plate";

/** The water around the bait and what bounds it. */
export interface Surroundings {
  /** kg/m³ */
  readonly density: number;
  /** Pa·s, dynamic */
  readonly viscosity: number;
  /** m/s² */
  readonly gravity: number;
  /** Uniform current, world frame, m/s. */
  readonly current: Vec;
  /** False: water without end above (statics under water, terminal rise). */
  readonly surface: boolean;
  /** m of water; Infinity where the bottom plays no part. */
  readonly depth: number;
}

/** Motion of the swimmer: velocity of its G in body axes, pitch rate, pitch and world place of G. */
export interface State {
  /** m/s forward, m/s up in body axes, rad/s nose-up. */
  u: number;
  w: number;
  q: number;
  /** rad */
  pitch: number;
  /** World place of G, m. */
  X: number;
  Z: number;
}

/** Numbers of one strip of the body, body frame relative to G, filled by `prepareSwimmer`. */
export interface Strip {
  /** Forward of G, m. */
  readonly x: number;
  readonly ds: number;
  readonly halfBreadth: number;
  /** Heights relative to G, m. */
  readonly top: number;
  readonly bottom: number;
  /** Whole section area (m²) and the height of its centroid relative to G. */
  readonly area: number;
  readonly centroidZ: number;
  /** f(r) of the cross-flow drag. */
  readonly shapeFactor: number;
  /** Height of greatest breadth relative to G, and the section's exponents. */
  readonly widest: number;
  readonly exponentAbove: number;
  readonly exponentBelow: number;
  /** The body's volume that this strip stands for, m³: the strips add up to its volume and centroid exactly. */
  readonly volume: number;
  /** Heave added mass over water density, a33′ ds/ρ (m³), and the lever (m, forward of G) with which it acts in pitch. */
  readonly added: number;
  readonly addedX: number;
}

/** Fixed numbers of the body as a whole that the force models read. Places relative to G, m. */
export interface Hull {
  readonly length: number;
  /** Centroid of the body's volume, and the ends of the datum line: x of station 0 and of station L. */
  readonly centroid: Vec;
  readonly nose: number;
  readonly tail: number;
  /** Height of the datum line. */
  readonly datum: number;
  /** Greatest breadth, A_f = π H B/4 (m²) and d = √(H B). */
  readonly breadth: number;
  readonly frontalArea: number;
  readonly diameter: number;
  /** η of the cross-flow drag. */
  readonly endEffect: number;
  /** Added mass over water density, surge and heave, m³. */
  readonly surge: number;
  readonly heave: number;
}

/** Fixed numbers of the bib's part outside the body. Places relative to G, m. */
export interface Blade {
  readonly root: Vec;
  readonly middle: Vec;
  readonly tip: Vec;
  /** t from root to tip, and n = t turned by +90°, the front face's normal. */
  readonly along: Vec;
  readonly normal: Vec;
  /** m² of one side. */
  readonly area: number;
  readonly width: number;
  /** Area/width. */
  readonly chord: number;
  readonly plate: FlatPlate;
  /** Added mass along the normal over water density, m³, and its lever in pitch, n_z x_b − n_x z_b. */
  readonly added: number;
  readonly lever: number;
}

/** The part of a hanger that is a point load on the swimmer (its hook is not a body of its own). */
export interface HookLoad {
  readonly name: string;
  /** Relative to G, m. */
  readonly at: Vec;
  /** kg of hook and ring together, and the m³ they displace. */
  readonly mass: number;
  readonly displaced: number;
  /** Drag area C_d·A, m². */
  readonly dragArea: number;
}

/** Coefficients a user may calibrate; nothing else of the force models is adjustable. */
export interface SwimmerOptions {
  /** Interference factor of the bib, default 1, band ±25 %. */
  readonly bibFactor: number;
  /** Munk share k_M, default 0.8, band 0.7–0.9. */
  readonly munkShare: number;
  /** Hooks (with rings) and balls as bodies of their own: then they are left out of the swimmer. */
  readonly hooksApart: boolean;
  readonly ballsApart: boolean;
  /** Side of the balls where they are part of the swimmer. */
  readonly side: import("../bait").BallSide;
  /** Number of strips along the body, 8 to 1024; null (default): as many as its shape asks for. */
  readonly strips: number | null;
}

/**
 * The fixed model that the forces read: bait, rigid set, added mass and strips, all about the rigid set's G.
 * Nothing writes to it during a step.
 */
export interface Swimmer {
  readonly bait: Bait;
  readonly options: SwimmerOptions;
  readonly rigid: RigidSet;
  readonly strips: readonly Strip[];
  readonly hooks: readonly HookLoad[];
  /** Tie eye relative to G. */
  readonly tie: Vec;
  /** Per unit water density (multiply by ρ): body alone and bib alone, about G. m³, m⁴, m⁵. */
  readonly addedBody: Sym3;
  readonly addedBib: Sym3;
  readonly hull: Hull;
  /** Null without a bib. */
  readonly blade: Blade | null;
}

/** du/dt, dw/dt, dq/dt of `State`: m/s², m/s², rad/s². */
export type Acceleration = [number, number, number];

export type ForceKey =
  "weight" | "buoyancy" | "crossflow" | "axial" | "tail" | "bib" | "hooks" | "line" | "contact";

/** Forces of the water, and weight; the others come from rooms of their own. */
export type WaterForce = Exclude<ForceKey, "line" | "contact">;

/** How a force is named and drawn. */
export interface ForceLegend {
  readonly key: ForceKey;
  /** One or two letters on the arrow. */
  readonly letter: string;
  /** Plain words of the trade. */
  readonly label: string;
  /** Okabe–Ito colour. */
  readonly colour: string;
  /** The formula in words, and its source, for 'why'. */
  readonly formula: string;
  readonly source: string;
}

/** One entry of the record that is also the legend, the arrows and the log. */
export interface ForceModel extends ForceLegend {
  /** Adds this force to `out` (body axes, about G). */
  add(swimmer: Swimmer, state: State, around: Surroundings, out: Wrench): void;
}
