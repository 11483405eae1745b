import { noParts } from "../../../src/model/parts";
import { assemble, type Bait, type BaitSpec, type Stuff } from "../../../src/model/bait";
import type { Surroundings } from "../../../src/model/forces";
import type { Knot } from "../../../src/model/shape";
import type { RunSetup } from "../../../src/model/motion";

// Baits of our own invention for the tests of this room. SI.

const stuff = (name: string, density: number, kind: Stuff["kind"]): Stuff => ({
  name,
  density,
  kind,
  given: true,
});
export const WOOD = stuff("wood", 450, "wood");
export const LEAD = stuff("lead", 11340, "metal");
export const STEEL = stuff("steel", 7820, "metal");
export const PLASTIC = stuff("plastic", 1200, "plastic");

const knots = (list: readonly (readonly [number, number])[]): Knot[] =>
  list.map(([s, v]) => ({ s: s / 1e3, v: v / 1e3 }));
const exponent = (n: number): Knot[] => [{ s: 0, v: n }];

/** Half an ellipse of semi-axes L/2 and b over the length, by 33 points on b·sin φ. m. */
const ellipse = (length: number, b: number): Knot[] =>
  Array.from({ length: 33 }, (_, i) => {
    const phi = (Math.PI * i) / 32;
    const end = i === 0 || i === 32;
    return { s: i === 32 ? length : (length * (1 - Math.cos(phi))) / 2, v: end ? 0 : b * Math.sin(phi) };
  });

export const UNCERTAINTY = {
  wood: 0.1,
  metal: 0.01,
  plastic: 0.02,
  coatThickness: 0.2,
  hook: 0.25,
  drawnLength: 0.2e-3,
};

const BARE: Omit<BaitSpec, "name" | "shape" | "body" | "tie"> = {
  ...noParts(),
  bench: [],
  uncertainty: UNCERTAINTY,
};

/** A solid ellipsoid of semi-axes a (along), b (across), c (up), m. */
export function ellipsoid(
  a: number,
  b: number,
  c: number,
  density: number,
  more: Partial<BaitSpec> = {},
): Bait {
  return assemble({
    ...BARE,
    name: "ellipsoid",
    shape: {
      length: 2 * a,
      top: ellipse(2 * a, c),
      bottom: ellipse(2 * a, -c),
      halfBreadth: ellipse(2 * a, b),
      exponentAbove: exponent(2),
      exponentBelow: exponent(2),
    },
    body: stuff("even", density, "wood"),
    tie: { x: 0, z: 0 },
    ...more,
  });
}

/** A 90 mm lipped minnow with two hooks; `ballast` in kg decides what it does. */
export function minnow(ballast: number, more: Partial<BaitSpec> = {}): Bait {
  return assemble({
    ...BARE,
    name: "minnow",
    shape: {
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
      exponentAbove: exponent(2.2),
      exponentBelow: exponent(2.4),
    },
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
  });
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
