import { square } from "../base";
import { density as waterDensity } from "../water";
import { BaitError, entriesOf, entryFinder, inG, PART_GROUPS, partKeyOf } from "../parts";
import type { Group, Item } from "../parts";
import type { BaitSpec, BenchReading, BenchResidual } from "./types";
import { readingHeldUnder, scaleReading, trueMass, volumeHeldUnder } from "./weighing";

/** A reading, the rows that were on the scale, and its weight in a mean. */
export interface PreparedReading {
  readonly path: string;
  readonly reading: BenchReading;
  /** The body was among them. */
  readonly hasBody: boolean;
  /** Places of the other rows in the list of fitted items. */
  readonly others: readonly number[];
  /** Places of the rows that were not yet cut into the body when the reading was taken. */
  readonly uncut: readonly number[];
  /** 1/resolution². */
  readonly weight: number;
  /** Density of the tap water, kg/m³ (0 for a weighing). */
  readonly tap: number;
}

/** Masses and volumes of the fitted items, by their place; each draw of a band has its own. */
export interface Sizes {
  mass(index: number): number;
  displaced(index: number): number;
  removed(index: number): number;
  ownVolume(index: number): number;
}

export const sizesOf = (fitted: readonly Item[]): Sizes => ({
  mass: (i) => fitted[i]?.mass ?? 0,
  displaced: (i) => fitted[i]?.displaced ?? 0,
  removed: (i) => fitted[i]?.removed ?? 0,
  ownVolume: (i) => fitted[i]?.ownVolume ?? 0,
});

/** Words by which a reading names a whole group of rows. */
export const GROUPS: readonly Group[] = ["body", ...PART_GROUPS];

/**
 * Rows that a word of `with` names. The word may be a group, else the row's label in the account ("belly hook"), else the
 * name of a list entry ("belly" is the hanger with its ring and hook; for a chamber it is the void alone, as in its group).
 * A name that two entries share is refused.
 */
function named(spec: BaitSpec, fitted: readonly Item[], word: string, path: string): number[] | "body" {
  if (word === "body") return "body";
  const which = (test: (item: Item) => boolean): number[] =>
    fitted.flatMap((item, i) => (item.group !== "corrections" && test(item) ? [i] : []));
  if ((GROUPS as readonly string[]).includes(word)) return which((i) => i.group === word);
  const byLabel = which((i) => i.item === word);
  if (byLabel.length > 0) return byLabel;
  // A name means the entry itself; rows of its other groups (a chamber's balls) are not included.
  const find = entryFinder(spec);
  const nameOf = (i: Item): string | null => {
    const entry = find(i);
    return entry === null || i.group !== partKeyOf(i.group) ? null : entry.part.name(entry.spec);
  };
  const byName = which((i) => nameOf(i) === word);
  const entries = new Set(byName.map((i) => `${fitted[i]?.group}[${fitted[i]?.index}]`));
  // An entry that holds nothing (a hanger without hook and ring) has no row, but its name is known.
  if (entries.size === 0 && entriesOf(spec).some((e) => e.part.name(e.spec) === word)) return [];
  if (entries.size === 1) return byName;
  const labels = fitted.map((i) => `"${i.item}"`).join(", ");
  throw entries.size === 0
    ? new BaitError(
        path,
        `"${word}" names nothing on this bait`,
        `Use a group (${GROUPS.join(", ")}) or one of ${labels}`,
      )
    : new BaitError(
        path,
        `"${word}" names ${entries.size} different items`,
        `Say which: ${byName.map((i) => `"${fitted[i]?.item}"`).join(", ")}`,
      );
}

/**
 * Places (in the list of fitted items) of the rows that words name: groups, labels or names of list entries.
 *
 * @throws BaitError at `path` for a word that names nothing, several things, or the body
 */
export function rowsNamed(
  spec: BaitSpec,
  fitted: readonly Item[],
  words: readonly string[],
  path: string,
): number[] {
  const rows = new Set<number>();
  words.forEach((word, k) => {
    const found = named(spec, fitted, word, `${path}[${k}]`);
    if (found === "body")
      throw new BaitError(`${path}[${k}]`, `"body" is always there`, "Name items that are fitted to it");
    for (const r of found) rows.add(r);
  });
  return [...rows].sort((a, b) => a - b);
}

/** Finds the rows that each bench reading had on the scale, and checks the readings' own numbers. */
export function prepareBench(spec: BaitSpec, fitted: readonly Item[]): PreparedReading[] {
  return spec.bench.map((reading, i) => {
    const path = `bench[${i}]`;
    if (!(Number.isFinite(reading.reading) && reading.reading >= 0))
      throw new BaitError(
        `${path}.reading_g`,
        `${reading.reading} kg is not a reading`,
        "Give a number of 0 or more",
      );
    if (!(Number.isFinite(reading.resolution) && reading.resolution > 0))
      throw new BaitError(
        `${path}.resolution_g`,
        `${reading.resolution} kg is not a resolution`,
        "Give the scale's last digit, above 0",
      );
    if (!(Number.isFinite(reading.pusher ?? 0) && (reading.pusher ?? 0) >= 0))
      throw new BaitError(
        `${path}.pusher`,
        `${reading.pusher} m³ is not a volume of pins`,
        "Give diameters and depths of 0 or more",
      );
    let tap = 0;
    if (reading.kind === "displacement") {
      if (reading.tapTemperature === null)
        throw new BaitError(
          `${path}.tap_C`,
          "a displacement reading needs the water's temperature",
          "Give tap_C",
        );
      tap = waterDensity(0, reading.tapTemperature);
    }
    const others = new Set<number>();
    const found = reading.with.map((word, k) => named(spec, fitted, word, `${path}.with[${k}]`));
    const hasBody = found.includes("body");
    for (const rows of found) if (rows !== "body") rows.forEach((r) => others.add(r));
    if (!hasBody && others.size === 0)
      throw new BaitError(
        `${path}.with`,
        "nothing was on the scale",
        "Name at least one group or item that the bait has",
      );
    const uncut = rowsNamed(spec, fitted, reading.before ?? [], `${path}.before`);
    const cut = uncut.find((r) => others.has(r));
    if (cut !== undefined)
      throw new BaitError(
        `${path}.before`,
        `"${fitted[cut]?.item}" was on the scale, so its place in the body had been cut`,
        "Name it in one of the two lists",
      );
    return {
      path,
      reading,
      hasBody,
      uncut,
      others: [...others].sort((a, b) => a - b),
      weight: 1 / square(reading.resolution),
      tap,
    };
  });
}

const sum = (indices: readonly number[], of: (i: number) => number): number => {
  let total = 0;
  for (const i of indices) total += of(i);
  return total;
};

/**
 * Volume of water or air that the listed items displace (m³), without the body's own share. An item counts as fitted where
 * the body is with it (what is inside displaces nothing), else by itself. The pusher's pins under water are added.
 */
const othersVolume = (r: PreparedReading, sizes: Sizes): number =>
  (r.reading.kind === "displacement" ? (r.reading.pusher ?? 0) : 0) +
  sum(r.others, (i) => (r.hasBody ? sizes.displaced(i) : sizes.ownVolume(i)));

/**
 * Body volume (m³) from the displacement readings, the mean weighted by 1/resolution²; null where there is none.
 *
 * @param shown what each reading shows, kg, by its place: the reading itself, or one drawn within its resolution
 */
export function benchBodyVolume(
  bench: readonly PreparedReading[],
  sizes: Sizes,
  shown: (index: number) => number,
): number | null {
  let weight = 0;
  let total = 0;
  bench.forEach((r, i) => {
    if (r.reading.kind !== "displacement" || !r.hasBody) return;
    weight += r.weight;
    total += r.weight * (volumeHeldUnder(shown(i), r.tap, r.reading.air) - othersVolume(r, sizes));
  });
  return weight > 0 ? total / weight : null;
}

/**
 * Mass of the body material (kg) from the weighings: the mean weighted by 1/resolution²; null where there is none. The
 * density is this mass over the volume left after removals. This volume is the same in every weighing, so the mean of one
 * is the mean of the other. A body that was weighed before something was cut into it also had that volume: its density is
 * taken over both.
 *
 * @param left volume left after all removals, m³
 */
export function benchBodyMass(
  bench: readonly PreparedReading[],
  sizes: Sizes,
  bodyVolume: number,
  left: number,
  shown: (index: number) => number,
): number | null {
  let weight = 0;
  let total = 0;
  bench.forEach((r, i) => {
    if (r.reading.kind !== "weighing" || !r.hasBody) return;
    const read = shown(i);
    const mass = r.reading.air ? trueMass(read, bodyVolume + othersVolume(r, sizes)) : read;
    const body = mass - sum(r.others, (k) => sizes.mass(k));
    const since = r.uncut.length === 0 ? 1 : left / (left + sum(r.uncut, (k) => sizes.removed(k)));
    weight += r.weight;
    total += r.weight * body * since;
  });
  return weight > 0 ? total / weight : null;
}

/** What each scale would show for the reconciled bait, beside what it showed. */
export function residuals(
  bench: readonly PreparedReading[],
  sizes: Sizes,
  bodyVolume: number,
  bodyDensity: number,
  left: number,
): BenchResidual[] {
  return bench.map((r) => {
    const bodyMass = bodyDensity * (left + sum(r.uncut, (i) => sizes.removed(i)));
    const { kind, reading, air } = r.reading;
    const volume = (r.hasBody ? bodyVolume : 0) + othersVolume(r, sizes);
    const mass = (r.hasBody ? bodyMass : 0) + sum(r.others, (i) => sizes.mass(i));
    const model =
      kind === "displacement"
        ? readingHeldUnder(volume, r.tap, air)
        : air
          ? scaleReading(mass, volume)
          : mass;
    return { kind, reading, model, residual: reading - model, used: r.hasBody };
  });
}

/** Refuses a reading that leaves no body. */
export function refuseReadings(
  bench: readonly PreparedReading[],
  kind: BenchReading["kind"],
  left: string,
): never {
  const used = bench.filter((r) => r.reading.kind === kind && r.hasBody);
  const shown = used.map((r) => inG(r.reading.reading)).join(", ");
  throw new BaitError(
    `${used[0]?.path ?? "bench"}.reading_g`,
    `the ${kind} of ${shown} leaves the body ${left}`,
    "Check the reading, its unit, and what was on the scale",
  );
}
