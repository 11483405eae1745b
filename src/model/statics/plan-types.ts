import type { BaitSpec, Stuff } from "../bait";
import type { Vec } from "../base";

/** A kind of weight in the box. SI. */
export interface PlanKind {
  readonly name: string;
  readonly stuff: Stuff;
  /** Mass of one piece (shot, slug, cut length, piece of sheet), kg. */
  readonly mass: number;
  /** Pieces at hand. */
  readonly count: number;
  readonly lead: boolean;
  /** Diameter of the hole that a piece needs, and the length of hole that each piece takes, m. */
  readonly across: number;
  readonly along: number;
  /** May go into a hole; may be fixed on the skin. */
  readonly inside: boolean;
  readonly outside: boolean;
}

export interface PlanTarget {
  /** Net buoyancy of the finished bait, kg, positive floats, and how far off is still good. */
  readonly net: number;
  readonly netTolerance: number;
  /** Rest trim under water, rad, nose-up positive, and how far off is still good; null: any. */
  readonly trim: number | null;
  readonly trimTolerance: number;
  /** Least distance from G up to B, m: the upright margin. */
  readonly leastBG: number;
}

/** Where weights may go, and how. SI. */
export interface PlanZone {
  /** Stations of the weights' middles. */
  readonly from: number;
  readonly to: number;
  /** Heights of the weights' middles above the datum line; null: as the body allows. */
  readonly lowest: number | null;
  readonly highest: number | null;
  /** Least wood or plug between a weight's hole and the skin. */
  readonly wall: number;
  /** Least distance from a hole to chamber, wire, slot, eyes, other weights. */
  readonly clearance: number;
}

export interface PlanOptions {
  /** Diameters of the drills at hand, m. */
  readonly drills: readonly number[];
  /** What closes the hole below the weight, kg/m³; 0: left open to the water is not meant, but air. */
  readonly filler: number;
  /** Greatest number of places for weights (1–3), and of pieces in one place. Defaults 2 and 6. */
  readonly places?: number;
  readonly pieces?: number;
  /** Grid of stations (default 0.5 mm) and of heights above the lowest seat (default 2 mm), m. */
  readonly stationStep?: number;
  readonly heightStep?: number;
  /** Heights tried above the lowest seat, 1 or more. Default 3. */
  readonly heights?: number;
  /** Plans to give, default 5. */
  readonly plans?: number;
  /** Draws of each plan's band, default 1000; 0: no band. */
  readonly samples?: number;
}

/** A hole drilled from below, square to the datum line, in the plane of symmetry. m, m³. */
export interface PlanHole {
  readonly diameter: number;
  /** From the bottom edge up to its inner end. */
  readonly depth: number;
  readonly volume: number;
  /** Where the drill starts. */
  readonly mouth: Vec;
  /** Length of the plug below the weight. */
  readonly plug: number;
}

/** Pieces of one kind at one place. */
export interface PlanLoad {
  /** Place in the box given. */
  readonly kind: number;
  readonly name: string;
  readonly count: number;
  /** All its pieces, kg. */
  readonly mass: number;
  readonly where: "inside" | "outside";
  /** Middle of the pieces, body frame. */
  readonly at: Vec;
  /** Null outside. */
  readonly hole: PlanHole | null;
}

export interface Plan {
  readonly loads: readonly PlanLoad[];
  readonly leadFree: boolean;
  readonly holes: number;
  readonly pieces: number;
  /** Of the finished bait: kg, rad (null where undefined), m. */
  readonly net: number;
  readonly trim: number | null;
  readonly BG: number;
  /** Metacentric height afloat, m; null where it sinks. */
  readonly GM: number | null;
  /** √((Δnet/tolerance)² + (Δtrim/tolerance)²). */
  readonly misfit: number;
  /** Net, trim and BG are all within the target. */
  readonly fits: boolean;
  /** Central 95 %: kg, rad; null without draws. */
  readonly band: {
    readonly net: readonly [number, number];
    readonly trim: readonly [number, number] | null;
    readonly chanceOfSinking: number;
  } | null;
  /** The bait with the plan's weights. */
  readonly spec: BaitSpec;
}

/** What stands in the way of a plan that fits. */
export interface PlanLimit {
  readonly what: "lift" | "pieces" | "sum" | "drill" | "wall" | "trim" | "BG";
  /** One sentence with figures and the remedy. */
  readonly text: string;
  /** The figure that binds: kg ("lift", "pieces", "sum": what is missing or off), m ("drill": diameter that is missing; "wall";
   * "trim": the nearest station of the weights' common middle that would do; "BG": the greatest found). */
  readonly value: number | null;
}

export interface PlanResult {
  /** Best first: lead-free first, then by misfit in tenths of the tolerance, then fewer places, then fewer pieces, then misfit. */
  readonly plans: readonly Plan[];
  /** Where no plan fits: the one with the least misfit; null where none can be made at all. */
  readonly nearest: Plan | null;
  /** Empty where a plan fits. */
  readonly limits: readonly PlanLimit[];
}
