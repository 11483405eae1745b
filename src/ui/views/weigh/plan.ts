import { tryCompile } from "../../../document";
import type { Scenario } from "../../../document";
import type { Item } from "../../../model/bait";
import type { Worked } from "../../state";

/** The document to plan on, or what stands in the way of taking its ballast out. */
export type Stripped =
  { readonly ok: true; readonly scenario: Scenario } | { readonly ok: false; readonly why: string };

/**
 * The document without its ballast. Readings are facts: one that had ballast on the scale, or was read with the holes of
 * that ballast in the body, would mean something else without it, and is refused.
 */
export function withoutBallast({ scenario, compiled }: Worked): Stripped {
  const rows = compiled.bait.items.filter((one) => one.group === "ballast");
  const namesOf = (row: Item): readonly string[] => {
    const own = scenario.bait.ballast[row.index]?.name;
    return ["ballast", row.item, ...(own === undefined ? [] : [own])];
  };
  const words = new Set(rows.flatMap(namesOf));
  if (rows.length === 0) return { ok: true, scenario };
  for (const one of scenario.bench) {
    const read = `The reading of ${one.reading_g} g`;
    if (one.with.some((word) => words.has(word)))
      return {
        ok: false,
        why: `${read} had the present ballast on the scale. Remove it, or keep the ballast.`,
      };
    const bored = rows.filter((row) => row.removed > 0);
    const whole = bored.every((row) => namesOf(row).some((word) => one.before?.includes(word) === true));
    if (one.kind === "weighing" && one.with.includes("body") && !whole)
      return {
        ok: false,
        why: `${read} weighed the body with the holes of the present ballast in it. Remove it, or keep the ballast.`,
      };
  }
  const next: Scenario = {
    ...scenario,
    bait: { ...scenario.bait, ballast: [] },
    bench: scenario.bench.map((one) => {
      if (one.before === undefined) return one;
      const { before, ...rest } = one;
      const left = before.filter((word) => !words.has(word));
      return left.length === 0 ? rest : { ...rest, before: left };
    }),
  };
  const tried = tryCompile(next);
  return tried.ok
    ? { ok: true, scenario: next }
    : { ok: false, why: tried.problems[0]?.message ?? "The bait cannot be without its ballast." };
}
