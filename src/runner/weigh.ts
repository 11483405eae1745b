import { compile, planKinds } from "../document";
import type { Box, Scenario } from "../document";
import { riseBand, sensitivity } from "../model/bench";
import type { RiseBand, SensitivityRow } from "../model/bench";
import { ballastPlan } from "../model/statics";
import type { PlanResult, PlanZone } from "../model/statics";
import { toSI } from "../units";

/** A ballast plan for the document's target, from the weights in a box. */
export interface PlanJob {
  readonly scenario: Scenario;
  readonly box: Box;
  readonly zone: PlanZone;
  /** Greatest number of places for weights, 1–3. */
  readonly places: number;
}

/** Filler of a hole where the box names none, kg/m³: epoxy; common practice, no source. */
export const FILLER = 1100;
/** Where the target asks for no trim. Not looked at then, but has to be above 0. */
const ANY = 1;

/** @throws Error where the document has no target, or the target's trim no tolerance */
export function planFor({ scenario, box, zone, places }: PlanJob): PlanResult {
  const { target } = scenario;
  if (target === undefined) throw new Error("There is no target to plan for: set one first.");
  const { net_g, netTolerance_g, trim_deg, trimTolerance_deg, leastBG_mm } = target;
  if (trim_deg !== undefined && trimTolerance_deg === undefined)
    throw new Error("The target's trim has no tolerance: say how near is near enough.");
  const { spec, water } = compile(scenario);
  return ballastPlan(
    spec,
    water.density,
    {
      net: toSI(net_g, "g"),
      netTolerance: toSI(netTolerance_g, "g"),
      trim: trim_deg === undefined ? null : toSI(trim_deg, "deg"),
      trimTolerance: trimTolerance_deg === undefined ? ANY : toSI(trimTolerance_deg, "deg"),
      leastBG: toSI(leastBG_mm ?? 0, "mm"),
    },
    planKinds(box),
    zone,
    {
      drills: box.drills_mm.map((one) => toSI(one, "mm")),
      filler: box.filler_g_ml === undefined ? FILLER : toSI(box.filler_g_ml, "g_mL"),
      places,
    },
  );
}

/** Hooks of the box next to a hook of `mass` kg: the next heavier and the next lighter. */
function neighbours(hooks: readonly number[], mass: number): { up: number | null; down: number | null } {
  const heavier = hooks.filter((one) => one > mass * 1.001);
  const lighter = hooks.filter((one) => one < mass * 0.999);
  return {
    up: heavier.length === 0 ? null : Math.min(...heavier),
    down: lighter.length === 0 ? null : Math.max(...lighter),
  };
}

/** What small changes do to net, trim and rise. `hooks`: masses of the hooks in the box, kg. */
export function effectsOf(scenario: Scenario, hooks: readonly number[]): SensitivityRow[] {
  const { bait, around, spec, calibration } = compile(scenario);
  return sensitivity(bait, around, {
    bibFactor: calibration.bibFactor,
    neighbours: (hanger) => neighbours(hooks, spec.hangers[hanger]?.hook?.mass ?? 0),
  });
}

/** The band of the steady rise with what each input brings to it. */
export function riseBandOf(scenario: Scenario): RiseBand {
  const { bait, around, calibration } = compile(scenario);
  return riseBand(bait, around, { bibFactor: calibration.bibFactor });
}
