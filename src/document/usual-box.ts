import type { Box, BoxThing } from "./box-schema";
import { USUAL } from "./parts";
import type { Stage } from "./schema-bench";

const ball = (what: string, material: string, d: number): BoxThing => ({
  kind: "shot",
  name: `${what} ball ${d} mm`,
  count: 6,
  material,
  diameter_mm: d,
});
const rod = (d: number, cut: number): BoxThing => ({
  kind: "wire",
  name: `brass rod ${d} mm, ${cut} mm long`,
  count: 6,
  material: "brass",
  diameter_mm: d,
  cut_mm: cut,
});
const tungsten = (d: number): BoxThing => ball("tungsten", "tungsten", d);
const steel = (d: number): BoxThing => ball("steel", "carbon steel", d);

/**
 * Weights of usual sizes for a maker who has not filled the box yet, and drills for them, mm. Each weight has the measures of
 * its size and the density of the table of materials; none was weighed. Which sizes are usual: common practice, no source.
 * Each step is for baits that carry more than `beyond`, g: three holes with weights of the steps before it hold hardly more.
 */
const STEPS: readonly {
  readonly beyond: number;
  readonly things: readonly BoxThing[];
  readonly drills: readonly number[];
}[] = [
  {
    beyond: 0,
    things: [...[3, 4, 5, 6].map(tungsten), ...[3, 4, 5, 6].map(steel), ...[3, 4, 5].map((d) => rod(d, 5))],
    drills: [3, 3.5, 4, 4.5, 5, 5.5, 6, 6.5],
  },
  {
    beyond: 15,
    things: [...[8, 10].map(tungsten), ...[8, 10, 12].map(steel), ...[8, 10, 12].map((d) => rod(d, 10))],
    drills: [8, 8.5, 10, 10.5, 12, 12.5],
  },
  {
    beyond: 75,
    things: [...[12, 15].map(tungsten), ...[16, 20].map((d) => rod(d, 20))],
    drills: [15, 16, 20],
  },
];

/** Usual weights and drills for a bait whose ballast weighs so much, g. */
export function usualFor(load_g: number): Pick<Box, "things" | "drills_mm"> {
  const steps = STEPS.filter(({ beyond }) => beyond === 0 || load_g > beyond);
  return {
    things: steps.flatMap(({ things }) => things),
    drills_mm: steps.flatMap(({ drills }) => drills),
  };
}

/** Those for baits of the usual sizes. */
export const { things: USUAL_WEIGHTS, drills_mm: USUAL_DRILLS } = usualFor(0);

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
