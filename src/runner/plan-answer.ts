import { adoptPlan, compile } from "../document";
import type { Box, Scenario, ScenarioBait } from "../document";
import type { Plan, PlanHole } from "../model/plan";
import { floating, restTrim } from "../model/statics";
import { netOf } from "../model/bench";
import { fromSI } from "../units";
import { planFor, usualZone } from "./weigh";

/**
 * One plan of the headless answer. `ballast` has the form of the scenario's own list: added to it, the answer is that of
 * the plan.
 */
export interface PlanAnswer {
  readonly net_g: number;
  readonly trim_deg: number | null;
  readonly BG_mm: number;
  /** Null where it sinks. */
  readonly GM_mm: number | null;
  /** Chance to meet the whole target under the maker's uncertainties, 0–1. */
  readonly chance: number;
  readonly ballast: ScenarioBait["ballast"];
  /** Central 95 %. */
  readonly netBand_g: readonly [number, number];
  readonly trimBand_deg: readonly [number, number] | null;
  readonly leadFree: boolean;
  /** Each place in words for the bench: drill, depth, plug. */
  readonly holes: readonly string[];
}

/** The part of the headless answer about ballast plans. */
export interface PlansAnswer {
  /** Best first; empty where no plan meets the target. */
  readonly plan: readonly PlanAnswer[];
  /** Where none does: the nearest one. */
  readonly planNearest: PlanAnswer | null;
  /** Where none does: the limit that gives way first. */
  readonly planLimits: readonly string[];
  readonly planNotes: readonly string[];
}

const grams = (kg: number): number => fromSI(kg, "g");
const millimetres = (m: number): number => fromSI(m, "mm");
const mm = (m: number): string => `${millimetres(m).toFixed(1)} mm`;
const degrees = (rad: number): number => fromSI(rad, "deg");

function holeWords(name: string, station: number, hole: PlanHole | null): string {
  if (hole === null) return `${name}: on the skin below station ${mm(station)}`;
  return `${name}: at station ${mm(station)} drill ${mm(hole.diameter)}, ${mm(hole.depth)} deep from the bottom edge; ${mm(hole.plug)} of plug below the weight`;
}

/** A plan as the scenario that takes it answers: figures and ballast are read from that scenario. */
function planAnswer(scenario: Scenario, plan: Plan): PlanAnswer {
  const taken = adoptPlan(scenario, plan);
  const { bait, water } = compile(taken);
  const rest = restTrim(bait);
  const net = netOf(bait, water.density);
  const afloat = net > 0 ? floating(bait, water.density) : null;
  const { sure } = plan;
  return {
    net_g: grams(net),
    trim_deg: rest.pitch === null ? null : degrees(rest.pitch),
    BG_mm: millimetres(rest.BG),
    GM_mm: afloat === null ? null : millimetres(afloat.GM),
    chance: sure.chance,
    ballast: taken.bait.ballast.slice(scenario.bait.ballast.length),
    netBand_g: [grams(sure.net[0]), grams(sure.net[1])],
    trimBand_deg: sure.trim === null ? null : [degrees(sure.trim[0]), degrees(sure.trim[1])],
    leadFree: plan.leadFree,
    holes: plan.loads.map((l) =>
      holeWords(l.count === 1 ? l.name : `${l.count} × ${l.name}`, 0 - l.at.x, l.hole),
    ),
  };
}

/** Ballast plans for a scenario's target from a box, in the zone that the page begins with. */
export function plansAnswer(scenario: Scenario, box: Box, places: number): PlansAnswer {
  const zone = usualZone(scenario);
  const { plans, nearest, limits, notes } = planFor({ scenario, box, zone, places });
  return {
    plan: plans.map((p) => planAnswer(scenario, p)),
    planNearest: nearest && planAnswer(scenario, nearest),
    planLimits: limits.map((l) => l.text),
    planNotes: notes,
  };
}
