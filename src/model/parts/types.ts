import type { Vec } from "../base";
import type { Shape } from "../shape";
import type { SmallChange } from "./small-changes";

/** Standard uncertainties of the inputs (docs/model.md §3). The file may give each; the defaults stand there. */
export interface UncertaintySpec {
  /** Fractions: unweighed wood 0.10, metal 0.01, plastic 0.02, coat thickness 0.20, unweighed hook or ring 0.25. */
  readonly wood: number;
  readonly metal: number;
  readonly plastic: number;
  readonly coatThickness: number;
  readonly hook: number;
  /** m: drawn lengths 0.2 mm. */
  readonly drawnLength: number;
  /** Classes whose value the file gives: this value holds, even for a material with a wider published spread. */
  readonly given?: readonly MaterialClass[];
}

export type MaterialClass = "wood" | "metal" | "plastic" | "other";

/** A material as a part uses it: its density (kg/m³), and where that number comes from. */
export interface Stuff {
  readonly name: string;
  readonly density: number;
  readonly kind: MaterialClass;
  /** True where the file gives the density inline. */
  readonly given: boolean;
  /** Published spread of the density: a standard uncertainty, as a fraction. Absent: none is known. */
  readonly spread?: number;
}

/** Where the loose balls of the chambers lie. "mid": at the middle of the length of the lower face. */
export type BallSide = { readonly end: "nose" | "tail" | "mid"; readonly face: "floor" | "roof" };

export interface Warning {
  /** JSON path in the document, for example "bait.chambers[0]". */
  readonly path: string;
  readonly text: string;
}

/** A straight piece whose volume (m³) is spread evenly over its length. Body frame, m. */
export interface Piece {
  readonly a: Vec;
  readonly b: Vec;
  readonly volume: number;
}

/** How the displaced volume of a row goes under water when the bait floats. */
export type Immersing =
  /** by sections of the body */
  | { readonly as: "body" }
  /** by the share of the bare skin that is under, at the centroid of that part of the skin */
  | { readonly as: "skin" }
  /** by the length of straight pieces that is under; each piece has its volume spread evenly from a to b */
  | { readonly as: "pieces"; readonly pieces: readonly Piece[] }
  /** as a sphere of its volume at a point */
  | { readonly as: "sphere"; readonly at: Vec; readonly volume: number }
  /** hooks and rings: always wholly under, at their eye */
  | { readonly as: "always"; readonly at: Vec; readonly volume: number };

/** What may move on its own in the swim, and is then no longer counted with the rigid bait. */
export type Apart = "hooks" | "balls";

/** One row of the account. SI, body frame. */
export interface Row {
  /** Unique label within the bait, as the account shows it ("clear", "belly hook" …). */
  readonly item: string;
  readonly group: string;
  readonly mass: number;
  /** How much of the mass closes a hole round and below a weight, kg. */
  readonly filler: number;
  readonly massCentre: Vec;
  /** First moment beyond mass × centre, kg·m: the shift of a correction; zero in all other rows. */
  readonly moment: Vec;
  /** Pitch inertia about the row's own mass centre, kg·m² (0 for points). */
  readonly inertia: number;
  /** Outside water displaced, m³, and its centre. */
  readonly displaced: number;
  readonly displacedCentre: Vec;
  readonly immersing: Immersing | null;
  /** Body material replaced, m³, and its centre (the row's own place where nothing is replaced). */
  readonly removed: number;
  readonly removedCentre: Vec;
  /** ∫ r² dV of the material replaced about its own centre, m⁵ (0 for holes, taken as points). */
  readonly removedInertia: number;
  /** Volume of the thing by itself, out of the bait, m³ (0 for a chamber; the whole outline for the body). */
  readonly ownVolume: number;
  /** Place in its list of the spec (0 for the body and the bib). */
  readonly index: number;
  /** Which of the things in one list entry: the entry itself ("item"), its loose balls, its hook, its ring. */
  readonly part: string;
  /** Set where this row may be a body of its own in the swim. */
  readonly apart: Apart | null;
}

/** A row as a part gives it. `item` is the label that the part wants; numbers that it leaves out are 0. */
export type RowDraft<Group extends string, Piece extends string> = Partial<Omit<Row, "group" | "index">> & {
  readonly item: string;
  readonly group: Group;
  readonly part: Piece;
  readonly mass: number;
  readonly massCentre: Vec;
};

/** The body that the parts are fitted to. */
export interface Bodies {
  /** As drawn: skin, coats and cuts of wires use this one. */
  readonly drawn: Shape;
  /** With the volume factor from the bench readings: its side view is the same, its breadth is not. */
  readonly shape: Shape;
}

/**
 * Something solid or hollow that other things inside the body should keep clear of. Seen in the plane of symmetry;
 * body frame, m.
 */
export type Solid = {
  /** In place of the row's label in a warning. */
  readonly label?: string;
} & (
  | {
      readonly is: "box";
      readonly minX: number;
      readonly maxX: number;
      readonly minZ: number;
      readonly maxZ: number;
    }
  /** A hole of a volume (m³): its shape is not known. */
  | { readonly is: "hole"; readonly at: Vec; readonly volume: number }
  /** Straight round rods: the whole path, and those pieces of it that lie inside the body. */
  | {
      readonly is: "rods";
      readonly path: readonly { readonly a: Vec; readonly b: Vec }[];
      readonly inside: readonly { readonly a: Vec; readonly b: Vec }[];
      readonly radius: number;
    }
  /** An eye on the skin: it takes no room inside the body. */
  | { readonly is: "eye"; readonly at: Vec }
);

/** What a figure stands for: a drawing gives each its own look. */
export type FigureRole =
  /** room in the body, and a hole that a weight does not fill */
  | "void"
  | "hole"
  | "filled"
  /** metal, a clear plate, a thing glued on, a dark spot on it, an eye that hooks hang from */
  | "metal"
  | "plate"
  | "pad"
  | "pupil"
  | "eye";

/** A ball by its centre and radius, m. */
export interface Ball {
  readonly at: Vec;
  readonly radius: number;
}

/** A plain shape of a drawing, in the plane of its view. m. */
export type Figure = {
  readonly role: FigureRole;
  /** Behind the body's outline, in the body, or before it. */
  readonly layer: "behind" | "inside" | "front";
} & (
  | { readonly is: "polygon"; readonly points: readonly Vec[] }
  | { readonly is: "path"; readonly points: readonly Vec[]; readonly thickness: number }
  | { readonly is: "circle"; readonly at: Vec; readonly radius: number }
);

/** A ring and a hook as they hang from an eye. */
export interface Hanging {
  readonly name: string;
  /** The eye, body frame, m. */
  readonly at: Vec;
  /** m; null without a ring. */
  readonly ringRadius: number | null;
  /** From the hook's eye to the bottom of its bend, m; null without a hook. */
  readonly hookLength: number | null;
  /** Between shank and point, m, where the file says it. */
  readonly gape: number | null;
}

/** What a drawing needs of one entry. Keys name fields of the entry in the document. */
export interface Sketch {
  /** As seen from the side: x forward, z up. */
  readonly figures: readonly Figure[];
  /** As seen from above: x forward, z the breadth to one side. What lies over the body's outline is in front. */
  above(): readonly Figure[];
  /** What a plane at x, square to the bait's length, cuts of it: x the breadth, z up. Each figure lies inside. */
  across(x: number): readonly Figure[];
  /** What swings below its eye. */
  readonly hanging?: Hanging;
  /** Of what covers the whole skin: its thickness, m; null where that is not known. */
  readonly cover?: number | null;
  /** Measures between two points, with the key whose label and value they show. */
  readonly dimensions: readonly { readonly key: string; readonly from: Vec; readonly to: Vec }[];
}

/** Columns of all rows but the body in one draw, by their place: kg, m³, and how far each has moved (m). */
export interface DrawnRows {
  readonly mass: Float64Array;
  readonly displaced: Float64Array;
  readonly removed: Float64Array;
  readonly own: Float64Array;
  readonly dx: Float64Array;
  readonly dz: Float64Array;
}

/** The body in one draw: scales of its length, height and breadth, and the density of its material (kg/m³). */
export interface DrawnBody {
  length: number;
  height: number;
  breadth: number;
  density: number;
}

/** Adds an uncertain input of this name. The function that it gives reads the input's error, in standard deviations. */
export type NewInput = (label: string) => () => number;

/** What a part needs to say which inputs of one of its rows are uncertain. */
export interface RowDraw {
  readonly row: Row;
  /** Place of the row in the columns, and the places of all rows of the same entry in their order. */
  readonly at: number;
  readonly siblings: readonly number[];
  readonly rows: DrawnRows;
  readonly body: DrawnBody;
  readonly uncertainty: UncertaintySpec;
  /** Standard uncertainty of a mass that was read off a scale, kg. */
  readonly weighed: number;
  /** Standard uncertainty of a material's density, as a fraction. */
  spread(stuff: Stuff): number;
  input: NewInput;
  /** Registers a function that writes this row's columns in a draw. */
  model(write: () => void): void;
  /** The rows at these places move together, by the uncertainty of drawn lengths along and up. */
  place(rows: readonly number[], label: string): void;
  /** Factor on the skin's area in the present draw, from the scales of the body. */
  skinArea(): number;
}

/** Masses of the next larger and the next smaller hook, kg; null where there is none. */
export interface NextSizes {
  readonly up: number | null;
  readonly down: number | null;
}

/**
 * One kind of part: all that the model knows about it. `PARTS` lists the kinds. `Spec` is one entry of the kind in SI and in
 * the body frame; `Group` names its groups of rows in the account, `Piece` the things that one entry may hold.
 */
export interface Part<Spec, Group extends string, Piece extends string, Many extends boolean> {
  /** True: a bait has a list of them. False: a bait has one or none. */
  readonly many: Many;
  /** In the order of the account. The first is the key of the kind in the registry. */
  readonly groups: readonly Group[];
  readonly pieces: readonly Piece[];
  /** One of the kind, in a word. */
  readonly word: string;
  /** Entries of this kind may touch one another without a warning. */
  readonly mayTouch?: boolean;
  /** Its things hang from eyes: a maker hangs them on for a tub test of an unfinished bait, and takes them off again. */
  readonly hung?: boolean;
  /** By this name a bench reading may call an entry. */
  name(spec: Spec): string;
  /** @throws BaitError for numbers that no entry can have; `path` is the entry's place in the document */
  check(spec: Spec, path: string): void;
  /**
   * Lists what is odd but possible in this body.
   *
   * @throws BaitError for what cannot be built into this body
   */
  layout?(spec: Spec, path: string, body: Shape): readonly Warning[];
  /** Rows of the account with the loose balls on a side. */
  rows(spec: Spec, bodies: Bodies, side: BallSide): readonly RowDraft<Group, Piece>[];
  /** What rolls loose in it, and where it lies. */
  loose?(spec: Spec, side: BallSide): readonly Ball[];
  /** What a pointer finds on one of its pieces, where that is not the entry itself. */
  shown?(spec: Spec, piece: Piece): string | null;
  /** How it looks from the side, from above and cut across. */
  sketch(spec: Spec, bodies: Bodies): Sketch;
  /** What other things inside the body should keep clear of. */
  keepOuts?(spec: Spec, bodies: Bodies): readonly Solid[];
  /** The entry with only some of its things; null: nothing of it is left. Absent: the entry stays while its "item" does. */
  only?(spec: Spec, has: (piece: Piece) => boolean): Spec | null;
  /** Small changes that a maker could make to an entry. `next`: the hook sizes next to its own, kg, where the box has them. */
  changes(spec: Spec, next: () => NextSizes | null): readonly SmallChange<Spec, Piece>[];
  /** Uncertain inputs of one of its rows. */
  uncertain(spec: Spec, draw: RowDraw): void;
}
