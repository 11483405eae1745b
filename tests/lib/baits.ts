import { assemble } from "../../src/model/bait";
import type { AssembleOptions, Bait, BaitSpec } from "../../src/model/bait";
import { makeShape } from "../../src/model/shape";
import type { Edges, Shape, ShapeSpec } from "../../src/model/shape";
import { ellipsoid, minnow } from "./bodies";
import { at, bare, deg, g, ml, mm, stuff } from "./si";

/** Baits for tests of the account and the statics. All invented. SI. */

export const LEAD = stuff("lead", 11350); // NIST
export const STEEL = stuff("carbon steel", 7820); // PNNL-15870
export const TIN = stuff("tin", 7310); // NIST

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

/** A bait of an exact body. */
export const make = (
  edges: Edges | Shape,
  more: Partial<BaitSpec> = {},
  options: AssembleOptions = {},
): Bait => {
  const drawn = "volume" in edges ? edges : makeShape(edges);
  return assemble(bare(unusedKnots(edges.length), more), { ...options, drawn });
};

/** The ellipsoid most tests use: 100 × 20 × 24 mm. */
export const A = 50 * mm;
export const B = 10 * mm;
export const C = 12 * mm;
export const ELLIPSOID = makeShape(ellipsoid(A, B, C));
/** 4/3 π a b c */
export const ELLIPSOID_VOLUME = (4 / 3) * Math.PI * A * B * C;

/** A whole bait with one of everything: 92 mm, lipped, with a rattle. */
export const MINNOW: BaitSpec = {
  ...bare(minnow),
  name: "minnow",
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
