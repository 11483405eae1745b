import type { BaitSpec, Stuff } from "../bait";
import type { Vec } from "../base";

/** A kind of weight in the box. SI. */
export interface PlanKind {
  readonly name: string;
  readonly stuff: Stuff;
  /** Mass of one piece (shot, slug, cut length, piece of sheet), kg. */
  readonly mass: number;
  /** True where the maker has weighed pieces of it; absent or false: its mass comes from a catalogue or from its measures. */
  readonly weighed?: boolean;
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
  /** True: the target says no trim. The one above only chooses where weights stand; the chance counts any, belly down. */
  readonly trimGuides?: boolean;
  /**
   * Least distance from G up to B that the maker asks for, m: the upright margin. Null: the maker asks for none. Then the
   * plan chooses one by how sure the trim is (`PlanResult.leastBG`), and drops it before anything that was asked for.
   */
  readonly leastBG: number | null;
}

/** Where weights may go, and how. SI. */
export interface PlanZone {
  /** Stations of the weights' middles. */
  readonly from: number;
  readonly to: number;
  /** Heights of the weights' middles above the datum line; null: as low as wall and drill allow. */
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
  /** Density of what closes the hole below the weight, kg/m³; 0: the hole is closed over air. */
  readonly filler: number;
  /** Greatest number of places for weights (1–3), and of pieces in one place. Defaults 2 and 6. */
  readonly places?: number;
  readonly pieces?: number;
  /** Grid of stations (default 0.5 mm), and steps in which a plug is made longer than the wall (default 0.1 mm), m. */
  readonly stationStep?: number;
  readonly heightStep?: number;
  /** Plans to give, default 5. */
  readonly plans?: number;
  /** Draws for each plan's chance and bands, 100 or more. Default 2000. */
  readonly samples?: number;
}

/** A hole drilled from below, square to the datum line, in the plane of symmetry. m, m³, kg. */
export interface PlanHole {
  readonly diameter: number;
  /** From the bottom edge up to its inner end. */
  readonly depth: number;
  readonly volume: number;
  /** Where the drill starts. */
  readonly mouth: Vec;
  /** Length of the plug below the weight. */
  readonly plug: number;
  /** Mass of the filler: the plug, and the room that the pieces leave beside them. */
  readonly filler: number;
}

/** Pieces of one kind at one place. */
export interface PlanLoad {
  /** Place in the box given. */
  readonly kind: number;
  readonly name: string;
  readonly count: number;
  /** All its pieces without the filler, kg. The account's row shows pieces and filler together. */
  readonly mass: number;
  readonly where: "inside" | "outside";
  /** Middle of the pieces, body frame. */
  readonly at: Vec;
  /** Null outside. */
  readonly hole: PlanHole | null;
}

/** What a plan is like under the maker's uncertainties, by seeded draws. kg, rad. */
export interface PlanChance {
  readonly samples: number;
  /**
   * Share of the draws that meet the whole target, 0–1: net buoyancy and trim within their tolerances, BG at least what was
   * asked for, belly down under water.
   */
  readonly chance: number;
  /** Central 95 %. */
  readonly net: readonly [number, number];
  /** Null where more than 5 % of the draws have no trim (BG under 0.1 mm). */
  readonly trim: readonly [number, number] | null;
  readonly chanceOfSinking: number;
}

export interface Plan {
  readonly loads: readonly PlanLoad[];
  readonly leadFree: boolean;
  /** Every piece of it is of a kind that the maker has weighed. */
  readonly weighed: boolean;
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
  /** Net, trim and BG are all within the target, and it stays upright. */
  readonly fits: boolean;
  readonly sure: PlanChance;
  /** The bait with the plan's weights. */
  readonly spec: BaitSpec;
}

/** What stands in the way of a plan that fits. */
export interface PlanLimit {
  readonly what: "lift" | "pieces" | "sum" | "drill" | "wall" | "trim" | "BG" | "upright";
  /** One sentence with figures and the remedy. */
  readonly text: string;
  /** The figure that binds: kg ("lift", "pieces", "sum": what is missing or off), m ("drill": diameter that is missing; "wall";
   * "trim": the nearest station of the weights' common middle that would do; "BG", "upright": the greatest found). */
  readonly value: number | null;
}

export interface PlanResult {
  /** Best first (`ballastPlan` says by what). */
  readonly plans: readonly Plan[];
  /** Where no plan fits: the nearest one; null where no plan can be made at all. */
  readonly nearest: Plan | null;
  /** Where no plan fits: the limit that gives way, and what else stands in the way of more choice. Empty where a plan fits. */
  readonly limits: readonly PlanLimit[];
  /**
   * The least BG that holds for the plans, m, and where it comes from: `asked` by the target, or chosen here (`own`) so that
   * the trim's 95 % band is at most ±15°.
   */
  readonly leastBG: { readonly value: number; readonly from: "asked" | "own" };
  /**
   * What a reader of the plans should know, in words: where the plan's own least BG gave way, and what the chance depends
   * on.
   */
  readonly notes: readonly string[];
}
