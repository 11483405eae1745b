import { assemble, type Bait, type BaitSpec } from "../../src/model/bait";
import type { Surroundings } from "../../src/model/forces";
import type { Knot, ShapeSpec } from "../../src/model/shape";
import type { RunSetup } from "../../src/model/motion";
import { bare, even, knots, stuff } from "./si";

/** Baits that swim in tests of the motion, their water and tackle. All invented. SI. */

export const WOOD = stuff("wood", 450, "wood");
export const LEAD = stuff("lead", 11340);
export const STEEL = stuff("steel", 7820);
export const PLASTIC = stuff("plastic", 1200, "plastic");

/** Half an ellipse of semi-axes L/2 and b over the length, by 33 points on b·sin φ. m. */
const ellipse = (length: number, b: number): Knot[] =>
  Array.from({ length: 33 }, (_, i) => {
    const phi = (Math.PI * i) / 32;
    const end = i === 0 || i === 32;
    return { s: i === 32 ? length : (length * (1 - Math.cos(phi))) / 2, v: end ? 0 : b * Math.sin(phi) };
  });

/** A solid ellipsoid of semi-axes a (along), b (across), c (up), m. */
export function ellipsoid(
  a: number,
  b: number,
  c: number,
  density: number,
  more: Partial<BaitSpec> = {},
): Bait {
  const shape = {
    length: 2 * a,
    top: ellipse(2 * a, c),
    bottom: ellipse(2 * a, -c),
    halfBreadth: ellipse(2 * a, b),
    exponentAbove: even(2),
    exponentBelow: even(2),
  };
  return assemble(bare(shape, { name: "ellipsoid", body: stuff("even", density, "wood"), ...more }));
}

const MINNOW_SHAPE: ShapeSpec = {
  length: 0.09,
  top: knots([
    [0, 0],
    [12, 6.5],
    [32, 9.5],
    [65, 6],
    [90, 1.2],
  ]),
  bottom: knots([
    [0, 0],
    [14, -7],
    [34, -9.5],
    [66, -5.5],
    [90, -1.2],
  ]),
  halfBreadth: knots([
    [0, 0],
    [12, 5],
    [32, 6.5],
    [65, 4],
    [90, 1],
  ]),
  exponentAbove: even(2.2),
  exponentBelow: even(2.4),
};

/** A 90 mm lipped minnow with two hooks; `ballast` in kg decides what it does. */
export function minnow(ballast: number, more: Partial<BaitSpec> = {}): Bait {
  return assemble(
    bare(MINNOW_SHAPE, {
      name: "minnow",
      body: WOOD,
      ballast: [
        {
          name: "belly",
          at: { x: -0.037, z: -0.0055 },
          mass: ballast,
          stuff: LEAD,
          where: "inside",
          hole: null,
          filler: 0,
        },
      ],
      bib: {
        root: { x: -0.004, z: -0.0035 },
        angle: (40 * Math.PI) / 180,
        length: 0.016,
        width: 0.015,
        slot: 0.006,
        thickness: 0.0015,
        outline: "round",
        stuff: PLASTIC,
      },
      tie: { x: 0.002, z: -0.001 },
      hangers: [
        {
          name: "belly",
          at: { x: -0.032, z: -0.0105 },
          ring: { mass: 0.1e-3, density: 8000 },
          hook: { mass: 0.62e-3, density: 7820, size: "6" },
        },
        {
          name: "tail",
          at: { x: -0.0925, z: 0 },
          ring: { mass: 0.1e-3, density: 8000 },
          hook: { mass: 0.62e-3, density: 7820, size: "6" },
        },
      ],
      ...more,
    }),
  );
}

/** The minnow with `count` loose 4 mm balls in a chamber. */
export const rattler = (ballast: number, count = 4, more: Partial<BaitSpec> = {}): Bait =>
  minnow(ballast, {
    chambers: [
      {
        name: "rattle",
        from: 0.042,
        to: 0.062,
        height: 0,
        tall: 0.005,
        wide: 0.0045,
        balls: { count, diameter: 0.004, stuff: STEEL },
      },
    ],
    ...more,
  });

/** Fresh water of round figures, m. */
export const water = (depth = 4, surface = true): Surroundings => ({
  density: 999,
  viscosity: 1.1e-3,
  gravity: 9.80665,
  current: { x: 0, z: 0 },
  surface,
  depth,
});

export const TACKLE = {
  line: { material: "nylon", diameter: 0.25e-3, density: 1140, EA: 100 },
  lineOut: 25,
  rodTip: 1.2,
};

export const setup = (bait: Bait, more: Partial<RunSetup> = {}): RunSetup => ({
  bait,
  around: water(),
  tackle: null,
  cadence: [{ do: "settle", for: 10 }],
  start: "afloat",
  bibFactor: 1,
  // The bare spring: what the line itself adds is tested in its own room.
  line: "tether",
  rate: 960,
  frameRate: 60,
  seed: 1,
  ...more,
});
