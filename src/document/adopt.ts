import { assemble, prepareBench, readingHeldUnder, scaleReading } from "../model/bait";
import type { BaitSpec, CorrectionSpec, Item, Stuff } from "../model/bait";
import type { Swap } from "../model/bench";
import type { Plan } from "../model/statics";
import type { Vec } from "../model/base";
import type { Scenario, ScenarioBait } from "./schema";

/** What the bench works out, written back into the document: each gives a new scenario, one undo step. */

/** Out of SI, without the last digits that only the conversion makes. */
const plain = (value: number): number => Number(value.toPrecision(12));
const g = (kg: number): number => plain(kg * 1e3);
const mm = (m: number): number => plain(m * 1e3);
const point = (p: Vec): [number, number] => [mm(0 - p.x), mm(p.z)];

const stuffKeys = (s: Stuff): { material?: string; density_g_ml?: number } => ({
  ...(s.name === "given density" ? {} : { material: s.name }),
  ...(s.given ? { density_g_ml: plain(s.density / 1e3) } : {}),
});

/** The scenario with a plan's weights; weighings of the body are marked as read before their holes were cut. */
export function adoptPlan(scenario: Scenario, plan: Plan): Scenario {
  const { ballast, bench } = plan.spec;
  const added = ballast.slice(scenario.bait.ballast.length).map((b): ScenarioBait["ballast"][number] => ({
    name: b.name,
    at_mm: point(b.at),
    mass_g: g(b.mass),
    ...stuffKeys(b.stuff),
    where: b.where,
    ...(b.hole === null ? {} : { hole_ml: plain(b.hole * 1e6) }),
    ...(b.hole === null || b.filler === 0 ? {} : { filler_g_ml: plain(b.filler / 1e3) }),
  }));
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
    mass_g: g(c.mass),
    shift_mm: point(c.shift),
    ...(mass === null ? {} : { netDeviation_g: g(mass) }),
    ...(x === null ? {} : { aftDeviation_mm: mm(x) }),
    ...(z === null ? {} : { upDeviation_mm: mm(z) }),
    ...(c.without.length === 0 ? {} : { without: c.without }),
    ...(from === undefined ? {} : { from }),
  };
}

/**
 * Readings are facts about what was on the scale then. What has been swapped since is taken off them, as the account had it:
 * the rest of the reading says the same of the body as before.
 *
 * @param gone whether a row of the account is no longer what it was
 */
function withoutSwapped(
  scenario: Scenario,
  before: BaitSpec,
  gone: (row: Item) => boolean,
): Scenario["bench"] {
  const rows = assemble(before).items.filter((row) => row.group !== "body" && row.group !== "corrections");
  const prepared = prepareBench(before, rows);
  return scenario.bench.flatMap((reading, i): Scenario["bench"][number][] => {
    const read = prepared[i];
    if (read === undefined) throw new Error(`bench[${i}] is not a reading of the bait that the swap is for`);
    const there = read.others.flatMap((k) => rows[k] ?? []);
    const off = there.filter(gone);
    if (off.length === 0) return [reading];
    const left = there.filter((row) => !gone(row)).map((row) => row.item);
    // Of what was on the scale nothing is left on the bait: it says nothing of it any more.
    if (!read.hasBody && left.length === 0) return [];
    const air = reading.air === true;
    const share = off.reduce((sum, { mass, displaced }) => {
      if (reading.kind === "displacement") return sum + readingHeldUnder(displaced, read.tap, air);
      return sum + (air ? scaleReading(mass, displaced) : mass);
    }, 0);
    const less = (value: number): number => plain(value - g(share));
    const { repeats_g: repeats } = reading;
    return [
      {
        ...reading,
        reading_g: less(reading.reading_g),
        with: [...(read.hasBody ? ["body"] : []), ...left],
        ...(repeats === undefined ? {} : { repeats_g: repeats.map(less) }),
      },
    ];
  });
}

/**
 * The scenario with a swap's hooks, rings, clips and strips.
 *
 * @param before the spec that the swap was worked out for: what it had beyond the scenario (a leader that hangs at the nose)
 * is not taken over
 */
export function adoptSwap(scenario: Scenario, before: BaitSpec, swap: Swap): Scenario {
  const { hangers, fittings } = swap.spec;
  const added = fittings.slice(before.fittings.length).map((f): ScenarioBait["fittings"][number] => ({
    name: f.name,
    at_mm: point(f.at),
    mass_g: g(f.mass),
    density_g_ml: plain(f.stuff.density / 1e3),
    where: f.where,
  }));
  const part = (p: { mass: number; density: number; weighed?: boolean }) => ({
    mass_g: g(p.mass),
    density_g_ml: plain(p.density / 1e3),
    ...(p.weighed === true ? { weighed: true } : {}),
  });
  const swapped = ({ group, index, part }: Item): boolean =>
    group === "hangers" &&
    (part === "hook" || part === "ring") &&
    hangers[index]?.[part] !== before.hangers[index]?.[part];
  return {
    ...scenario,
    bench: withoutSwapped(scenario, before, swapped),
    bait: {
      ...scenario.bait,
      hangers: scenario.bait.hangers.map((h, i) => {
        const now = hangers[i];
        const old = before.hangers[i];
        if (!now || !old) return h;
        const { ring, hook, ...rest } = h;
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
}
