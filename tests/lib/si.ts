import type { BaitSpec, Stuff, UncertaintySpec } from "../../src/model/bait";
import type { Vec } from "../../src/model/base";
import { noParts } from "../../src/model/parts";
import type { Knot, ShapeSpec } from "../../src/model/shape";

/** What test baits are made of. All are invented. SI. */

export const mm = 1e-3;
export const ml = 1e-6;
export const g = 1e-3;
export const deg = Math.PI / 180;

/** Body point from station and height in mm, as the file writes it. */
export const at = (station: number, height: number): Vec => ({ x: -station * mm, z: height * mm });

/** Knots from stations and heights in mm. */
export const knots = (list: readonly (readonly [number, number])[]): Knot[] =>
  list.map(([s, v]) => ({ s: s / 1e3, v: v / 1e3 }));

/** An exponent that is the same from nose to tail. */
export const even = (exponent: number): Knot[] => [{ s: 0, v: exponent }];

export const stuff = (name: string, density: number, kind: Stuff["kind"] = "metal"): Stuff => ({
  name,
  density,
  kind,
  given: false,
});

export const WOOD = stuff("wood", 400, "wood");

export const UNCERTAINTY: UncertaintySpec = {
  wood: 0.1,
  metal: 0.01,
  plastic: 0.02,
  coatThickness: 0.2,
  hook: 0.25,
  drawnLength: 0.2 * mm,
};

/** A body with nothing in it; `more` adds to it. */
export const bare = (shape: ShapeSpec, more: Partial<BaitSpec> = {}): BaitSpec => ({
  name: "test",
  shape,
  body: WOOD,
  ...noParts(),
  tie: { x: 0, z: 0 },
  bench: [],
  uncertainty: UNCERTAINTY,
  ...more,
});
