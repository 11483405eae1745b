import type { Choice } from "./choices";
import type { Goal } from "./goal";
import type { Placing } from "./place";
import type { Found } from "./place";
import type { Planner } from "./planner";
import type { Plan } from "./types";

/** The one limit that gives way, and the nearest plan without it. */
export interface Near {
  readonly gaveWay: "lift" | "room" | "net" | "BG" | "trim" | "upright";
  readonly plan: Plan | null;
}

/**
 * How many choices have their seats tried for one limit that gives way; those with the nearest net buoyancy first. Chosen
 * for speed.
 */
const TRIED = 300;

/**
 * Where no plan meets the target, one limit after the other gives way, the least painful first, while all others hold.
 * First the margin of BG gives way. Then trim or net buoyancy: the one that is less far off, measured in its tolerance.
 * Then both.
 */
export function nearestPlan(planner: Planner): Near {
  const { choices, goal, seated, needed } = planner;
  const nothing: Choice = {
    loads: [],
    pieces: 0,
    lead: false,
    weighed: true,
    off: Math.abs(needed),
    signature: "",
  };
  const free: Goal = { ...goal, leastBG: 0, netTolerance: Infinity, trimTolerance: Math.PI * 2 };
  const asItIs = (): Plan | null => {
    const found = planner.place(nothing, planner.placings({ ...free, trim: goal.trim ?? 0 }, "trim"));
    return found && planner.finish(nothing, found);
  };
  if (needed < -goal.netTolerance) return { gaveWay: "lift", plan: asItIs() };
  if (seated.loads.length === 0) return { gaveWay: "room", plan: asItIs() };

  const best = (
    open: readonly Choice[],
    to: Goal,
    aim: Placing["aim"],
  ): { choice: Choice; found: Found } | null => {
    const placings = planner.placings(to, aim);
    let kept: { choice: Choice; found: Found } | null = null;
    for (const choice of [...open].sort((a, b) => a.off - b.off).slice(0, TRIED)) {
      const found = planner.place(choice, placings);
      // Where the seats have nothing to aim at, the net buoyancy decides between choices.
      const better = (a: Found, b: Found): boolean =>
        to.netTolerance === Infinity
          ? Math.abs(a.net - goal.net) < Math.abs(b.net - goal.net)
          : a.score > b.score;
      if (found && (!kept || better(found, kept.found))) kept = { choice, found };
    }
    return kept;
  };
  const near = (gaveWay: Near["gaveWay"], kept: { choice: Choice; found: Found } | null): Near | null =>
    kept && { gaveWay, plan: planner.finish(kept.choice, kept.found) };

  const inNet = choices.within(goal.netTolerance);
  if (inNet.length > 0) {
    const lower = goal.leastBG > 0 ? best(inNet, { ...goal, leastBG: 0 }, "BG") : null;
    const found = near("BG", lower);
    if (found) return found;
  }
  const window = Math.max(goal.netTolerance * 16, choices.closest(goal.netTolerance) * 1.25);
  const off = best(choices.within(window), { ...goal, leastBG: 0, netTolerance: Infinity }, "chance");
  const turned =
    goal.trim === null || inNet.length === 0
      ? null
      : best(inNet, { ...goal, leastBG: 0, trimTolerance: Math.PI * 2 }, "trim");
  const netMisfit = off ? Math.abs(off.found.net - goal.net) / goal.netTolerance : Infinity;
  const trimMisfit = turned ? turned.found.misfit : Infinity;
  if (off ?? turned) {
    const found = trimMisfit < netMisfit ? near("trim", turned) : near("net", off);
    if (found) return found;
  }
  const both = best(choices.within(window), { ...free, trim: goal.trim ?? 0 }, "trim");
  return near("net", both) ?? { gaveWay: "room", plan: asItIs() };
}
