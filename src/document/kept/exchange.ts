import type { Scenario } from "../schema";
import { differencesOf } from "./differences";
import type { Difference } from "./differences";
import { isGroup, same } from "./tree";

/** One thing in which two baits differ, and the first bait with this one thing as the other has it. */
export interface Exchange {
  /** The thing in words: the part and its name. */
  readonly what: string;
  /** Where it is one value: own, other, unit. */
  readonly values: Difference["values"];
  /** `added`: only the other bait has it. `gone`: only the first has it. */
  readonly kind: "changed" | "added" | "gone";
  /** The kind of part; corrections and weighings have a word of their own. */
  readonly of: string;
  readonly scenario: Scenario;
}

/** The drawn body is one thing: half of an outline does not go with half of another. */
const OUTLINE = ["length_mm", "top", "bottom", "halfBreadth", "widest", "roundover"] as const;

/** Keys of the bait that are exchanged one by one, with the word for one of them. */
const LISTS = [
  ["chambers", "chamber"],
  ["ballast", "ballast"],
  ["wires", "wire"],
  ["hangers", "hanger"],
  ["fittings", "fitting"],
  ["coats", "coat"],
] as const;
const SINGLE = [
  ["body", "wood"],
  ["bib", "bib"],
  ["tie_mm", "tie eye"],
] as const;

/** All single things that act on weight and attitude and in which `own` differs from `other`. */
export function exchanges(own: Scenario, other: Scenario): readonly Exchange[] {
  const out: Exchange[] = [];
  const put = (of: string, what: string, kind: Exchange["kind"], scenario: Scenario): void => {
    const all = differencesOf(own, scenario);
    const [one] = all;
    const single = all.length === 1 && one?.values !== null && one !== undefined ? one : null;
    const values = single?.values ?? null;
    out.push({
      of,
      what: kind === "changed" && single !== null ? single.what : what,
      kind,
      values,
      scenario,
    });
  };
  const bait = (keys: Partial<Scenario["bait"]>): Scenario => ({
    ...own,
    bait: { ...own.bait, ...keys },
  });

  if (OUTLINE.some((key) => !same(own.bait[key], other.bait[key])))
    put("outline", "outline", "changed", {
      ...own,
      bait: withKeys(own.bait, other.bait, OUTLINE),
    });
  for (const [key, word] of SINGLE)
    if (!same(own.bait[key], other.bait[key])) {
      const kind = own.bait[key] === undefined ? "added" : other.bait[key] === undefined ? "gone" : "changed";
      put(word, word, kind, { ...own, bait: withKeys(own.bait, other.bait, [key]) });
    }
  for (const [key, word] of LISTS)
    for (const { name, kind, list } of listExchanges<unknown>(own.bait[key], other.bait[key]))
      put(word, name === null ? word : `${word} ‘${name}’`, kind, bait({ [key]: list }));
  if (!same(own.bench, other.bench)) put("weighings", "weighings", "changed", { ...own, bench: other.bench });
  for (const { name, kind, list } of listExchanges(own.corrections, other.corrections))
    put("correction", name === null ? "corrections" : `correction ‘${name}’`, kind, {
      ...own,
      corrections: list,
    });
  if (!same(own.water, other.water)) put("water", "water", "changed", { ...own, water: other.water });
  return out;
}

/** The same bait with some keys as another has them; a key that the other lacks goes. */
function withKeys(
  own: Scenario["bait"],
  other: Scenario["bait"],
  keys: readonly (keyof Scenario["bait"])[],
): Scenario["bait"] {
  const next: Record<string, unknown> = { ...own };
  for (const key of keys) {
    if (other[key] === undefined) delete next[key];
    else next[key] = other[key];
  }
  return next as Scenario["bait"];
}

interface ListExchange<T> {
  readonly name: string | null;
  readonly kind: Exchange["kind"];
  readonly list: readonly T[];
}

/** Entries belong together by their names. A list without names of its own is exchanged as a whole. */
function listExchanges<T>(own: readonly T[], other: readonly T[]): readonly ListExchange<T>[] {
  if (same(own, other)) return [];
  const [mine, theirs] = [byName(own), byName(other)];
  if (mine === null || theirs === null) return [{ name: null, kind: "changed", list: other }];
  const out: ListExchange<T>[] = [];
  for (const [name, one] of mine) {
    const there = theirs.get(name);
    if (there === undefined) out.push({ name, kind: "gone", list: own.filter((x) => x !== one) });
    else if (!same(one, there))
      out.push({ name, kind: "changed", list: own.map((x) => (x === one ? there : x)) });
  }
  for (const [name, one] of theirs)
    if (!mine.has(name)) out.push({ name, kind: "added", list: [...own, one] });
  return out;
}

function byName<T>(list: readonly T[]): ReadonlyMap<string, T> | null {
  const out = new Map<string, T>();
  for (const one of list) {
    const name = isGroup(one) ? one["name"] : undefined;
    if (typeof name !== "string" || out.has(name)) return null;
    out.set(name, one);
  }
  return out;
}
