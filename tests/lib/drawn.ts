import { assemble, type Bait, type BaitSpec } from "../../src/model/bait";
import type { ShapeSpec } from "../../src/model/shape";
import { at, bare, even, knots, mm, stuff } from "./si";

/** An invented bait with one of every part that is drawn. SI. */

const shape: ShapeSpec = {
  length: 80 * mm,
  top: knots([
    [0, 0],
    [30, 10],
    [80, 2],
  ]),
  bottom: knots([
    [0, 0],
    [30, -10],
    [80, -2],
  ]),
  halfBreadth: knots([
    [0, 0],
    [30, 7],
    [80, 1],
  ]),
  exponentAbove: even(2),
  exponentBelow: even(2),
};

export const spec: BaitSpec = {
  ...bare(shape),
  name: "Drawn 80",
  body: stuff("wood", 420, "wood"),
  chambers: [
    {
      name: "rattle",
      from: 40 * mm,
      to: 56 * mm,
      height: -1 * mm,
      tall: 6 * mm,
      wide: 5 * mm,
      balls: { count: 2, diameter: 4 * mm, stuff: stuff("steel", 7820) },
    },
  ],
  ballast: [
    {
      name: "belly",
      at: at(28, -5),
      mass: 4e-3,
      stuff: stuff("tin", 7310),
      where: "inside",
      hole: 0.7e-6,
      filler: 1100,
    },
    {
      name: "strip",
      at: at(60, -6),
      mass: 0.5e-3,
      stuff: stuff("tin", 7310),
      where: "outside",
      hole: null,
      filler: 0,
    },
  ],
  // In at the blunt tail (station 80), out through the nose tip region at station 0, height 0.
  wires: [{ name: "harness", path: [at(-4, 0), at(84, 0)], diameter: 1 * mm, stuff: stuff("steel", 8000) }],
  bib: {
    root: at(5, -3),
    angle: Math.PI / 2,
    length: 15 * mm,
    width: 14 * mm,
    slot: 2 * mm,
    thickness: 1 * mm,
    outline: "square",
    stuff: stuff("plastic", 1200, "plastic"),
  },
  tie: at(-4, 0),
  hangers: [
    {
      name: "belly",
      at: at(30, -11),
      ring: { mass: 0.1e-3, density: 8000 },
      hook: { mass: 0.37e-3, density: 7820, size: "6" },
    },
    { name: "bare", at: at(50, -10), ring: null, hook: null },
    { name: "tail", at: at(84, 0), ring: null, hook: { mass: 0.37e-3 * 8, density: 7820, size: null } },
  ],
  fittings: [
    { name: "eyes", at: at(9, 2), mass: 0.12e-3, stuff: stuff("plastic", 1200, "plastic"), where: "outside" },
  ],
};

export const bait: Bait = assemble(spec);
