import type { Wrench } from "../base";
import * as kernels from "./kernels";
import { legendOf, WATER_FORCE_KEYS } from "./legend";
import { situationOf } from "./memo";
import type { Situation } from "./situation";
import type { ForceKey, ForceModel, WaterForce } from "./types";

/** Adds a force to `out`, on a situation that has taken the state. */
export type Kernel = (situation: Situation, out: Wrench) => void;

/** The kernel of each force. They stand apart from the legend, which the page shows without them. */
const KERNELS: Readonly<Record<WaterForce, Kernel>> = {
  weight: kernels.weight,
  buoyancy: kernels.buoyancy,
  crossflow: kernels.crossflow,
  axial: kernels.axial,
  tail: kernels.tail,
  bib: kernels.bib,
  hooks: kernels.hooks,
};

/** All forces but those of other rooms, in the order in which they are summed, listed and logged. */
export const FORCES: readonly ForceModel[] = WATER_FORCE_KEYS.map((key) => ({
  ...legendOf(key),
  add(swimmer, state, around, out): void {
    const situation = situationOf(swimmer, around);
    situation.enter(state);
    KERNELS[key](situation, out);
  },
}));

/** The kernels of the keys given, in their fixed order; all where none are given. */
export const kernelsOf = (
  keys: readonly ForceKey[] = WATER_FORCE_KEYS,
): readonly { readonly key: WaterForce; readonly kernel: Kernel }[] =>
  WATER_FORCE_KEYS.filter((key) => keys.includes(key)).map((key) => ({ key, kernel: KERNELS[key] }));
