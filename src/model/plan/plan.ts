import type { BaitSpec } from "../bait";
import { SURE_TRIM, trimHalfWidth } from "./chance";
import { leftOut, limitOf } from "./limits";
import { nearestPlan } from "./nearest";
import { notesOf } from "./notes";
import { Planner } from "./planner";
import { compareRanks, rankOf } from "./rank";
import type { Rank } from "./rank";
import type { Plan, PlanKind, PlanOptions, PlanResult, PlanTarget, PlanZone } from "./types";

/** Choices that are examined by draws for each plan given, because draws may change the linearised order. */
const FINALISTS = 2;
interface DrawnPlan {
  readonly plan: Plan;
  readonly rank: Rank;
}

/** The best choices with their draws, in order; all of them meet the target, but not all stay upright afloat. */
function drawnPlans(planner: Planner, wanted: number): DrawnPlan[] {
  const draw = (floor: number): DrawnPlan[] =>
    planner.search(FINALISTS * wanted, floor).map(({ choice, found }) => {
      const plan = planner.finish(choice, found);
      return { plan, rank: rankOf(choice, plan.sure.chance, trimHalfWidth(plan.sure)) };
    });
  const inOrder = (list: readonly DrawnPlan[]): DrawnPlan[] =>
    [...list].sort((a, b) => compareRanks(a.rank, b.rank));
  const first = draw(0);
  if (first.length === 0 || first.some(({ plan }) => plan.fits)) return inOrder(first);
  // Afloat all these plans lie on their sides. Where GM is below 0, lowering G by |GM| makes GM 0 and raises BG by as much.
  const short = first.map(({ plan }) => plan.BG - (plan.GM ?? 0));
  return inOrder([...draw(short.reduce((a, b) => Math.min(a, b))), ...first]);
}

/**
 * Ballast plans for a target from the weights in a box (docs/model.md §3 says what each weight does), ordered by `Rank`.
 *
 * What is promised:
 * - Every choice of up to `places` loads is looked at. A load is a number of pieces of one kind, in one hole or at one
 *   spot.
 * - Every figure of a plan given is that of the whole bait.
 * - The seats are those of the grid; each load stands as low as wall, drill and zone allow. Only where that gives no plan
 *   are the seats 1 to 5 mm above looked at too.
 * - For one and two places the seats are searched as `Placing.best` says. Of the choices with three places only the 600
 *   with the best bounds are searched, so a slightly better one may be missed.
 * - The best choices by linearised errors, ten or so, are then drawn (seeded) and ordered by their draws.
 * - No plan is given whose 95 % trim band is wider than ±15° while another plan has a narrower one.
 *
 * @param spec the bait, finished in everything else: it has its coats, hooks and rings; ballast that is fixed stays
 * @param density of the water, kg/m³
 * @throws RangeError for options that cannot be; BaitError for a bait that cannot be
 */
export function ballastPlan(
  spec: BaitSpec,
  density: number,
  target: PlanTarget,
  kinds: readonly PlanKind[],
  zone: PlanZone,
  options: PlanOptions,
): PlanResult {
  const lowest = new Planner(spec, density, target, kinds, zone, options);
  const { plans: wanted } = lowest.settings;
  const low = drawnPlans(lowest, wanted);
  /** Where the lowest seats give no plan, seats above them may: longer plugs shift the weight and add filler. */
  const fallBack = (): { planner: Planner; drawn: readonly DrawnPlan[] } => {
    const planner = new Planner(spec, density, target, kinds, zone, options, true);
    // A weight set so high that the trim is no longer sure meets the target in name only.
    const drawn = drawnPlans(planner, wanted).filter(({ plan }) => trimHalfWidth(plan.sure) <= SURE_TRIM);
    return drawn.some(({ plan }) => plan.fits) ? { planner, drawn } : { planner: lowest, drawn: low };
  };
  const leastBG =
    target.leastBG === null
      ? ({ value: lowest.ownBG, from: "own" } as const)
      : ({ value: target.leastBG, from: "asked" } as const);
  const { planner, drawn } = low.some(({ plan }) => plan.fits) ? { planner: lowest, drawn: low } : fallBack();
  const fitting = drawn.filter(({ plan }) => plan.fits);
  const [best] = fitting;
  if (best) {
    const plans = fitting
      .filter(({ rank }) => rank[0] === best.rank[0])
      .slice(0, wanted)
      .map(({ plan }) => plan);
    return { plans, nearest: null, limits: [], leastBG, notes: notesOf(planner, best.plan, leastBG) };
  }
  const [lying] = drawn;
  const near = lying ? { gaveWay: "upright" as const, plan: lying.plan } : nearestPlan(planner);
  return {
    plans: [],
    nearest: near.plan,
    limits: [limitOf(planner, near), ...leftOut(planner, near)],
    leastBG,
    notes: near.plan ? notesOf(planner, near.plan, leastBG) : [],
  };
}
