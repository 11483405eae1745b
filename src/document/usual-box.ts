import type { BoxThing } from "./box-schema";
import { USUAL } from "./parts";
import type { Stage } from "./schema-bench";

/**
 * Weights of usual sizes for a maker who has not filled the box yet. Each has the measures of its size and the density of the
 * table of materials; none was weighed. Which sizes are usual: common practice, no source.
 */
export const USUAL_WEIGHTS: readonly BoxThing[] = [
  ...[3, 4, 5, 6].map((d): BoxThing => ({
    kind: "shot",
    name: `tungsten ball ${d} mm`,
    count: 6,
    material: "tungsten",
    diameter_mm: d,
  })),
  ...[3, 4, 5, 6].map((d): BoxThing => ({
    kind: "shot",
    name: `steel ball ${d} mm`,
    count: 6,
    material: "carbon steel",
    diameter_mm: d,
  })),
  ...[3, 4, 5].map((d): BoxThing => ({
    kind: "wire",
    name: `brass rod ${d} mm, 5 mm long`,
    count: 6,
    material: "brass",
    diameter_mm: d,
    cut_mm: 5,
  })),
];

/** Drills of usual sizes, mm; common practice, no source. */
export const USUAL_DRILLS: readonly number[] = [3, 3.5, 4, 4.5, 5, 5.5, 6, 6.5];

/**
 * What a maker puts on by hand, without a box and without a plan, at each stage of making: in the sizes with which the board
 * begins too.
 */
export const BY_HAND: Readonly<Partial<Record<Stage, readonly BoxThing[]>>> = {
  sealed: [{ kind: "coat", name: "sealer", count: 1, ...USUAL.sealer }],
  "laid out": [{ kind: "shot", name: "weight", count: 1, ...USUAL.weight }],
  painted: [{ kind: "coat", name: "paint", count: 1, ...USUAL.paint }],
  "clear-coated": [{ kind: "coat", name: "clear coat", count: 1, ...USUAL.clearCoat }],
  dressed: [
    { kind: "hook", name: "hook", count: 1, ...USUAL.hook, material: "carbon steel" },
    { kind: "ring", name: "ring", count: 1, ...USUAL.ring, material: "stainless steel" },
  ],
};
