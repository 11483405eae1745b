import { compile, planKinds, targetWords } from "../document";
import type { Box, Scenario } from "../document";
import { resolveTarget, riseBand, sensitivity } from "../model/bench";
import type { ResolvedTarget, RiseBand, SensitivityRow } from "../model/bench";
import { ballastPlan } from "../model/plan";
import type { PlanResult, PlanTarget, PlanZone } from "../model/plan";
import { fromSI, toSI } from "../units";

/** A ballast plan for the document's target, from the weights in a box. */
export interface PlanJob {
  readonly scenario: Scenario;
  readonly box: Box;
  readonly zone: PlanZone;
  /** Greatest number of places for weights, 1–3. */
  readonly places: number;
}

/**
 * A bait of which nobody says how it rests is not meant to stand on its tail: so near level, rad, is what plans are for where
 * that can be had. A rise, too, is worked out for a bait that hangs level. As wide as a plan's trim may be uncertain;
 * common practice, no source.
 */
const NEAR_LEVEL = toSI(15, "deg");
/** Filler of a hole where the box names none, kg/m³: epoxy; common practice, no source. */
export const FILLER = 1100;
/**
 * Where weights may go as long as nobody has set it: a tenth of the length stays free at either end. Common practice, no
 * source.
 */
export function usualZone({ bait }: Scenario): PlanZone {
  const tidy = (mm: number): number => toSI(Math.round(mm * 2) / 2, "mm");
  return {
    from: tidy(bait.length_mm * 0.1),
    to: tidy(bait.length_mm * 0.9),
    lowest: null,
    highest: null,
    wall: toSI(1.5, "mm"),
    clearance: toSI(1, "mm"),
  };
}

/** The target's words as figures for the finished bait; null where the document has none. */
export function resolvedTarget(scenario: Scenario): ResolvedTarget | null {
  const words = targetWords(scenario);
  if (words === null) return null;
  const { bait, around, calibration } = compile(scenario);
  return resolveTarget(bait, around, words, { bibFactor: calibration.bibFactor });
}

/** @throws Error where the document has no target, or its words cannot be met */
export function planFor({ scenario, box, zone, places }: PlanJob): PlanResult {
  const resolved = resolvedTarget(scenario);
  if (resolved === null) throw new Error("There is no target to plan for: set one first.");
  const { net, trim, leastBG, problems, notes } = resolved;
  if (net === null)
    throw new Error(
      problems[0] ??
        "The target's net buoyancy follows a rise, but no speed is given: give a time for 300 mm, a speed, or grams.",
    );
  const { spec, water } = compile(scenario);
  const planned = (rest: Pick<PlanTarget, "trim" | "trimTolerance" | "trimGuides">): PlanResult =>
    ballastPlan(
      spec,
      water.density,
      { net: net.value, netTolerance: net.tolerance, ...rest, leastBG },
      planKinds(box),
      zone,
      {
        drills: box.drills_mm.map((one) => toSI(one, "mm")),
        filler: box.filler_g_ml === undefined ? FILLER : toSI(box.filler_g_ml, "g_mL"),
        places,
      },
    );
  const why = scenario.target?.netFrom === "rise" ? [net.why] : [];
  const told = (result: PlanResult, more: readonly string[] = []): PlanResult => ({
    ...result,
    notes: [...why, ...more, ...problems, ...notes, ...result.notes],
  });
  if (trim !== null) return told(planned({ trim: trim.value, trimTolerance: trim.tolerance }));
  const level = planned({ trim: 0, trimTolerance: NEAR_LEVEL, trimGuides: true });
  if (level.plans.length > 0)
    return told(level, [
      `The target does not say how the bait rests: these plans are for level, ±${fromSI(NEAR_LEVEL, "deg").toFixed(0)}°.`,
    ]);
  // The tolerance is not used where any trim is allowed, but has to be above 0.
  return told(planned({ trim: null, trimTolerance: 1 }));
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

/** The band of the steady rise, with what each input contributes. */
export function riseBandOf(scenario: Scenario): RiseBand {
  const { bait, around, calibration } = compile(scenario);
  return riseBand(bait, around, { bibFactor: calibration.bibFactor });
}
