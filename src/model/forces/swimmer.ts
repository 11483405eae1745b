import { type Sym3, addOuter3, square, sym3 } from "../base";
import { type Bait, type BaitSpec, bibPlate } from "../bait";
import { endEffect, hookDragArea } from "./coefficients";
import { ellipsoidCoefficients, plateAddedVolume } from "./ellipsoid";
import { flatPlate } from "./plate";
import { cutStrips } from "./strips";
import type { Blade, Swimmer, SwimmerOptions, HookLoad } from "./types";

const DEFAULTS: SwimmerOptions = {
  bibFactor: 1,
  munkShare: 0.8,
  hooksApart: false,
  ballsApart: false,
  side: { end: "mid", face: "floor" },
  strips: null,
};

/**
 * The fixed model that the forces read, about the G of the rigid set that the options leave: hooks and balls that are
 * bodies of their own are left out of mass, inertia, displacement and drag.
 *
 * @throws RangeError for a bib factor or a Munk share that is no positive number, or a number of strips outside 8–1024
 */
export function prepareSwimmer(bait: Bait, options: Partial<SwimmerOptions> = {}): Swimmer {
  const chosen: SwimmerOptions = { ...DEFAULTS, ...options };
  const { bibFactor, munkShare, hooksApart, ballsApart, side } = chosen;
  if (!(bibFactor > 0 && bibFactor < 10))
    throw new RangeError(`bib factor ${bibFactor}: give a number above 0, about 1`);
  if (!(munkShare >= 0 && munkShare <= 1))
    throw new RangeError(`Munk share ${munkShare}: give a number from 0 to 1, about 0.8`);
  const rigid =
    hooksApart || ballsApart
      ? bait.rigidWithout({ hooks: hooksApart, balls: ballsApart }, side)
      : bait.rigid(side);
  const { G } = rigid;
  const { shape, spec } = bait;
  const breadth = 2 * shape.maxHalfBreadth;
  const height = shape.maxHeight;
  // docs/model.md §6.3: r_x = L/2, r_y = greatest half-breadth, r_z = half the greatest height at one station
  const ellipsoid = ellipsoidCoefficients(shape.length / 2, breadth / 2, height / 2);
  const cut = cutStrips(shape, chosen.strips, G, ellipsoid);
  const centroid = { x: shape.centroid.x - G.x, z: shape.centroid.z - G.z };
  const surge = ellipsoid.kX * shape.volume;

  // About the strips' centre and the centroid's height, then moved to G (docs/model.md §6.3).
  const addedBody: Sym3 = {
    a11: surge,
    a13: 0,
    a15: -surge * centroid.z,
    a33: cut.heave,
    a35: cut.heave * cut.centreX,
    a55: cut.pitch + cut.heave * square(cut.centreX) + surge * square(centroid.z),
  };
  const blade = makeBlade(bait, G);
  const addedBib = sym3();
  if (blade) addOuter3(addedBib, blade.added, blade.normal.x, blade.normal.z, blade.lever);

  return {
    bait,
    options: chosen,
    rigid,
    strips: cut.strips,
    hooks: hooksApart ? [] : spec.hangers.flatMap((h) => hookLoad(h, G)),
    tie: { x: spec.tie.x - G.x, z: spec.tie.z - G.z },
    addedBody,
    addedBib,
    hull: {
      length: shape.length,
      centroid,
      nose: -G.x,
      tail: -shape.length - G.x,
      datum: -G.z,
      breadth,
      frontalArea: (Math.PI / 4) * height * breadth,
      diameter: Math.sqrt(height * breadth),
      endEffect: endEffect(shape.length / breadth),
      surge,
      heave: cut.heave,
    },
    blade,
  };
}

/** The bib's part outside the body (docs/model.md §6.3, §6.7); the plate's sides are its width and its mean chord. */
function makeBlade(bait: Bait, G: { readonly x: number; readonly z: number }): Blade | null {
  const { bib } = bait.spec;
  if (!bib) return null;
  const { along, normal, tip, area, middle } = bibPlate(bib, (s) => bait.shape.section(s).halfBreadth);
  const at = (p: { readonly x: number; readonly z: number }) => ({ x: p.x - G.x, z: p.z - G.z });
  const centre = at(middle);
  const chord = area / bib.width;
  return {
    root: at(bib.root),
    middle: centre,
    tip: at(tip),
    along,
    normal,
    area,
    width: bib.width,
    chord,
    plate: flatPlate(bib.width / chord), // width²/S
    added: plateAddedVolume(bib.width, chord),
    lever: normal.z * centre.x - normal.x * centre.z,
  };
}

/** Hook and ring of one hanger as a point load; nothing where the hanger has neither. */
function hookLoad(
  { name, at, ring, hook }: BaitSpec["hangers"][number],
  G: { readonly x: number; readonly z: number },
): HookLoad[] {
  if (!ring && !hook) return [];
  return [
    {
      name,
      at: { x: at.x - G.x, z: at.z - G.z },
      mass: (ring?.mass ?? 0) + (hook?.mass ?? 0),
      displaced: (ring ? ring.mass / ring.density : 0) + (hook ? hook.mass / hook.density : 0),
      dragArea: hook ? hookDragArea(hook.mass) : 0,
    },
  ];
}
