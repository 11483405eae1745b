import { BARE_TEST, baitAt, hasBareTest, rowStages, STAGES } from "../../document";
import type { Stage } from "../../document";
import type { Bait, Item } from "../../model/bait";
import { band, staticsOf } from "../../model/statics";
import type { Statics } from "../../model/statics";
import type { SheetJob } from "../job";

/** What scale and tub should say at a moment of making. SI. */
export interface MomentFigures {
  readonly statics: Statics;
  /** Half of the range that holds 95 of 100 baits made so, kg: of the mass, and of the net buoyancy. */
  readonly massWithin: number;
  readonly netWithin: number;
}

/** The bait at a stage of making, and what came onto it. */
export interface StageFigures extends MomentFigures {
  readonly stage: Stage;
  readonly items: readonly Item[];
}

/** Draws of the bands: they are not used, only what each input does by itself. */
const FEWEST = 100;
/** Half a range of 95 % in standard deviations of a normal spread. */
const SHARE_95 = 1.96;
/** Next to nothing, kg/m³: in a "water" of this density the net buoyancy is the mass alone. */
const THIN = 1e-6;

/** Half of the 95 % range of the net buoyancy, kg, from the inputs' own standard uncertainties, added as squares. */
function within(bait: Bait, density: number): number {
  const { contributions } = band(bait, density, { samples: FEWEST });
  const variance = contributions.reduce((sum, one) => sum + one.netBuoyancy * one.netBuoyancy, 0);
  return SHARE_95 * Math.sqrt(variance);
}

const figuresOf = (then: Bait, density: number): MomentFigures => ({
  statics: staticsOf(then, density),
  massWithin: within(then, THIN),
  netWithin: within(then, density),
});

/** The first tub test, bare with hooks; null: this bait has none of its own. */
export function bareTestOf({ scenario, compiled: { bait, water } }: SheetJob): MomentFigures | null {
  return hasBareTest(scenario.bait, bait)
    ? figuresOf(baitAt(scenario, bait, BARE_TEST), water.density)
    : null;
}

const known = new WeakMap<Bait, readonly StageFigures[]>();

/** What is glued is closed, also where nothing comes on then but the glue: what was laid in lies loose until it is done. */
const isClosed = (stage: Stage, staged: readonly Stage[], bare: boolean): boolean =>
  stage === "closed" && (bare || staged.includes("laid out"));

/** Every stage at which something is done to the bait, from the blank to the dressed bait. */
export function stagesOf({ scenario, compiled }: SheetJob): readonly StageFigures[] {
  const { bait, water } = compiled;
  const found = known.get(bait);
  if (found) return found;
  const staged = rowStages(scenario.bait, bait);
  const bare = hasBareTest(scenario.bait, bait);
  const made = STAGES.flatMap((stage): StageFigures[] => {
    const items = bait.items.filter((item, i) => staged[i] === stage && item.group !== "corrections");
    if (items.length === 0 && !isClosed(stage, staged, bare)) return [];
    return [{ stage, items, ...figuresOf(baitAt(scenario, bait, stage), water.density) }];
  });
  known.set(bait, made);
  return made;
}
