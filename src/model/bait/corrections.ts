import { BaitError, finite, above0, inG, Labels, point, rowOf } from "../parts";
import type { Item } from "../parts";
import { rowsNamed } from "./readings";
import type { Bait, BaitSpec } from "./types";

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
function missingOf(spec: BaitSpec, fitted: readonly Item[]): ReadonlySet<number>[] {
  return (spec.corrections ?? []).map(
    (c, i) => new Set(rowsNamed(spec, fitted, c.without, `corrections[${i}].without`)),
  );
}

/**
 * For each correction, the earlier ones that its tub test already had in the account: those whose own test lacked
 * everything that this test lacked. A correction found later in the making says nothing of the barer bait.
 */
export function correctionsBefore(missing: readonly ReadonlySet<number>[]): readonly (readonly number[])[] {
  return missing.map((own, i) =>
    missing.flatMap((other, k) => (k < i && [...own].every((row) => other.has(row)) ? [k] : [])),
  );
}

/**
 * Whether each correction stays where some rows are left out: only where its own tub test lacked all of them.
 *
 * @param keep whether a row of the account stays
 */
export function correctionsKept(bait: Pick<Bait, "spec" | "items">, keep: (row: Item) => boolean): boolean[] {
  const fitted = bait.items.slice(1);
  const out = fitted.flatMap((row, i) => (row.group === "corrections" || keep(row) ? [] : [i]));
  return missingOf(bait.spec, fitted).map((missing) => out.every((row) => missing.has(row)));
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
  const before = correctionsBefore(missing);
  const rows: Item[] = [];
  (spec.corrections ?? []).forEach((c, index) => {
    let mass = 0;
    let mx = 0;
    let mz = 0;
    const tested = [
      ...computed.filter((_, i) => missing[index]?.has(i - 1) !== true),
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
