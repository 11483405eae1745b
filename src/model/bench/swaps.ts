import { atan2, hypot, square, tan } from "../base";
import type { Bait, BaitSpec, FittingSpec, HangerSpec } from "../bait";
import type { Surroundings } from "../forces";
import { restTrim } from "../statics";
import { terminalRise } from "../tow";
import { bottomAt, exactGrams, angleFrom } from "./exact";
import { netOf } from "./net";
import type { RiseOptions } from "./rise";
import type { Swap, SwapChange, SwapGoal, SwapPart, SwapResult } from "./types";
import { again } from "./with";

export interface SwapOptions extends RiseOptions {
  /** Greatest number of changes together (1 or 2, default 2), and of swaps given (default 8). */
  readonly changes?: 1 | 2;
  readonly swaps?: number;
  /** Stations at which strips may be stuck on the belly, m; default each eighth of the length. */
  readonly places?: readonly number[];
  /** Where the exact grams go, m, where any station will do for the trim: default none, the trim decides. */
  readonly exactAt?: number;
  /** Density of what the exact grams are of, kg/m³; default tin 7310 (NIST). */
  readonly exactDensity?: number;
  /** Work out the steady rise of the swaps given and rank them by it and its attitude. Default true. */
  readonly rise?: boolean;
}

/** A length of leader hanging at the tie eye: a fitting outside with its mass and volume. SI. */
export function withLeader(
  spec: BaitSpec,
  leader: { readonly length: number; readonly diameter: number; readonly density: number },
): BaitSpec {
  const volume = (Math.PI / 4) * square(leader.diameter) * leader.length;
  return {
    ...spec,
    fittings: [
      ...spec.fittings,
      {
        name: "leader",
        at: spec.tie,
        mass: volume * leader.density,
        stuff: { name: "leader", density: leader.density, kind: "plastic", given: true },
        where: "outside",
      },
    ],
  };
}

/** Both net buoyancy and trim are within their tolerance: they are off by no more than this together. */
const MET = Math.SQRT2;
type Listed = { readonly misfit: number; readonly changes: readonly Pick<SwapChange, "bare">[] };
/**
 * Order of the list: by misfit. A hook that loses its ring comes behind all that meet the goal otherwise, since its hanger
 * has to be opened for it, or built anew. Common practice, no source.
 */
function byMerit(a: Listed, b: Listed): number {
  const at = ({ misfit, changes }: Listed): number =>
    changes.some((one) => one.bare) ? Math.max(misfit, MET) : misfit;
  // Of equals the fewer changes.
  return at(a) - at(b) || a.misfit - b.misfit || a.changes.length - b.changes.length;
}

function goalMisfit(goal: SwapGoal, net: number, trim: number | null): number {
  const n = (net - goal.net) / goal.netTolerance;
  if (goal.trim === null) return Math.abs(n);
  // Without a rest trim it lies anyhow: as far off as can be.
  return hypot(n, (trim === null ? Math.PI : angleFrom(trim, goal.trim)) / goal.trimTolerance);
}

/** One change of the bait with its mass, volume and place, and how it is written into the spec. */
interface Step {
  readonly change: SwapChange;
  readonly mass: number;
  readonly volume: number;
  /** Two changes of one thing exclude one another. */
  readonly slot: string;
  readonly uses: readonly { readonly part: number; readonly count: number }[];
  readonly lead: boolean;
  readonly apply: (spec: BaitSpec) => BaitSpec;
}

function stepsOf(bait: Bait, density: number, parts: readonly SwapPart[], places: readonly number[]): Step[] {
  const { spec } = bait;
  const steps: Step[] = [];
  const step = (
    change: Omit<SwapChange, "mass" | "net" | "bare"> & Partial<Pick<SwapChange, "bare">>,
    slot: string,
    mass: number,
    volume: number,
    uses: Step["uses"],
    lead: boolean,
    apply: Step["apply"],
  ): void => {
    steps.push({
      change: { bare: false, ...change, mass, net: density * volume - mass },
      slot,
      mass,
      volume,
      uses,
      lead,
      apply,
    });
  };
  const hanger =
    (index: number, to: (h: HangerSpec) => HangerSpec) =>
    (s: BaitSpec): BaitSpec => ({ ...s, hangers: s.hangers.map((h, i) => (i === index ? to(h) : h)) });
  const fitting =
    (f: FittingSpec) =>
    (s: BaitSpec): BaitSpec => ({ ...s, fittings: [...s.fittings, f] });
  const stuffOf = (p: SwapPart): FittingSpec["stuff"] => ({
    name: p.name,
    density: p.density,
    kind: "metal",
    given: true,
  });

  spec.hangers.forEach((h, index) => {
    for (const use of ["hook", "ring"] as const) {
      const now = h[use];
      const nowVolume = now ? now.mass / now.density : 0;
      parts.forEach((p, part) => {
        if (p.use !== use || p.count < 1) return;
        const same =
          now !== null && Math.abs(now.mass - p.mass) < 1e-9 && Math.abs(now.density - p.density) < 1e-6;
        if (same) return;
        const on = { mass: p.mass, density: p.density, weighed: p.weighed };
        step(
          {
            change: now ? "replace" : "add",
            part: use,
            place: h.name,
            at: h.at,
            off: now ? use : null,
            on: p.name,
            count: 1,
          },
          `${use} ${index}`,
          p.mass - (now?.mass ?? 0),
          p.mass / p.density - nowVolume,
          [{ part, count: 1 }],
          p.lead,
          hanger(index, (old) =>
            use === "hook" ? { ...old, hook: { ...on, size: p.name } } : { ...old, ring: on },
          ),
        );
      });
      // A ring can go, though its hook then needs an eye that opens; a hook is not taken off to make it float.
      if (use === "ring" && now)
        step(
          {
            change: "remove",
            part: "ring",
            place: h.name,
            at: h.at,
            off: "ring",
            on: null,
            bare: h.hook !== null,
            count: 1,
          },
          `ring ${index}`,
          -now.mass,
          -nowVolume,
          [],
          false,
          hanger(index, (old) => ({ ...old, ring: null })),
        );
    }
    // A second ring at the same eye.
    parts.forEach((p, part) => {
      if (p.use !== "ring" || p.count < 1 || !h.ring) return;
      step(
        { change: "add", part: "ring", place: h.name, at: h.at, off: null, on: p.name, count: 1 },
        `second ring ${index}`,
        p.mass,
        p.mass / p.density,
        [{ part, count: 1 }],
        p.lead,
        fitting({ name: `${h.name} ${p.name}`, at: h.at, mass: p.mass, stuff: stuffOf(p), where: "outside" }),
      );
    });
  });
  parts.forEach((p, part) => {
    if (p.count < 1) return;
    if (p.use === "clip")
      step(
        { change: "add", part: "clip", place: "tie eye", at: spec.tie, off: null, on: p.name, count: 1 },
        "clip",
        p.mass,
        p.mass / p.density,
        [{ part, count: 1 }],
        p.lead,
        fitting({ name: p.name, at: spec.tie, mass: p.mass, stuff: stuffOf(p), where: "outside" }),
      );
    if (p.use === "strip")
      for (const s of places)
        for (let count = 1; count <= Math.min(p.count, 6); count++) {
          const at = bottomAt(bait, s);
          step(
            {
              change: "add",
              part: "strip",
              place: "belly",
              at,
              off: null,
              on: p.name,
              count,
            },
            `strip ${s}`,
            count * p.mass,
            (count * p.mass) / p.density,
            [{ part, count }],
            p.lead,
            fitting({
              name: count > 1 ? `${count} × ${p.name}` : p.name,
              at,
              mass: count * p.mass,
              stuff: stuffOf(p),
              where: "outside",
            }),
          );
        }
  });
  return steps;
}

/**
 * Swaps from the box that bring net buoyancy and rest trim nearest to a goal; the nearest are then put together whole, and
 * ranked by the steady rise and its attitude against those of the goal. What brings the bait no nearer than it is, is no
 * swap to offer. The fall-back: exact grams at a place on the belly.
 *
 * Every choice of one or two changes is looked at; masses act at their eye or place, so that their sums are exact.
 *
 * @param bait in the new water, with the leader where there is one (`withLeader`)
 * @param around the new water
 */
export function swaps(
  bait: Bait,
  around: Surroundings,
  goal: SwapGoal,
  parts: readonly SwapPart[],
  options: SwapOptions = {},
): SwapResult {
  const {
    changes = 2,
    swaps: most = 8,
    places: given,
    exactAt,
    exactDensity = 7310,
    rise = true,
    ...calibrated
  } = options;
  if (!(goal.netTolerance > 0 && goal.trimTolerance > 0))
    throw new RangeError("tolerances of the goal: give numbers above 0");
  const { density } = around;
  const places = given ?? [1, 2, 3, 4, 5, 6, 7].map((k) => (k / 8) * bait.drawn.length);
  for (const s of places)
    if (!(s >= 0 && s <= bait.drawn.length))
      throw new RangeError(`station ${s} m for strips: it lies off the body`);
  const rest = restTrim(bait);
  const rigid = bait.rigid(rest.side);
  const before = { net: netOf(bait, density), trim: rest.pitch };
  const steps = stepsOf(bait, density, parts, places);

  const sums = (chosen: readonly Step[]): { net: number; trim: number } => {
    let { mass, displaced: volume } = rigid;
    let mx = mass * rigid.G.x;
    let mz = mass * rigid.G.z;
    let vx = volume * rigid.B.x;
    let vz = volume * rigid.B.z;
    for (const { mass: m, volume: v, change } of chosen) {
      mass += m;
      mx += m * change.at.x;
      mz += m * change.at.z;
      volume += v;
      vx += v * change.at.x;
      vz += v * change.at.z;
    }
    return {
      net: density * volume - mass,
      trim: atan2(vx / volume - mx / mass, vz / volume - mz / mass),
    };
  };
  const enough = (chosen: readonly Step[]): boolean =>
    parts.every(
      (p, i) =>
        chosen.reduce((n, s) => n + s.uses.reduce((k, u) => k + (u.part === i ? u.count : 0), 0), 0) <=
        p.count,
    );
  let nearest: (Listed & { readonly chosen: readonly Step[] })[] = [];
  const keep = Math.max(4 * most, 16);
  const offer = (chosen: readonly Step[]): void => {
    if (!enough(chosen)) return;
    const { net, trim } = sums(chosen);
    nearest.push({
      chosen,
      changes: chosen.map((s) => s.change),
      misfit: goalMisfit(goal, net, trim),
    });
    if (nearest.length > 64 * keep) nearest = cut();
  };
  const cut = (): typeof nearest => [...nearest].sort(byMerit).slice(0, keep);
  // Off with a ring and on with one at the same eye is the swap of that ring, which is a step of its own. And a hook that
  // comes on takes the ring that is there.
  const exchange = (a: Step, b: Step): boolean =>
    a.change.change === "remove" &&
    (b.slot === `second ${a.slot}` ||
      (b.slot === a.slot.replace("ring", "hook") && b.change.change === "add"));
  steps.forEach((a, i) => {
    offer([a]);
    if (changes < 2) return;
    for (let j = i + 1; j < steps.length; j++) {
      const b = steps[j];
      if (b && a.slot !== b.slot && !exchange(a, b) && !exchange(b, a)) offer([a, b]);
    }
  });

  const riseOf = (b: Bait): { speed: number; pitch: number } => {
    const { speed, pitch } = terminalRise(b, around, calibrated);
    return { speed, pitch };
  };
  // The rise that the goal means: this bait with that net buoyancy, and G where the wanted trim has it.
  const goalRise = rise ? riseOf(atGoal(bait, around, goal)) : null;
  const found = cut()
    .map(({ chosen }): Swap => {
      const spec = chosen.reduce((s, step) => step.apply(s), bait.spec);
      const whole = again(bait, spec);
      const trim = restTrim(whole).pitch;
      const net = netOf(whole, density);
      return {
        changes: chosen.map((s) => s.change),
        net,
        trim,
        rise: null,
        misfit: goalMisfit(goal, net, trim),
        leadFree: chosen.every((s) => !s.lead),
        spec,
      };
    })
    .sort(byMerit)
    .slice(0, most);
  /** Distance of a rise from the goal's, in tolerances. */
  const riseMisfit = (own: NonNullable<Swap["rise"]>, wanted: NonNullable<Swap["rise"]>): number => {
    // net ~ v² near a speed: a tolerance of net is half of it, relatively, in speed.
    const per = Math.max(Math.abs(goal.net), goal.netTolerance);
    const tolerance = (Math.abs(wanted.speed) * goal.netTolerance) / (2 * per);
    const n = tolerance > 0 ? (own.speed - wanted.speed) / tolerance : 0;
    const t = goal.trim === null ? 0 : angleFrom(own.pitch, wanted.pitch) / goal.trimTolerance;
    return hypot(n, t);
  };
  const ranked = goalRise
    ? found
        .map((s): Swap => {
          const own = riseOf(again(bait, s.spec));
          return { ...s, rise: own, misfit: riseMisfit(own, goalRise) };
        })
        .sort(byMerit)
    : found;
  const unchanged = goalRise ? riseMisfit(riseOf(bait), goalRise) : goalMisfit(goal, before.net, before.trim);
  return {
    before,
    goal,
    goalRise,
    swaps: ranked.filter(({ misfit }) => misfit < unchanged),
    exact: exactGrams(bait, density, goal, exactDensity, exactAt),
  };
}

/** The bait with the goal's net buoyancy, and G moved lengthwise to the goal's rest trim. */
function atGoal(bait: Bait, around: Surroundings, goal: SwapGoal): Bait {
  const { G, B } = restTrim(bait);
  const mass = netOf(bait, around.density) - goal.net;
  const shift = goal.trim === null ? 0 : B.x - G.x - (B.z - G.z) * tan(goal.trim);
  return again(bait, {
    ...bait.spec,
    corrections: [
      ...(bait.spec.corrections ?? []),
      {
        name: "goal",
        mass,
        shift: { x: shift, z: 0 },
        deviation: { mass: null, x: null, z: null },
        without: [],
      },
    ],
  });
}
