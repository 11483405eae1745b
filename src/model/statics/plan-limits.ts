import type { Bait } from "../bait";
import { fitsTarget } from "./plan-search";
import type { Base, Found, SearchTarget } from "./plan-search";
import type { SeatedKinds } from "./plan-seats";
import type { Selections } from "./plan-selections";
import type { PlanKind, PlanLimit, PlanZone } from "./plan-types";
import { wrap } from "./rest";

interface Stuck {
  readonly bait: Bait;
  readonly base: Base;
  readonly target: SearchTarget;
  readonly kinds: readonly PlanKind[];
  readonly zone: PlanZone;
  readonly seated: SeatedKinds;
  readonly selections: Selections;
  readonly nearest: Found | null;
}

const grams = (kg: number): string => `${(kg * 1e3).toFixed(2)} g`;
const millimetres = (m: number): string => `${(m * 1e3).toFixed(1)} mm`;
const degrees = (rad: number): string => `${((rad * 180) / Math.PI).toFixed(1)}°`;

/**
 * Station at which the common middle of the pull must stand for the wanted trim, at the height of the nearest plan's weights:
 * P(x) = 0 of `bestSeats`, solved for x. Null where nothing is loaded or the trim is straight up or down.
 */
function stationWanted({ base, target: t, nearest }: Stuck): number | null {
  if (!nearest || t.trim === null) return null;
  const loads = nearest.loads;
  let { mass, volume } = base;
  for (const { candidate } of loads) {
    mass += candidate.mass;
    volume += candidate.displaced;
  }
  let share = 0;
  let height = 0;
  for (const { candidate, seat } of loads) {
    const s = candidate.displaced / volume - candidate.mass / mass;
    share += s;
    height += s * seat.z;
  }
  const cos = Math.cos(t.trim);
  if (share === 0 || Math.abs(cos) < 1e-6) return null;
  const x = base.vx / volume - base.mx / mass;
  const z = base.vz / volume - base.mz / mass + height;
  // B above G along the wanted trim's vertical, else it is the balance upside down.
  if (z / cos <= 0) return null;
  return (x - (z * Math.sin(t.trim)) / cos) / share;
}

/** Says which limits bind where no plan fits, the one that decides first. */
export function limitsOf(s: Stuck): PlanLimit[] {
  const { target: t, kinds, zone, seated, selections, nearest, bait } = s;
  const limits: PlanLimit[] = [];
  const { needed } = selections;
  const named = (list: readonly number[]): string => list.map((k) => `"${kinds[k]?.name}"`).join(", ");
  if (needed < -t.netTolerance) {
    limits.push({
      what: "lift",
      text: `Too little lift left: without any weight the bait is already ${grams(-needed)} heavier than the target. Lighten it, enlarge the body, or lower the target.`,
      value: -needed,
    });
    return limits;
  }
  if (seated.withoutDrill.length > 0) {
    const least = Math.min(...seated.withoutDrill.map((k) => kinds[k]?.across ?? Infinity));
    limits.push({
      what: "drill",
      text: `No drill at hand takes ${named(seated.withoutDrill)}: the smallest of them needs ${millimetres(least)}.`,
      value: least,
    });
  }
  if (seated.withoutSeat.length > 0)
    limits.push({
      what: "wall",
      text: `The hole for ${named(seated.withoutSeat)} breaks the wall of ${millimetres(zone.wall)} or meets what the bait holds everywhere between stations ${millimetres(zone.from)} and ${millimetres(zone.to)}: use smaller pieces, a thinner wall, or a wider zone.`,
      value: zone.wall,
    });
  const closest = selections.closest();
  const most = selections.greatest();
  if (closest === null || closest > t.netTolerance) {
    if (most < needed - t.netTolerance)
      limits.unshift({
        what: "pieces",
        text: `The weights that fit pull ${grams(most)} at most in ${selections.places} ${selections.places === 1 ? "place" : "places"}, ${grams(needed)} are needed: ${grams(needed - most)} are missing. Add weights, denser ones, or another place.`,
        value: needed - most,
      });
    else
      limits.unshift({
        what: "sum",
        text: `No choice of these weights comes nearer to the target than ${grams(closest ?? needed)}: add small pieces, or widen the tolerance.`,
        value: closest,
      });
    return limits;
  }
  if (nearest && t.trim !== null && Math.abs(wrap(nearest.trim - t.trim)) > t.trimTolerance) {
    const wanted = stationWanted(s);
    const off = wrap(nearest.trim - t.trim);
    limits.unshift({
      what: "trim",
      text:
        `The trim of ${degrees(t.trim)} cannot be reached within the zone: with the net buoyancy right, the nearest is ${degrees(nearest.trim)}, ${degrees(Math.abs(off))} off.` +
        (wanted === null
          ? ""
          : ` The weights' common middle would have to stand at station ${millimetres(wanted)}${wanted < 0 || wanted > bait.drawn.length ? ", off the body" : ""}.`),
      value: wanted,
    });
    return limits;
  }
  if (nearest && nearest.BG < t.leastBG)
    limits.unshift({
      what: "BG",
      text: `B would stand only ${millimetres(nearest.BG)} above G, ${millimetres(t.leastBG)} are wanted: set the weights lower, or use denser ones.`,
      value: nearest.BG,
    });
  else if (nearest && !fitsTarget(t, nearest))
    limits.unshift({
      what: "sum",
      text: `Net buoyancy and trim cannot both be met: the nearest plan is ${grams(Math.abs(nearest.net - t.net))}${t.trim === null ? "" : ` and ${degrees(Math.abs(wrap(nearest.trim - t.trim)))}`} off.`,
      value: Math.abs(nearest.net - t.net),
    });
  if (!nearest && limits.length === 0)
    limits.push({
      what: "wall",
      text: "No two weights find room clear of one another within the zone: widen it, or lessen wall and clearance.",
      value: zone.wall,
    });
  return limits;
}
