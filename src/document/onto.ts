import { assemble, prepareBench, readingHeldUnder, rowsNamed, scaleReading } from "../model/bait";
import type { Bait, BaitSpec, Item } from "../model/bait";
import { baitSpec } from "./compile";
import type { Scenario } from "./schema";
import { plain, toGrams } from "./si";

/** Readings are facts about what was there then. These functions keep them so when parts come onto the bait or leave it. */

const bareSpec = (scenario: Scenario): BaitSpec => baitSpec({ ...scenario, bench: [], corrections: [] });

/** Rows of the account that are things: all but the body and the corrections. */
const things = (bait: Bait): readonly Item[] =>
  bait.items.filter((row) => row.group !== "body" && row.group !== "corrections");

const unique = (words: readonly string[]): string[] => [...new Set(words)];

/**
 * The document with parts that have just come onto the bait. No reading had them on the scale or in the tub, and a weighing
 * of the body was taken before their holes were cut.
 *
 * @param next the document with the new parts
 * @param before the same document without them
 */
export function withNewParts(next: Scenario, before: Scenario): Scenario {
  const { bench, tub, corrections } = next;
  if (bench.length + tub.length + corrections.length === 0) return next;
  const specThen = bareSpec(before);
  const specNow = bareSpec(next);
  const then = things(assemble(specThen));
  const now = things(assemble(specNow));
  const labels = new Set(then.map((row) => row.item));
  const added = now.filter((row) => !labels.has(row.item));
  if (added.length === 0) return next;
  const names = added.map((row) => row.item);
  const cut = added.filter((row) => row.removed > 0).map((row) => row.item);
  /** The same words; by labels where they would now name something new as well. */
  const asThen = (words: readonly string[]): string[] =>
    unique(
      words.flatMap((word): string[] => {
        if (word === "body") return [word];
        const own = rowsNamed(specThen, then, [word], "with");
        if (own.length === rowsNamed(specNow, now, [word], "with").length) return [word];
        return own.flatMap((i) => then[i]?.item ?? []);
      }),
    );
  const lacked = <T extends { readonly without?: readonly string[] }>(one: T): T => ({
    ...one,
    without: unique([...asThen(one.without ?? []), ...names]),
  });
  return {
    ...next,
    bench: bench.map((one) => {
      const body = one.kind === "weighing" && one.with.includes("body");
      const uncut = unique([...asThen(one.before ?? []), ...(body ? cut : [])]);
      return { ...one, with: asThen(one.with), ...(uncut.length === 0 ? {} : { before: uncut }) };
    }),
    tub: tub.map(lacked),
    corrections: corrections.map(lacked),
  };
}

/**
 * The readings without what has left the bait since. Its share is taken off them, as the account had it: the rest of a reading
 * says the same of the body as before.
 *
 * @param before the bait with it
 * @param gone whether a row of the account is no longer what it was
 * @param hole whether its hole has gone with it: a body that was weighed with the hole weighs more without
 */
export function benchWithout(
  scenario: Scenario,
  before: BaitSpec,
  gone: (row: Item) => boolean,
  hole = false,
): Scenario["bench"] {
  const bait = assemble(before);
  const rows = things(bait);
  const prepared = prepareBench(before, rows);
  return scenario.bench.flatMap((reading, i): Scenario["bench"][number][] => {
    const read = prepared[i];
    if (read === undefined)
      throw new Error(`bench[${i}] is not a reading of the bait that something has left`);
    const there = read.others.flatMap((k) => rows[k] ?? []);
    const off = there.filter(gone);
    const weighed = reading.kind === "weighing" && read.hasBody;
    const filled =
      hole && weighed
        ? rows
            .filter((row, k) => gone(row) && !read.uncut.includes(k))
            .reduce((sum, row) => sum + row.removed, 0)
        : 0;
    if (off.length === 0 && filled === 0) return [reading];
    const left = there.filter((row) => !gone(row)).map((row) => row.item);
    // Of what was on the scale nothing is left on the bait: it says nothing of it any more.
    if (!read.hasBody && left.length === 0) return [];
    const air = reading.air === true;
    const share =
      off.reduce((sum, { mass, displaced }) => {
        if (reading.kind === "displacement") return sum + readingHeldUnder(displaced, read.tap, air);
        return sum + (air ? scaleReading(mass, displaced) : mass);
      }, 0) -
      filled * bait.bodyDensity;
    const less = (value: number): number => plain(value - toGrams(share));
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

/** The document without a part, its place in the readings with it. `next` has it no more. */
export function withoutPart(next: Scenario, before: Scenario, gone: (row: Item) => boolean): Scenario {
  const spec = baitSpec(before);
  const left = bareSpec(next);
  const rows = things(assemble(left));
  const names = (word: string): boolean => {
    try {
      rowsNamed(left, rows, [word], "with");
      return true;
    } catch {
      return false;
    }
  };
  const kept = (words: readonly string[] | undefined): string[] =>
    words?.filter((w) => w === "body" || names(w)) ?? [];
  const lacked = <T extends { readonly without?: readonly string[] }>({ without, ...one }: T) => {
    const words = kept(without);
    return words.length === 0 ? one : { ...one, without: words };
  };
  return {
    ...next,
    bench: benchWithout(before, spec, gone, true).map((one) => {
      const { before: uncut, ...rest } = one;
      const words = kept(uncut);
      return words.length === 0 ? rest : { ...rest, before: words };
    }),
    tub: next.tub.map((one) => lacked(one) as typeof one),
    corrections: next.corrections.map((one) => lacked(one) as typeof one),
  };
}
