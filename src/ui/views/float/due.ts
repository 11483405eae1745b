import { isOnAt } from "../../../document";
import type { Moment } from "../../../document";
import { water } from "../../../model/water";
import type { Statics } from "../../../model/statics";
import type { Worked } from "../../state";

/** What the bait in the tub should do for its target. SI. */
export interface Due {
  /** Net buoyancy by the account, in the tub's water, kg. */
  readonly net: number;
  /** Net buoyancy with which the finished bait will be on target, in the tub's water, kg; null: there is no target. */
  readonly due: number | null;
  /** Net of what is still to come onto the bait, kg: of its coats, and of everything else. Below 0 it pulls down. */
  readonly coats: number;
  readonly others: number;
}

/**
 * What is to come takes the bait from `due` to the target:
 *
 *   due = wanted + (net now − net of the finished bait) + (ρ_tub − ρ) V
 *
 * @param there the bait at a moment of making, in the document's water
 * @param wanted net buoyancy wanted of the finished bait in the document's water, kg; null: none
 * @param tub the tub's water: g/kg and °C
 */
export function dueAt(
  { scenario, compiled, statics }: Worked,
  at: Moment,
  there: Pick<Statics, "netBuoyancy" | "displaced">,
  wanted: number | null,
  tub: { readonly salinity: number; readonly temperature: number },
): Due {
  const more = (water(tub.salinity, tub.temperature).density - statics.density) * there.displaced;
  const coats = compiled.bait.items
    .filter((row) => row.group === "coats" && !isOnAt(scenario.bait, row, at))
    .reduce((sum, row) => sum + statics.density * row.displaced - row.mass, 0);
  const all = statics.netBuoyancy - there.netBuoyancy;
  return {
    net: there.netBuoyancy + more,
    due: wanted === null ? null : wanted - all + more,
    coats,
    others: all - coats,
  };
}
