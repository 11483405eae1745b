import { wrap } from "../statics";
import type { Near } from "./nearest";
import type { Planner } from "./planner";
import type { Plan, PlanLimit } from "./types";
import { degrees, grams, millimetres } from "./words";

const names = (planner: Planner, list: readonly number[]): string =>
  list.map((k) => `“${planner.kinds[k]?.name ?? ""}”`).join(", ");

/**
 * Station at which the common middle of the plan's weights would have to stand for the wanted trim, at their present
 * height: P = 0 solved for x (`Axes`). Null where nothing is loaded, where the trim is straight up or down, or where the
 * balance would be upside down.
 */
function stationWanted(planner: Planner, plan: Plan): number | null {
  const { base, goal, bait } = planner;
  if (goal.trim === null) return null;
  const rows = plan.spec.ballast.slice(bait.spec.ballast.length);
  let { mass, volume } = base;
  const loads = rows.map((b) => {
    const own = b.mass / b.stuff.density;
    const hole = b.where === "inside" ? (b.hole ?? own) : 0;
    const more = b.mass + Math.max(0, hole - own) * b.filler - hole * bait.bodyDensity;
    const displaced = Math.max(0, own - hole);
    mass += more;
    volume += displaced;
    return { more, displaced, z: b.at.z };
  });
  let share = 0;
  let height = 0;
  for (const { more, displaced, z } of loads) {
    const s = displaced / volume - more / mass;
    share += s;
    height += s * z;
  }
  const { cos, sin } = planner.ranking.axes;
  if (share === 0 || Math.abs(cos) < 1e-6) return null;
  const x = base.vx / volume - base.mx / mass;
  const z = base.vz / volume - base.mz / mass + height;
  if (z / cos <= 0) return null;
  return (x - (z * sin) / cos) / share;
}

/** The limit that gives way, in one sentence with its figure and the remedy. */
export function limitOf(planner: Planner, { gaveWay, plan }: Near): PlanLimit {
  const { goal, choices, needed, seated, zone } = planner;
  const asked = millimetres(goal.leastBG);
  const places = `${choices.places} ${choices.places === 1 ? "place" : "places"}`;
  const off = plan === null || goal.trim === null || plan.trim === null ? 0 : wrap(plan.trim - goal.trim);
  switch (gaveWay) {
    case "lift":
      return {
        what: "lift",
        text: `There is no room for ballast: without any weight the bait is already ${grams(-needed)} heavier than the target. Use lighter wood or fittings, a larger body, or a lower target.`,
        value: -needed,
      };
    case "BG":
      return {
        what: "BG",
        text: `Net buoyancy${goal.trim === null ? "" : " and trim"} can be met, but then B is at most ${millimetres(plan?.BG ?? NaN)} above G; the target asks for ${asked}. Denser weights or a thinner wall bring G lower.`,
        value: plan?.BG ?? null,
      };
    case "upright":
      return {
        what: "upright",
        text: `Afloat the bait lies on its side: the best of these plans has a metacentric height of ${millimetres(plan?.GM ?? NaN)}, and it must be above 0. Denser weights set lower, or a broader back, hold the bait upright.`,
        value: plan?.GM ?? null,
      };
    case "trim": {
      const wanted = plan && stationWanted(planner, plan);
      const offBody = wanted !== null && (wanted < 0 || wanted > planner.bait.drawn.length);
      return {
        what: "trim",
        text:
          `Net buoyancy can be met, but not together with the trim: the nearest trim is ${degrees(plan?.trim ?? NaN)}, ${degrees(Math.abs(off))} from the wanted ${degrees(goal.trim ?? 0)}.` +
          (wanted === null
            ? ""
            : ` The weights' common middle would have to stand at station ${millimetres(wanted)}${offBody ? ", off the body" : ""}.`),
        value: wanted,
      };
    }
    case "net": {
      const missing = goal.net - (plan?.net ?? NaN);
      const turned =
        Math.abs(off) > goal.trimTolerance ? ` Its trim is also ${degrees(Math.abs(off))} off.` : "";
      const most = choices.greatest();
      if (most < needed - goal.netTolerance)
        return {
          what: "pieces",
          text: `The weights in the box lower the net buoyancy by ${grams(most)} at most in ${places}; the target needs ${grams(needed)}: ${grams(needed - most)} are missing. More weights${choices.places < 3 ? ", denser ones, or one more place" : " or denser ones"} would help.${turned}`,
          value: needed - most,
        };
      return {
        what: "sum",
        text: `No choice of the weights in the box meets the net buoyancy${goal.trim === null || turned !== "" ? "" : " together with the trim"}: the nearest is ${grams(Math.abs(missing))} too ${missing > 0 ? "heavy" : "light"}, and the target allows ±${grams(goal.netTolerance)}. Smaller pieces among the weights, or a wider tolerance, would help.${turned}`,
        value: Math.abs(missing),
      };
    }
    case "room": {
      if (seated.withoutDrill.length > 0 && seated.withoutSeat.length === 0) return drillLimit(planner);
      return {
        what: "wall",
        text: `No hole or spot has room for these weights between stations ${millimetres(zone.from)} and ${millimetres(zone.to)} with a wall of ${millimetres(zone.wall)} and ${millimetres(zone.clearance)} clear of everything in the bait. Smaller pieces, a thinner wall, or a longer zone would help.`,
        value: zone.wall,
      };
    }
  }
}

function drillLimit(planner: Planner): PlanLimit {
  const { seated, kinds } = planner;
  const least = Math.min(...seated.withoutDrill.map((k) => kinds[k]?.across ?? Infinity));
  return {
    what: "drill",
    text: `No drill in the box takes ${names(planner, seated.withoutDrill)}: the smallest of them needs ${millimetres(least)}.`,
    value: least,
  };
}

/** What else reduces the choice: kinds that no drill takes, and kinds that find no room. */
export function leftOut(planner: Planner, { gaveWay }: Near): PlanLimit[] {
  const { seated, zone } = planner;
  // Where the bait is too heavy already, or everything was left out, the sentence of the limit says all.
  if (gaveWay === "lift" || gaveWay === "room") return [];
  const limits: PlanLimit[] = [];
  if (seated.withoutDrill.length > 0) limits.push(drillLimit(planner));
  if (seated.withoutSeat.length > 0)
    limits.push({
      what: "wall",
      text: `Left out, because their holes find no room with a wall of ${millimetres(zone.wall)} between stations ${millimetres(zone.from)} and ${millimetres(zone.to)}: ${names(planner, seated.withoutSeat)}.`,
      value: zone.wall,
    });
  return limits;
}
