import { noParts } from "../../../src/model/parts";
import type { BaitSpec, Stuff } from "../../../src/model/bait";
import { assemble } from "../../../src/model/bait";
import type { AssembleOptions, Bait } from "../../../src/model/bait";
import type { Vec } from "../../../src/model/base";
import { makeShape } from "../../../src/model/shape";
import type { Edges, Shape, ShapeSpec } from "../../../src/model/shape";

/** Bodies and specs for tests of the account and the statics. All invented. SI. */

export const mm = 1e-3;
export const ml = 1e-6;
export const g = 1e-3;
export const deg = Math.PI / 180;

/** Body point from station and height in mm, as the file writes it. */
export const at = (station: number, height: number): Vec => ({ x: -station * mm, z: height * mm });

export const stuff = (name: string, density: number, kind: Stuff["kind"] = "metal"): Stuff => ({
  name,
  density,
  kind,
  given: false,
});

export const WOOD = stuff("wood", 400, "wood");
export const LEAD = stuff("lead", 11350); // NIST
export const STEEL = stuff("carbon steel", 7820); // PNNL-15870
export const TIN = stuff("tin", 7310); // NIST

/** Edges of the exact ellipsoid with semi-axes a (along), b (across), c (up), its middle at height 0. */
export const ellipsoidEdges = (a: number, b: number, c: number): Edges => ({
  length: 2 * a,
  breaks: [0, Math.PI],
  top: (phi) => c * Math.sin(phi),
  bottom: (phi) => -c * Math.sin(phi),
  halfBreadth: (phi) => b * Math.sin(phi),
  widest: () => 0,
  exponentAbove: () => 2,
  exponentBelow: () => 2,
});

/** A prism of one section along the datum line, both ends cut square. */
export const prismEdges = (
  length: number,
  halfBreadth: number,
  halfHeight: number,
  exponent: number,
): Edges => ({
  length,
  breaks: [0, Math.PI],
  top: () => halfHeight,
  bottom: () => -halfHeight,
  halfBreadth: () => halfBreadth,
  widest: () => 0,
  exponentAbove: () => exponent,
  exponentBelow: () => exponent,
});

/** Knots that stand in a spec whose body is given by exact edges. */
const unusedKnots = (length: number): ShapeSpec => ({
  length,
  top: [
    { s: 0, v: 0 },
    { s: length, v: 1e-3 },
  ],
  bottom: [
    { s: 0, v: 0 },
    { s: length, v: -1e-3 },
  ],
  halfBreadth: [
    { s: 0, v: 0 },
    { s: length, v: 1e-3 },
  ],
  exponentAbove: [{ s: 0, v: 2 }],
  exponentBelow: [{ s: 0, v: 2 }],
});

/** A bare body and nothing else; `more` adds to it. */
export const bare = (length: number, more: Partial<BaitSpec> = {}): BaitSpec => ({
  name: "test",
  shape: unusedKnots(length),
  body: WOOD,
  ...noParts(),
  tie: { x: 0, z: 0 },
  bench: [],
  uncertainty: {
    wood: 0.1,
    metal: 0.01,
    plastic: 0.02,
    coatThickness: 0.2,
    hook: 0.25,
    drawnLength: 0.2 * mm,
  },
  ...more,
});

export const make = (
  edges: Edges | Shape,
  more: Partial<BaitSpec> = {},
  options: AssembleOptions = {},
): Bait => {
  const drawn = "volume" in edges ? edges : makeShape(edges);
  return assemble(bare(edges.length, more), { ...options, drawn });
};

/** The ellipsoid most tests use: 100 × 20 × 24 mm. */
export const A = 50 * mm;
export const B = 10 * mm;
export const C = 12 * mm;
export const ELLIPSOID = makeShape(ellipsoidEdges(A, B, C));
/** 4/3 π a b c */
export const ELLIPSOID_VOLUME = (4 / 3) * Math.PI * A * B * C;

const knots = (list: readonly (readonly [number, number])[]): { s: number; v: number }[] =>
  list.map(([s, v]) => ({ s: s * mm, v: v * mm }));

/** A whole bait with one of everything: 92 mm, lipped, with a rattle. */
export const MINNOW: BaitSpec = {
  ...bare(92 * mm),
  name: "minnow",
  shape: {
    length: 92 * mm,
    top: knots([
      [0, 0],
      [30, 10.5],
      [92, 1.5],
    ]),
    bottom: knots([
      [0, 0],
      [34, -11],
      [92, -1.5],
    ]),
    halfBreadth: knots([
      [0, 0],
      [36, 7.5],
      [92, 1.2],
    ]),
    exponentAbove: [
      { s: 0, v: 2 },
      { s: 92 * mm, v: 2 },
    ],
    exponentBelow: [
      { s: 0, v: 2 },
      { s: 46 * mm, v: 3 },
      { s: 92 * mm, v: 2 },
    ],
  },
  body: stuff("alder", 420, "wood"),
  chambers: [
    {
      name: "rattle",
      from: 40 * mm,
      to: 58 * mm,
      height: -1 * mm,
      tall: 8 * mm,
      wide: 6 * mm,
      balls: { count: 4, diameter: 4 * mm, stuff: STEEL },
    },
  ],
  ballast: [
    {
      name: "belly",
      at: at(30, -7),
      mass: 4.2 * g,
      stuff: TIN,
      where: "inside",
      hole: 0.62 * ml,
      filler: 1100,
    },
  ],
  wires: [
    {
      name: "harness",
      path: [at(-3, 0), at(20, -4), at(92, 0), at(96, 0)],
      diameter: 1 * mm,
      stuff: stuff("stainless steel", 8000),
    },
  ],
  bib: {
    root: at(4, -2),
    angle: 40 * deg,
    length: 18 * mm,
    width: 16 * mm,
    slot: 6 * mm,
    thickness: 1.5 * mm,
    outline: "round",
    stuff: stuff("polycarbonate", 1200, "plastic"),
  },
  tie: at(-2, -1),
  hangers: [
    {
      name: "belly",
      at: at(34, -12),
      ring: { mass: 0.1 * g, density: 8000 },
      hook: { mass: 0.62 * g, density: 7820, size: "6" },
    },
    {
      name: "tail",
      at: at(95, 0),
      ring: { mass: 0.1 * g, density: 8000 },
      hook: { mass: 0.5 * g, density: 7820, size: "8" },
    },
  ],
  fittings: [
    { name: "eyes", at: at(10, 3), mass: 0.12 * g, stuff: stuff("resin", 1200, "other"), where: "outside" },
  ],
  coats: [
    { name: "sealer", thickness: null, mass: 0.2 * g, stuff: stuff("sealer", 1050, "other") },
    { name: "clear", thickness: 0.15 * mm, mass: null, stuff: stuff("epoxy", 1100, "other") },
  ],
};
