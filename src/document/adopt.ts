import type { BaitSpec, CorrectionSpec, Item } from "../model/bait";
import type { Swap } from "../model/bench";
import type { Plan } from "../model/plan";
import { benchWithout, withNewParts } from "./onto";
import { ballastEntry, fittingEntry } from "./parts";
import type { Scenario } from "./schema";
import { toGrams, toGramsPerMillilitre, toMm, toPoint } from "./si";

/** What the bench works out, written back into the document: each gives a new scenario, one undo step. */

/** The scenario with a plan's weights; weighings of the body are marked as read before their holes were cut. */
export function adoptPlan(scenario: Scenario, plan: Plan): Scenario {
  const { ballast, bench } = plan.spec;
  const added = ballast.slice(scenario.bait.ballast.length).map(ballastEntry);
  return {
    ...scenario,
    bait: { ...scenario.bait, ballast: [...scenario.bait.ballast, ...added] },
    bench: scenario.bench.map((r, i) => {
      const now = bench[i];
      return now?.before === undefined ? r : { ...r, with: now.with, before: now.before };
    }),
  };
}

/** A tub reading's correction as the document holds it. */
export function correctionEntry(c: CorrectionSpec, from?: string): Scenario["corrections"][number] {
  const { mass, x, z } = c.deviation;
  return {
    name: c.name,
    mass_g: toGrams(c.mass),
    shift_mm: toPoint(c.shift),
    ...(mass === null ? {} : { netDeviation_g: toGrams(mass) }),
    ...(x === null ? {} : { aftDeviation_mm: toMm(x) }),
    ...(z === null ? {} : { upDeviation_mm: toMm(z) }),
    ...(c.without.length === 0 ? {} : { without: c.without }),
    ...(from === undefined ? {} : { from }),
  };
}

/**
 * The scenario with a swap's hooks, rings, clips and strips: all of them come on when the bait is dressed.
 *
 * @param before the spec that the swap was worked out for: what it had beyond the scenario (a leader that hangs at the nose)
 * is not taken over
 */
export function adoptSwap(scenario: Scenario, before: BaitSpec, swap: Swap): Scenario {
  const { hangers, fittings } = swap.spec;
  // Swaps are made on the finished bait.
  const added = fittings
    .slice(before.fittings.length)
    .map((one) => ({ ...fittingEntry(one), stage: "dressed" as const }));
  const part = (p: { mass: number; density: number; weighed?: boolean }) => ({
    mass_g: toGrams(p.mass),
    density_g_ml: toGramsPerMillilitre(p.density),
    ...(p.weighed === true ? { weighed: true } : {}),
  });
  const swapped = ({ group, index, part }: Item): boolean =>
    group === "hangers" &&
    (part === "hook" || part === "ring") &&
    hangers[index]?.[part] !== before.hangers[index]?.[part];
  const left = { ...scenario, bench: benchWithout(scenario, before, swapped) };
  const next: Scenario = {
    ...left,
    bait: {
      ...scenario.bait,
      hangers: scenario.bait.hangers.map((h, i) => {
        const now = hangers[i];
        const old = before.hangers[i];
        if (!now || !old) return h;
        if (now.ring === old.ring && now.hook === old.hook) return h;
        const { ring, hook, stage: _, ...rest } = h;
        const ringNow = now.ring === old.ring ? ring : now.ring ? part(now.ring) : undefined;
        const hookNow =
          now.hook === old.hook
            ? hook
            : now.hook
              ? { ...part(now.hook), ...(now.hook.size === null ? {} : { size: now.hook.size.slice(0, 40) }) }
              : undefined;
        return {
          ...rest,
          ...(ringNow === undefined ? {} : { ring: ringNow }),
          ...(hookNow === undefined ? {} : { hook: hookNow }),
        };
      }),
      fittings: [...scenario.bait.fittings, ...added],
    },
  };
  return withNewParts(next, left);
}
