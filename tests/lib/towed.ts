import { assemble, type Bait, type BaitSpec, type HangerSpec } from "../../src/model/bait";
import type { Edges, ShapeSpec } from "../../src/model/shape";
import type { State, Surroundings } from "../../src/model/forces";
import { make } from "./baits";
import { ellipsoid } from "./bodies";
import { bare, knots, stuff } from "./si";

/** Baits for tests of the forces, and the water that they are towed through. All invented. SI. */

export const wood = stuff("wood", 500, "wood");
export const tin = stuff("tin", 7290);
const plastic = stuff("plastic", 1200, "plastic");
const clear = stuff("clear", 1100, "other");
const steel = stuff("steel", 8000);

/** A body with exact edges, of wood. */
export const exactBait = (edges: Edges, more: Partial<BaitSpec> = {}): Bait =>
  make(edges, { body: wood, ...more });

export const ellipsoidBait = (rx: number, ry: number, rz: number, more: Partial<BaitSpec> = {}): Bait =>
  exactBait(ellipsoid(rx, ry, rz), more);

/** The drawing of an invented 92 mm minnow, body frame. */
export const minnowShape: ShapeSpec = {
  length: 0.092,
  top: knots([
    [0, 0],
    [12, 6.2],
    [30, 9.5],
    [60, 6.8],
    [92, 1.5],
  ]),
  bottom: knots([
    [0, 0],
    [14, -6.5],
    [34, -10],
    [64, -6],
    [92, -1.5],
  ]),
  halfBreadth: knots([
    [0, 0],
    [12, 5.1],
    [36, 7.5],
    [66, 4.6],
    [92, 1.2],
  ]),
  exponentAbove: [
    { s: 0, v: 2 },
    { s: 0.092, v: 2.4 },
  ],
  exponentBelow: [
    { s: 0, v: 2 },
    { s: 0.046, v: 3 },
    { s: 0.092, v: 2 },
  ],
};

export const hanger = (name: string, x: number, z: number, hook = 0.62e-3, ring = 0.1e-3): HangerSpec => ({
  name,
  at: { x: x / 1e3, z: z / 1e3 },
  ring: { mass: ring, density: 8000 },
  hook: { mass: hook, density: 7820, size: null },
});

/** The invented minnow: ballast, wire, coats, eyes, two hooks, and a bib of the angle given (degrees) or none. */
export function minnow(bibAngle: number | null = 40, more: Partial<BaitSpec> = {}): Bait {
  return assemble(
    bare(minnowShape, {
      body: { ...wood, density: 420 },
      ballast: [
        {
          name: "belly",
          at: { x: -0.036, z: -0.0062 },
          mass: 3.0e-3,
          stuff: tin,
          where: "inside",
          hole: null,
          filler: 0,
        },
      ],
      wires: [
        {
          name: "harness",
          path: [
            { x: 0.003, z: 0 },
            { x: -0.02, z: -0.002 },
            { x: -0.096, z: 0 },
          ],
          diameter: 1e-3,
          stuff: steel,
        },
      ],
      bib:
        bibAngle === null
          ? null
          : {
              root: { x: -0.004, z: -0.003 },
              angle: (bibAngle * Math.PI) / 180,
              length: 0.016,
              width: 0.015,
              slot: 0.006,
              thickness: 1.5e-3,
              outline: "round",
              stuff: plastic,
            },
      tie: { x: 0.003, z: 0 },
      hangers: [hanger("belly", -34, -11), hanger("tail", -96, 0)],
      fittings: [
        { name: "eyes", at: { x: -0.01, z: 0.003 }, mass: 0.12e-3, stuff: plastic, where: "outside" },
      ],
      coats: [{ name: "clear", thickness: 0.15e-3, mass: null, stuff: clear }],
      ...more,
    }),
  );
}

export const freshWater: Surroundings = {
  density: 998.2,
  viscosity: 1.002e-3,
  gravity: 9.80665,
  current: { x: 0, z: 0 },
  surface: false,
  depth: Infinity,
};
export const openWater: Surroundings = { ...freshWater, surface: true };

export const at = (state: Partial<State>): State => ({ u: 0, w: 0, q: 0, pitch: 0, X: 0, Z: -1, ...state });
