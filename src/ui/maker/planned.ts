import { adoptPlan, compile, planKinds, usualFor } from "../../document";
import type { Box, Scenario } from "../../document";
import { USUAL_WALL, wallsOf } from "../../model/checks";
import type { Plan, PlanResult } from "../../model/plan";
import { staticsOf } from "../../model/statics";
import { usualZone } from "../../runner";
import type { PlanJob } from "../../runner";
import { fromSI, toSI } from "../../units";
import type { Saying } from "../words/base";
import { MAKER } from "../words/maker";
import { loadOf } from "./load";
import { FIRST_WEIGHT } from "./weight";
import type { Target } from "./wish";

/**
 * The first ballast of a new bait comes from a plan: weights of the maker's box, or of usual sizes, in holes that leave the
 * wall. The guess that `baitOf` begins with stays where no plan comes nearer.
 */
export interface Begun {
  readonly scenario: Scenario;
  /** What the maker should know of it; null: it does what was asked. */
  readonly told: Saying | null;
}

/** A worker's plan: null where it was not waited for. */
export type Planner = (job: PlanJob) => Promise<PlanResult | null>;

const PLACES = 3;
/** A bait that nobody has said a target for shall rest level so nearly, degrees, and float as it does to this share. Invented. */
const LEVEL = 3;
const NEAR_SHARE = 0.25;

/** The maker's box where it has weights and a drill; else what is usual for ballast of this mass (g). */
function boxToPlan(own: Box, load_g: number): { readonly box: Box; readonly usual: boolean } {
  const ready = planKinds(own).length > 0 && own.drills_mm.length > 0;
  return ready ? { box: own, usual: false } : { box: { ...own, ...usualFor(load_g) }, usual: true };
}

/** What is asked of the first ballast: the target, and a level rest where it says none. */
function askedOf(made: Scenario): Target {
  const { bait, around } = compile(made);
  const net_g = fromSI(staticsOf(bait, around.density).netBuoyancy, "g");
  const target = made.target ?? { net_g, netTolerance_g: NEAR_SHARE * Math.abs(net_g) };
  return { trim_deg: 0, trimTolerance_deg: LEVEL, ...target };
}

/** How far a bait is from what was asked, in tolerances; a bait that lies on its side is no bait at all. */
function missOf(scenario: Scenario, asked: Target): number {
  const { bait, around } = compile(scenario);
  const { netBuoyancy, rest, upright } = staticsOf(bait, around.density);
  if (rest.pitch === null || !upright.bellyDownUnderWater || upright.uprightAfloat === false) return Infinity;
  const net = (fromSI(netBuoyancy, "g") - asked.net_g) / asked.netTolerance_g;
  const trim = (fromSI(rest.pitch, "deg") - (asked.trim_deg ?? 0)) / (asked.trimTolerance_deg ?? LEVEL);
  return Math.hypot(net, trim);
}

/** Weights that the maker has not got yet stand under the first weight's name: the plan of the bench is still to be made. */
function taken(made: Scenario, bare: Scenario, plan: Plan, usual: boolean): Scenario {
  const ballast = adoptPlan(bare, plan).bait.ballast.map((one) =>
    usual ? { ...one, name: `${FIRST_WEIGHT}: ${one.name}` } : one,
  );
  return { ...made, bait: { ...made.bait, ballast } };
}

/** Planned holes keep their wall beside and above them; at their rims it may be a hair thinner. So much more mends it, m. */
const MORE_WALL = toSI(0.3, "mm");
const isThin = (scenario: Scenario): boolean =>
  wallsOf(compile(scenario).bait).some(({ least }) => least < USUAL_WALL);

/** How the guess stands in the plan's place. */
function guessed({ bait: { ballast } }: Scenario): Saying {
  const outside = ballast.some(({ where }) => where === "outside");
  return (language) => {
    const words = MAKER.in(language);
    return outside ? words.tell("stands.outside") : words.tell("stands.guess", { count: ballast.length });
  };
}

const nearby: Saying = (language) => MAKER.in(language).tell("stands.nearest");

/** @param made the bait of the maker's answers, with its first weight by guess */
export async function planned(made: Scenario, own: Box, planner: Planner): Promise<Begun> {
  if (made.bait.ballast.length === 0)
    return made.target === undefined || made.target.net_g > 0
      ? { scenario: made, told: null }
      : { scenario: made, told: (language) => MAKER.in(language).tell("needsNone") };
  const { box, usual } = boxToPlan(own, loadOf(made));
  const asked = askedOf(made);
  const bare: Scenario = { ...made, target: asked, bait: { ...made.bait, ballast: [] } };
  const zone = usualZone(bare);
  const plan = async (wall: number): Promise<{ result: PlanResult; found: readonly Scenario[] } | null> => {
    try {
      const result = await planner({ scenario: bare, box, places: PLACES, zone: { ...zone, wall } });
      return result === null
        ? null
        : { result, found: result.plans.map((one) => taken(made, bare, one, usual)) };
    } catch {
      // Words that cannot be met, or a fault of the plan: the guess stands, and the page says what stands in the way.
      return null;
    }
  };
  const first = await plan(zone.wall);
  const sound = first?.found.find((one) => !isThin(one));
  if (sound !== undefined) return { scenario: sound, told: null };
  const next =
    first !== null && first.found.length > 0 ? ((await plan(zone.wall + MORE_WALL)) ?? first) : first;
  if (next === null) return { scenario: made, told: (language) => MAKER.in(language).tell("late") };
  const better = next.found.find((one) => !isThin(one));
  if (better !== undefined) return { scenario: better, told: null };
  const { nearest } = next.result;
  const near = nearest === null ? null : taken(made, bare, nearest, usual);
  const kept = near !== null && !isThin(near) && missOf(near, asked) < missOf(made, asked) ? near : made;
  const stands = kept === made ? guessed(made) : nearby;
  return {
    scenario: kept,
    told: (language) =>
      MAKER.in(language).tell(usual ? "none.usual" : "none.own", { stands: stands(language) }),
  };
}
