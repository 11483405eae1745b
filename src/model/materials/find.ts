import { lineMaterials } from "./lines";
import { metals } from "./metals";
import { plastics } from "./plastics";
import type { LineMaterial, Material } from "./types";
import { woods } from "./woods";

/** Every material of the table. */
export const materials: readonly Material[] = [...woods, ...metals, ...plastics];

const plain = (name: string): string => name.trim().toLowerCase().replace(/\s+/g, " ");

interface Named {
  readonly name: string;
  readonly otherNames?: readonly string[];
}

function indexOf<T extends Named>(list: readonly T[]): ReadonlyMap<string, T> {
  const index = new Map<string, T>();
  for (const entry of list)
    for (const name of [entry.name, ...(entry.otherNames ?? [])]) {
      const key = plain(name);
      if (index.has(key)) throw new Error(`material name "${name}" stands for two entries`);
      index.set(key, entry);
    }
  return index;
}

const byName = indexOf(materials);
const lineByName = indexOf(lineMaterials);

/** The material with this name or with this other name (case and spacing do not matter), or null. */
export const material = (name: string): Material | null => byName.get(plain(name)) ?? null;

/**
 * Standard uncertainty of a material's density as a fraction, from what is published: its own figure, else a uniform
 * distribution over the published range, (b − a)/√12 (JCGM 100:2008, 4.3.7); null where neither is known.
 */
export function densitySpread({ density, range, relativeUncertainty }: Material): number | null {
  if (relativeUncertainty !== undefined) return relativeUncertainty;
  return range === undefined ? null : (range[1] - range[0]) / Math.sqrt(12) / density;
}

/** The line material with this name or with this other name, or null. */
export const lineMaterial = (name: string): LineMaterial | null => lineByName.get(plain(name)) ?? null;

/**
 * Up to `count` names of the table that are most like a misspelt one, the best first, for error hints. None where no name
 * is near.
 */
export function nearestNames(name: string, count = 3, among: readonly Named[] = materials): string[] {
  const wanted = plain(name);
  const ranked = among.map((entry) => {
    const scores = [entry.name, ...(entry.otherNames ?? [])].map((candidate) =>
      likeness(wanted, plain(candidate)),
    );
    return { name: entry.name, score: Math.min(...scores) };
  });
  ranked.sort((a, b) => a.score - b.score || a.name.localeCompare(b.name, "en"));
  return ranked
    .filter((r) => r.score <= 0.5)
    .slice(0, count)
    .map((r) => r.name);
}

/** Lower is closer: edits as a share of the length, with a bonus where one name contains the other. */
function likeness(a: string, b: string): number {
  const share = edits(a, b) / Math.max(a.length, b.length, 1);
  return Math.min(a.length, b.length) > 2 && (b.includes(a) || a.includes(b)) ? share / 2 : share;
}

/** Edit distance with neighbours swapped as one edit (Damerau 1964, Commun. ACM 7:171–176; optimal string alignment). */
function edits(a: string, b: string): number {
  let two: number[] = [];
  let one = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let best = Math.min((one[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (one[j - 1] ?? 0) + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        best = Math.min(best, (two[j - 2] ?? 0) + 1);
      row.push(best);
    }
    two = one;
    one = row;
  }
  return one[b.length] ?? 0;
}
