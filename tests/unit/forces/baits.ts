import { noParts } from "../../../src/model/parts";
import { assemble, type Bait, type BaitSpec, type HangerSpec, type Stuff } from "../../../src/model/bait";
import { makeShape, type Edges, type ShapeSpec } from "../../../src/model/shape";
import type { State, Surroundings } from "../../../src/model/forces";

export const wood: Stuff = { name: "wood", density: 500, kind: "wood", given: true };
export const tin: Stuff = { name: "tin", density: 7290, kind: "metal", given: true };
const plastic: Stuff = { name: "plastic", density: 1200, kind: "plastic", given: true };
const clear: Stuff = { name: "clear", density: 1100, kind: "other", given: true };
const steel: Stuff = { name: "steel", density: 8000, kind: "metal", given: true };

const uncertainty = {
  wood: 0.1,
  metal: 0.01,
  plastic: 0.02,
  coatThickness: 0.2,
  hook: 0.25,
  drawnLength: 2e-4,
};
const round = [{ s: 0, v: 2 }];

/** A spec with nothing fitted; `shape` is needed for the type and drawn only where no exact shape is given. */
export function spec(shape: ShapeSpec, more: Partial<BaitSpec> = {}): BaitSpec {
  return {
    name: "test",
    shape,
    body: wood,
    ...noParts(),
    tie: { x: 0, z: 0 },
    bench: [],
    uncertainty,
    ...more,
  };
}

/** The exact ellipsoid with semi-axes rx (along), ry, rz, nose at the origin, as edges in φ. */
function ellipsoidEdges(rx: number, ry: number, rz: number): Edges {
  return {
    length: 2 * rx,
    breaks: [0, Math.PI],
    top: (phi) => rz * Math.sin(phi),
    bottom: (phi) => -rz * Math.sin(phi),
    halfBreadth: (phi) => ry * Math.sin(phi),
    widest: () => 0,
    exponentAbove: () => 2,
    exponentBelow: () => 2,
  };
}

/** A body with exact edges; the knots of the spec are stand-ins that the layout checks may read. */
export function exactBait(edges: Edges, more: Partial<BaitSpec> = {}): Bait {
  const L = edges.length;
  const mid = Math.PI / 2;
  const drawing: ShapeSpec = {
    length: L,
    top: [
      { s: 0, v: edges.top(0) },
      { s: L / 2, v: edges.top(mid) },
      { s: L, v: edges.top(Math.PI) },
    ],
    bottom: [
      { s: 0, v: edges.bottom(0) },
      { s: L / 2, v: edges.bottom(mid) },
      { s: L, v: edges.bottom(Math.PI) },
    ],
    halfBreadth: [
      { s: 0, v: edges.halfBreadth(0) },
      { s: L / 2, v: edges.halfBreadth(mid) },
      { s: L, v: edges.halfBreadth(Math.PI) },
    ],
    exponentAbove: round,
    exponentBelow: round,
  };
  return assemble(spec(drawing, more), { drawn: makeShape(edges) });
}

export const ellipsoidBait = (rx: number, ry: number, rz: number, more: Partial<BaitSpec> = {}): Bait =>
  exactBait(ellipsoidEdges(rx, ry, rz), more);

const mm = (points: readonly (readonly [number, number])[]) =>
  points.map(([s, v]) => ({ s: s / 1e3, v: v / 1e3 }));

/** The drawing of an invented 92 mm minnow, body frame. */
export const minnowShape: ShapeSpec = {
  length: 0.092,
  top: mm([
    [0, 0],
    [12, 6.2],
    [30, 9.5],
    [60, 6.8],
    [92, 1.5],
  ]),
  bottom: mm([
    [0, 0],
    [14, -6.5],
    [34, -10],
    [64, -6],
    [92, -1.5],
  ]),
  halfBreadth: mm([
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
    spec(minnowShape, {
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
