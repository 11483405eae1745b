import { assemble, MID } from "../bait";
import type { Bait, BaitSpec, BallastSpec, BallSide } from "../bait";
import { band } from "./band";
import { floating } from "./floating";
import { limitsOf } from "./plan-limits";
import { bestSeats, fitsTarget, misfitOf } from "./plan-search";
import type { Base, Found, SearchTarget } from "./plan-search";
import { candidatesOf, holeOf } from "./plan-seats";
import type { Bore, PlanSettings } from "./plan-seats";
import { Selections } from "./plan-selections";
import type { Choice } from "./plan-selections";
import type { Plan, PlanKind, PlanOptions, PlanResult, PlanTarget, PlanZone } from "./plan-types";
import { hasBalls, restTrim, sideAt } from "./rest";

/** Places, pieces and grids where nothing is said; common practice, no source. */
const DEFAULTS = {
  places: 2,
  pieces: 6,
  stationStep: 0.5e-3,
  heightStep: 1e-3,
  heights: 5,
  plans: 5,
  samples: 1000,
};

/** Order of plans: lead, misfit in tenths of the tolerance, places, pieces, misfit. */
type Rank = readonly [number, number, number, number, number];
const TENTHS = 10;
const rankOf = (lead: boolean, misfit: number, places: number, pieces: number): Rank => [
  lead ? 1 : 0,
  Math.ceil(misfit * TENTHS - 1e-9),
  places,
  pieces,
  misfit,
];
function compareRanks(a: Rank, b: Rank): number {
  for (let i = 0; i < a.length; i++) {
    const d = (a[i] as number) - (b[i] as number);
    if (d !== 0) return d;
  }
  return 0;
}

interface Made {
  readonly found: Found;
  readonly rank: Rank;
  readonly fits: boolean;
}

function check(target: PlanTarget, zone: PlanZone, s: PlanSettings): void {
  const above0 = (what: string, v: number): void => {
    if (!(Number.isFinite(v) && v > 0)) throw new RangeError(`${what} ${v}: give a number above 0`);
  };
  above0("tolerance of net buoyancy", target.netTolerance);
  if (target.trim !== null) above0("tolerance of trim", target.trimTolerance);
  above0("grid of stations", s.stationStep);
  above0("grid of heights", s.heightStep);
  if (!(target.leastBG >= 0)) throw new RangeError(`least BG ${target.leastBG} m: give 0 or more`);
  if (!(zone.wall >= 0 && zone.clearance >= 0))
    throw new RangeError(`wall ${zone.wall} m and clearance ${zone.clearance} m: give 0 or more`);
  if (!(zone.to >= zone.from))
    throw new RangeError(`zone from ${zone.from} to ${zone.to} m: the second must not be less`);
  if (!(s.filler >= 0)) throw new RangeError(`filler density ${s.filler} kg/m³: give 0 or more`);
  for (const [what, v, most] of [
    ["places", s.places, 3],
    ["pieces in one place", s.pieces, 100],
    ["heights", s.heights, 50],
    ["plans", s.plans, 100],
  ] as const)
    if (!(Number.isInteger(v) && v >= 1 && v <= most))
      throw new RangeError(`${what} ${v}: give a whole number from 1 to ${most}`);
}

/** Sums of the bait without the plan's loads, the balls on a side. */
function baseOf(bait: Bait, side: BallSide): Base {
  const { mass, G, displaced, B } = bait.rigid(side);
  return {
    mass,
    mx: mass * G.x,
    mz: mass * G.z,
    volume: displaced,
    vx: displaced * B.x,
    vz: displaced * B.z,
  };
}

/** The spec with a plan's weights; a weighing of the body was taken before their holes were cut. */
function withLoads(
  bait: Bait,
  found: Found,
  bores: readonly (Bore | null)[],
  kinds: readonly PlanKind[],
  filler: number,
): BaitSpec {
  const taken = new Set(bait.spec.ballast.map((b) => b.name));
  const added = found.loads.flatMap(({ candidate, seat }, i): BallastSpec[] => {
    const kind = kinds[candidate.kind];
    if (!kind) return [];
    const wanted = candidate.count > 1 ? `${candidate.count} × ${kind.name}` : kind.name;
    let name = wanted;
    for (let k = 2; taken.has(name); k++) name = `${wanted} (${k})`;
    taken.add(name);
    return [
      {
        name,
        at: { x: seat.x, z: seat.z },
        mass: candidate.count * kind.mass,
        stuff: kind.stuff,
        where: candidate.where,
        hole: bores[i]?.volume ?? null,
        filler: bores[i] ? filler : 0,
      },
    ];
  });
  const inside = added.filter((b) => b.where === "inside").map((b) => b.name);
  return {
    ...bait.spec,
    ballast: [...bait.spec.ballast, ...added],
    bench: bait.spec.bench.map((r) =>
      r.kind === "weighing" && r.with.includes("body") && inside.length > 0
        ? {
            ...r,
            // A group on the scale is what was on it then: by name, so that the new weights are not counted with it.
            with: r.with.flatMap((w) => (w === "ballast" ? bait.spec.ballast.map((b) => b.name) : [w])),
            before: [
              ...(r.before ?? []).flatMap((w) =>
                w === "ballast" ? bait.spec.ballast.map((b) => b.name) : [w],
              ),
              ...inside,
            ],
          }
        : r,
    ),
  };
}

/**
 * Ballast plans for a target from the weights in a box (docs/model.md §3 for what each counts). Exact over the box: every
 * choice of up to `places` loads (pieces of one kind in one hole or at one spot), every seat of the grid of stations and
 * heights; nothing is rounded afterwards.
 *
 * Seats: a hole is bored from below in the plane of symmetry with the smallest drill that takes the piece; the pieces stand
 * on a plug at least as long as the wall; the lowest seat first, further ones `heightStep` apart. With loose balls, they lie
 * where the wanted trim puts them.
 *
 * @param spec the bait finished in everything else: coats, hooks and rings to come among it; ballast that is fixed stays
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
  const settings: PlanSettings = { ...DEFAULTS, ...options };
  check(target, zone, settings);
  const bait = assemble(spec);
  const seated = candidatesOf(bait, density, kinds, zone, settings);
  const t: SearchTarget = { density, ...target, clearance: zone.clearance };
  const bases = sidesFor(bait, target).map((side) => baseOf(bait, side));
  const first = bases[0];
  if (!first) throw new Error("no side for the balls");
  const selections = new Selections(seated.candidates, kinds, first, t, settings.places, bases.length === 1);

  const bores = (found: Found): (Bore | null)[] =>
    found.loads.map(({ candidate }) => seated.candidates.find((c) => c === candidate)?.bore ?? null);
  const seat = (choice: Choice, goal: SearchTarget): Found | null => {
    let best: Found | null = null;
    for (const base of bases) {
      const found = bestSeats(base, goal, choice.loads);
      if (found && (!best || found.misfit < best.misfit)) best = found;
    }
    return best;
  };
  const held = { bodyDensity: bait.bodyDensity, volumeFactor: bait.volumeFactor };
  const build = (found: Found): Bait =>
    assemble(withLoads(bait, found, bores(found), kinds, settings.filler), {
      drawn: bait.drawn,
      found: held,
    });
  /** With loose balls the rest trim follows their rule: only what the whole bait says counts. */
  const loose = hasBalls(bait);
  const trueTrim = (found: Found): Found => {
    if (!loose) return found;
    const rest = restTrim(build(found));
    const trim = rest.pitch ?? found.trim;
    return { ...found, trim, BG: rest.BG, misfit: misfitOf(t, found.net, trim) };
  };

  /** Best-first: a choice is opened in the order of the best rank that it can have. */
  const search = (lead: boolean, most: number): Made[] => {
    const made = new Map<string, Made>();
    const kept = (): Made[] => [...made.values()].sort((a, b) => compareRanks(a.rank, b.rank)).slice(0, most);
    const bound = (c: Choice): Rank => rankOf(lead, c.least, c.loads.length, c.pieces);
    const open = selections
      .within(target.netTolerance, lead)
      .map((choice) => ({ choice, rank: bound(choice) }))
      .sort((a, b) => compareRanks(a.rank, b.rank));
    let last: Rank | null = null;
    for (const { choice, rank } of open) {
      if (last && compareRanks(rank, last) >= 0) break;
      const raw = seat(choice, t);
      if (!raw) continue;
      const found = trueTrim(raw);
      if (!fitsTarget(t, found)) continue;
      const own = rankOf(lead, found.misfit, choice.loads.length, choice.pieces);
      const before = made.get(choice.signature);
      if (before && compareRanks(before.rank, own) <= 0) continue;
      made.set(choice.signature, { found, rank: own, fits: true });
      if (made.size >= most) last = kept()[most - 1]?.rank ?? null;
    }
    return kept();
  };

  const finish = ({ found, fits }: Made): Plan => {
    const whole = build(found);
    const rest = restTrim(whole);
    const { net, BG } = { net: found.net, BG: rest.BG };
    const holes = bores(found);
    const afloat = net > 0 ? floating(whole, density) : null;
    // Bench readings count again: a weighed body has a narrow band.
    const shown = assemble(whole.spec, { drawn: bait.drawn });
    const spread = settings.samples > 0 ? band(shown, density, { samples: settings.samples }) : null;
    return {
      loads: found.loads.map(({ candidate, seat: at }, i) => {
        const bore = holes[i] ?? null;
        const kind = kinds[candidate.kind];
        return {
          kind: candidate.kind,
          name: kind?.name ?? "",
          count: candidate.count,
          mass: candidate.count * (kind?.mass ?? 0),
          where: candidate.where,
          at: { x: at.x, z: at.z },
          hole: bore ? holeOf(bait, bore, at) : null,
        };
      }),
      leadFree: found.loads.every(({ candidate }) => kinds[candidate.kind]?.lead !== true),
      holes: holes.filter((b) => b !== null).length,
      pieces: found.loads.reduce((n, l) => n + l.candidate.count, 0),
      net,
      trim: rest.pitch,
      BG,
      GM: afloat?.GM ?? null,
      misfit: found.misfit,
      fits,
      band: spread && {
        net: spread.netBuoyancy,
        trim: spread.restTrim,
        chanceOfSinking: spread.chanceOfSinking,
      },
      spec: whole.spec,
    };
  };

  const plans = search(false, settings.plans);
  if (plans.length < settings.plans && kinds.some((k) => k.lead))
    plans.push(...search(true, settings.plans - plans.length));
  if (plans.length > 0) return { plans: plans.map(finish), nearest: null, limits: [] };

  // Nothing fits: the least misfit of all, first without the margin of BG.
  const free = { ...t, leastBG: 0 };
  const loosely = (choice: Choice): Found | null => {
    const raw = seat(choice, free);
    return raw ? trueTrim(raw) : null;
  };
  const nearest = nearestOf(selections, t, loosely, false);
  return {
    plans: [],
    nearest: nearest
      ? finish({ found: nearest, rank: rankOf(false, nearest.misfit, 0, 0), fits: false })
      : null,
    // What binds is asked of plans whose net buoyancy is right, where there are any.
    limits: limitsOf({
      bait,
      base: first,
      target: t,
      kinds,
      zone,
      seated,
      selections,
      nearest: nearestOf(selections, t, loosely, true) ?? nearest,
    }),
  };
}

/**
 * The choice and seats with the least misfit, whatever the tolerance: the window grows until it cannot hold a better one.
 *
 * @param inNet only among those whose net buoyancy is within its tolerance
 */
function nearestOf(
  selections: Selections,
  t: SearchTarget,
  seat: (choice: Choice) => Found | null,
  inNet: boolean,
): Found | null {
  let best: Found | null = null;
  const closest = selections.closest();
  if (closest === null) return null;
  let window = inNet ? t.netTolerance : Math.max(t.netTolerance, closest * (1 + 1e-9));
  for (let round = 0; round < (inNet ? 1 : 2); round++) {
    const open = [...selections.within(window, false), ...selections.within(window, true)].sort(
      (a, b) => a.least - b.least,
    );
    for (const choice of open) {
      if (best && choice.least >= best.misfit) break;
      const found = seat(choice);
      if (found && (!best || found.misfit < best.misfit)) best = found;
    }
    if (!best || best.misfit * t.netTolerance <= window) break;
    window = best.misfit * t.netTolerance;
  }
  return best;
}

/** Sides on which the loose balls may lie at the wanted trim. */
function sidesFor(bait: Bait, target: PlanTarget): BallSide[] {
  if (!hasBalls(bait)) return [MID];
  if (target.trim === null) return [restTrim(bait).side];
  const low = sideAt(target.trim - target.trimTolerance);
  const high = sideAt(target.trim + target.trimTolerance);
  return low.end === high.end && low.face === high.face ? [low] : [low, high];
}
