import { tryCompile } from "../../../document";
import type { Scenario } from "../../../document";
import type { Item } from "../../../model/bait";
import type { Worked } from "../../state";
import type { FILE } from "../../words/file";
import type { WeighWords } from "../../words/weigh";

/** Texts from below the page, in the language that is read. */
export type FileWords = ReturnType<(typeof FILE)["in"]>;
/** What is told later, in the language that is read then. */
export type Said = (words: WeighWords, file: FileWords) => string;

/** The document to plan on, or what stands in the way of taking its ballast out. */
export type Stripped =
  { readonly ok: true; readonly scenario: Scenario } | { readonly ok: false; readonly why: Said };

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
    const refused = (key: "stands.onScale" | "stands.bored"): Stripped => ({
      ok: false,
      why: (told, file) => told.tell(key, { reading: file.of(String(one.reading_g)) }),
    });
    if (one.with.some((word) => words.has(word))) return refused("stands.onScale");
    const bored = rows.filter((row) => row.removed > 0);
    const whole = bored.every((row) => namesOf(row).some((word) => one.before?.includes(word) === true));
    if (one.kind === "weighing" && one.with.includes("body") && !whole) return refused("stands.bored");
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
  if (tried.ok) return { ok: true, scenario: next };
  const [first] = tried.problems;
  return {
    ok: false,
    why: (told, file) => (first === undefined ? told.tell("stands.cannot") : file.of(first.message)),
  };
}
