import { BaitError, finite, above0, inG, Labels, partKeyOf, PARTS, point, rowOf } from "../parts";
import type { Item } from "../parts";
import { rowsNamed } from "./readings";
import type { Bait, BaitSpec, CorrectionSpec } from "./types";

/** Refuses corrections that no reading can give. */
export function checkCorrections(spec: BaitSpec): void {
  (spec.corrections ?? []).forEach((c, i) => {
    const path = `corrections[${i}]`;
    finite(`${path}.mass_g`, c.mass, "kg");
    point(`${path}.shift_mm`, c.shift);
    for (const value of Object.values(c.deviation))
      if (value !== null) above0(`${path}.deviation`, value, "kg or m");
  });
}

/** The computed rows that a correction's tub test did not carry, by their places after the body. */
function missingOf(spec: BaitSpec, fitted: readonly Item[]): (readonly number[])[] {
  return (spec.corrections ?? []).map((c, i) =>
    rowsNamed(spec, fitted, c.without, `corrections[${i}].without`),
  );
}

/** Hooks and rings can be hung on for a test, and are taken off again for the work that follows. */
export function isHung(row: Pick<Item, "group">): boolean {
  const key = partKeyOf(row.group);
  return key !== null && PARTS[key].hung === true;
}

/**
 * The rows that the bait may lack and still be the one that was tested. What the test lacked is among them. Where that was
 * more than hooks and rings, the bait was not finished: its hooks and rings hung on for the test alone, so what the tub said
 * is taken to be so of the bait without them too.
 */
function mayLack(missing: ReadonlySet<number>, fitted: readonly Item[]): ReadonlySet<number> {
  const hung = fitted.flatMap((row, i) => (isHung(row) ? [i] : []));
  const unfinished = [...missing].some((row) => !hung.includes(row));
  return unfinished ? new Set([...missing, ...hung]) : missing;
}

/**
 * For each correction, the earlier ones that its tub test already had in the account: those whose own test was of a bait
 * that may lack everything that this test lacked. A correction found later in the making says nothing of the barer bait.
 *
 * @param missing for each correction, the places of the rows that its test lacked
 */
export function correctionsBefore(
  missing: readonly (readonly number[])[],
  fitted: readonly Item[],
): readonly (readonly number[])[] {
  const may = missing.map((one) => mayLack(new Set(one), fitted));
  return missing.map((own, i) =>
    may.flatMap((other, k) => (k < i && own.every((row) => other.has(row)) ? [k] : [])),
  );
}

/**
 * Whether each correction stays where some rows are left out: only where its own tub test lacked all of them. Hooks and
 * rings that hung on an unfinished bait need not be there.
 *
 * @param keep whether a row of the account stays
 */
export function correctionsKept(bait: Pick<Bait, "spec" | "items">, keep: (row: Item) => boolean): boolean[] {
  const fitted = bait.items.slice(1);
  const out = fitted.flatMap((row, i) => (row.group === "corrections" || keep(row) ? [] : [i]));
  return missingOf(bait.spec, fitted).map((missing) => {
    const may = mayLack(new Set(missing), fitted);
    return out.every((row) => may.has(row));
  });
}

/**
 * The corrections that stay where some rows are left out. Without the hooks of its test the bait is lighter, so G moves
 * further: the moment M·shift stays as the tub gave it.
 */
export function correctionsLeft(
  bait: Pick<Bait, "spec" | "items">,
  keep: (row: Item) => boolean,
): CorrectionSpec[] {
  const fitted = bait.items.slice(1);
  const missing = missingOf(bait.spec, fitted);
  const before = correctionsBefore(missing, fitted);
  const kept = correctionsKept(bait, keep);
  const all = bait.spec.corrections ?? [];
  return all.flatMap((c, k): CorrectionSpec[] => {
    if (kept[k] !== true) return [];
    const tested = bait.items.filter(
      (row, i) => row.group !== "corrections" && missing[k]?.includes(i - 1) !== true,
    );
    const off = tested.filter((row) => row.group !== "body" && !keep(row));
    if (off.length === 0) return [c];
    const sum = (rows: readonly Item[]): number => rows.reduce((total, row) => total + row.mass, 0);
    const corrected = (before[k] ?? []).reduce(
      (total, j) => total + (all[j]?.mass ?? 0),
      sum(tested) + c.mass,
    );
    const more = corrected / (corrected - sum(off));
    const { mass, x, z } = c.deviation;
    const wider = (sigma: number | null): number | null => (sigma === null ? null : more * sigma);
    return [
      {
        ...c,
        shift: { x: more * c.shift.x, z: more * c.shift.z },
        deviation: { mass, x: wider(x), z: wider(z) },
      },
    ];
  });
}

/**
 * Rows of the corrections by tub readings. Each one is about the bait that was in the tub. Its mass stands at the G of what
 * was on that bait, so that it moves the tested bait's G by its shift alone. Its moment is M·shift; M is the tested bait's
 * mass with the correction.
 *
 * @param computed everything computed, the body first
 */
export function correctionRows(spec: BaitSpec, computed: readonly Item[]): Item[] {
  const labels = new Labels(computed.map((r) => r.item));
  const missing = missingOf(spec, computed.slice(1));
  const before = correctionsBefore(missing, computed.slice(1));
  const rows: Item[] = [];
  (spec.corrections ?? []).forEach((c, index) => {
    let mass = 0;
    let mx = 0;
    let mz = 0;
    const tested = [
      ...computed.filter((_, i) => missing[index]?.includes(i - 1) !== true),
      ...(before[index] ?? []).flatMap((k) => rows[k] ?? []),
    ];
    for (const r of tested) {
      mass += r.mass;
      mx += r.mass * r.massCentre.x + r.moment.x;
      mz += r.mass * r.massCentre.z + r.moment.z;
    }
    if (!(mass + c.mass > 0))
      throw new BaitError(
        `corrections[${index}].mass_g`,
        `${inG(c.mass)} takes away more than the whole bait of ${inG(mass)}`,
        "Check the tub reading, or remove the correction",
      );
    const massCentre = { x: mx / mass, z: mz / mass };
    const moment = { x: (mass + c.mass) * c.shift.x, z: (mass + c.mass) * c.shift.z };
    const item = labels.unique(c.name.trim() === "" ? "tub correction" : c.name.trim());
    rows.push(rowOf({ item, group: "corrections", part: "item", mass: c.mass, massCentre, moment }, index));
  });
  return rows;
}
