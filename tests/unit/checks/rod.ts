import type { BaitSpec } from "../../../src/model/bait";
import { spec as drawn } from "../../lib/drawn";

/**
 * A round rod of 100 mm and 10 mm radius with flat ends: every distance has a closed form. Half of the cases lie just inside
 * what is said to be thin or within reach, half just outside.
 */
export const mm = 1e-3;
const level = (v: number) => [
  { s: 0, v },
  { s: 100 * mm, v },
];
export const rod: BaitSpec = {
  ...drawn,
  shape: {
    length: 100 * mm,
    top: level(10 * mm),
    bottom: level(-10 * mm),
    halfBreadth: level(10 * mm),
    exponentAbove: level(2),
    exponentBelow: level(2),
  },
  chambers: [],
  ballast: [],
  wires: [],
  bib: null,
  hangers: [],
  fittings: [],
  coats: [],
  tie: { x: 200 * mm, z: 0 },
};
