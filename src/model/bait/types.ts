import type { Vec } from "../base";
import type { Shape, ShapeSpec } from "../shape";

/** Standard relative or absolute uncertainties of the inputs (model page section 3); all optional, defaults there. */
export interface UncertaintySpec {
  /** Relative: unweighed wood 0.10, metal 0.01, plastic 0.02, coat thickness 0.20, unweighed hook or ring 0.25. */
  readonly wood: number;
  readonly metal: number;
  readonly plastic: number;
  readonly coatThickness: number;
  readonly hook: number;
  /** Absolute, m: drawn lengths 0.2 mm. */
  readonly drawnLength: number;
}

export type MaterialClass = "wood" | "metal" | "plastic" | "other";

/** A material as an item uses it: its density (kg/m³), and where that number comes from. */
export interface Stuff {
  readonly name: string;
  readonly density: number;
  readonly kind: MaterialClass;
  /** True where the file gives the density inline. */
  readonly given: boolean;
}

export interface BallsSpec {
  readonly count: number;
  readonly diameter: number;
  readonly stuff: Stuff;
}
export interface ChamberSpec {
  readonly name: string;
  /** Stations, m; from < to. */
  readonly from: number;
  readonly to: number;
  /** Height of the box's middle, m above the datum line. */
  readonly height: number;
  readonly tall: number;
  readonly wide: number;
  readonly balls: BallsSpec | null;
}
export interface BallastSpec {
  readonly name: string;
  readonly at: Vec;
  readonly mass: number;
  readonly stuff: Stuff;
  readonly where: "inside" | "outside";
  /** m³, or null: the slug's own volume. */
  readonly hole: number | null;
  /** kg/m³ of what fills the rest of the hole (0: air). */
  readonly filler: number;
}
export interface WireSpec {
  readonly name: string;
  readonly path: readonly Vec[];
  readonly diameter: number;
  readonly stuff: Stuff;
}
export interface BibSpec {
  readonly root: Vec;
  /** β, rad: 0 straight ahead along the datum line, opening downward. */
  readonly angle: number;
  /** Length outside the body, m. */
  readonly length: number;
  readonly width: number;
  /** Length in the slot, m. */
  readonly slot: number;
  readonly thickness: number;
  readonly outline: "square" | "round";
  readonly stuff: Stuff;
}
export interface HangerSpec {
  readonly name: string;
  readonly at: Vec;
  /** `weighed`: its mass was read off a scale; absent or false: a catalogue value, with its wide uncertainty. */
  readonly ring: { readonly mass: number; readonly density: number; readonly weighed?: boolean } | null;
  readonly hook: {
    readonly mass: number;
    readonly density: number;
    readonly size: string | null;
    readonly weighed?: boolean;
  } | null;
}
export interface FittingSpec {
  readonly name: string;
  readonly at: Vec;
  readonly mass: number;
  readonly stuff: Stuff;
  readonly where: "inside" | "outside";
}
export interface CoatSpec {
  readonly name: string;
  /** One of the two is null. m, kg. */
  readonly thickness: number | null;
  readonly mass: number | null;
  readonly stuff: Stuff;
}
export type Group =
  | "body"
  | "chambers"
  | "balls"
  | "ballast"
  | "wires"
  | "bib"
  | "hangers"
  | "fittings"
  | "coats"
  | "corrections";

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
   * Groups or names of what was not yet cut into the body when it was read (holes of ballast, chambers, the slot): a blank
   * weighed before it was drilled. Absent: the body was as it is.
   */
  readonly before?: readonly string[];
  /** Pins of the pusher under water with the piece, m³ (displacement only); absent: none. */
  readonly pusher?: number;
}

/**
 * What a tub reading says beyond the computed account (docs/model.md §3, Bench readings). It displaces nothing. Its mass
 * stands at the G that the bait has without it, so that only `shift` moves G.
 */
export interface CorrectionSpec {
  readonly name: string;
  /** kg, below 0 where the bait is lighter than computed. */
  readonly mass: number;
  /** Further shift of the whole bait's G, m (x forward, z up). */
  readonly shift: Vec;
  /**
   * Standard uncertainty of the reading, as net buoyancy (kg) and as the place of G (m); null where the reading says
   * nothing about it.
   */
  readonly deviation: { readonly mass: number | null; readonly x: number | null; readonly z: number | null };
  /** Groups or names of items that were not on the bait when it was read. */
  readonly without: readonly string[];
}

/** Everything a maker says about one bait, in SI, body frame. Made by `compile(document)`. */
export interface BaitSpec {
  readonly name: string;
  readonly shape: ShapeSpec;
  readonly body: Stuff;
  readonly chambers: readonly ChamberSpec[];
  readonly ballast: readonly BallastSpec[];
  readonly wires: readonly WireSpec[];
  readonly bib: BibSpec | null;
  readonly tie: Vec;
  readonly hangers: readonly HangerSpec[];
  readonly fittings: readonly FittingSpec[];
  readonly coats: readonly CoatSpec[];
  readonly bench: readonly BenchReading[];
  /** Corrections by tub readings, each a row of the account; absent: none. */
  readonly corrections?: readonly CorrectionSpec[];
  readonly uncertainty: UncertaintySpec;
}

/** How an item's displaced volume goes under when the bait floats. */
export type Immersing =
  /** by sections of the body */
  | { readonly as: "body" }
  /** by the share of the bare skin under, at that part's centroid */
  | { readonly as: "skin" }
  /** by the length under of straight pieces from a to b, volume spread evenly over each */
  | {
      readonly as: "pieces";
      readonly pieces: readonly { readonly a: Vec; readonly b: Vec; readonly volume: number }[];
    }
  /** as a sphere of its volume at a point */
  | { readonly as: "sphere"; readonly at: Vec; readonly volume: number }
  /** hooks and rings: always wholly under, at their eye */
  | { readonly as: "always"; readonly at: Vec; readonly volume: number };

/** One row of the account. SI. */
export interface Item {
  /** Unique label within the bait, as shown in the account ("clear", "belly hook" …). */
  readonly item: string;
  readonly group: Group;
  readonly mass: number;
  readonly massCentre: Vec;
  /** First moment beyond mass × centre, kg·m: what a correction shifts; nothing in all other rows. */
  readonly moment: Vec;
  /** Pitch inertia about the item's own mass centre, kg·m² (0 for points). */
  readonly inertia: number;
  /** Outside water displaced, m³, and its centre. */
  readonly displaced: number;
  readonly displacedCentre: Vec;
  readonly immersing: Immersing | null;
  /** Body material replaced, m³, and its centre (the item's own place where nothing is replaced). */
  readonly removed: number;
  readonly removedCentre: Vec;
  /** ∫ r² dV of the material replaced about its own centre, m⁵ (0 for holes, taken as points). */
  readonly removedInertia: number;
  /** Volume of the item by itself, out of the bait, m³ (0 for a chamber; the whole outline for the body). */
  readonly ownVolume: number;
  /** Place in its list of the spec (0 for the body and the bib). */
  readonly index: number;
  /** Which of the things one list entry holds: "item" itself, its loose balls, its hook, its ring. */
  readonly part: "item" | "balls" | "hook" | "ring";
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

/** Where the loose balls of the chambers lie. "mid": at the middle of the length of the lower face. */
export type BallSide = { readonly end: "nose" | "tail" | "mid"; readonly face: "floor" | "roof" };

export interface Warning {
  /** JSON path in the document, e.g. "bait.chambers[0]". */
  readonly path: string;
  readonly text: string;
}

/** One bench reading beside what the reconciled bait would show on the same scale, kg. */
export interface BenchResidual {
  readonly kind: "displacement" | "weighing";
  readonly reading: number;
  readonly model: number;
  /** reading − model. */
  readonly residual: number;
  /** True where the reading had a say in the volume factor or the body density (the body was on the scale). */
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
  /** Centres of every ball of every chamber (in chamber order) on the given side, body frame, m. */
  ballCentres(side: BallSide): readonly Vec[];
  /** The whole bait as one rigid body. */
  rigid(side: BallSide): RigidSet;
  /**
   * The bait without hooks and rings, without loose balls, or without both (they are bodies of their own in the
   * swim). Balls that stay lie on `side`, by default at mid-length on the floor.
   */
  rigidWithout(parts: { readonly hooks: boolean; readonly balls: boolean }, side?: BallSide): RigidSet;
  readonly warnings: readonly Warning[];
}
