import type { Stuff, MaterialClass } from "../model/bait";
import type { Vec } from "../model/base";
import { densitySpread, material } from "../model/materials";

/** From the file's units into SI, and back. */

export const mm = (value: number): number => value / 1000;
export const grams = (value: number): number => value / 1000;
export const millilitres = (value: number): number => value / 1e6;
export const gramsPerMillilitre = (value: number): number => value * 1000;
export const degrees = (value: number): number => (value * Math.PI) / 180;

/** [station, height] in mm → body frame in m: x forward, so x = −station. */
export const place = ([station, height]: readonly [number, number]): Vec => ({
  x: 0 - mm(station),
  z: mm(height),
});

/** A density of the file, or another (kg/m³) where the file gives none. */
export const densityOr = (given: number | undefined, otherwise: number): number =>
  given === undefined ? otherwise : gramsPerMillilitre(given);

/** A thing of the file that has a material, a density or both. */
export interface WithDensity {
  readonly material?: string;
  readonly density_g_ml?: number;
}

/** A material by name, or by a density of the file, which wins. `usual`: its class where only a density is given. */
export function stuff(thing: WithDensity, usual: MaterialClass, what: string): Stuff {
  const known = thing.material === undefined ? null : material(thing.material);
  const name = known?.name ?? thing.material ?? "given density";
  const kind = known?.kind ?? usual;
  if (thing.density_g_ml !== undefined) {
    return { name, density: gramsPerMillilitre(thing.density_g_ml), kind, given: true };
  }
  if (known === null) throw new Error(`${what}: no density; check the scenario before compiling it`);
  const spread = densitySpread(known);
  return { name, density: known.density, kind, given: false, ...(spread === null ? {} : { spread }) };
}

/** Out of SI, without the last digits that only the conversion makes. */
export const plain = (value: number): number => Number(value.toPrecision(12));
export const toGrams = (kg: number): number => plain(kg * 1e3);
export const toMm = (m: number): number => plain(m * 1e3);
export const toMillilitres = (m3: number): number => plain(m3 * 1e6);
export const toGramsPerMillilitre = (density: number): number => plain(density / 1e3);
export const toPoint = (p: Vec): [number, number] => [toMm(0 - p.x), toMm(p.z)];

/** The keys that say of what a thing is made. */
export const stuffKeys = (s: Stuff): { material?: string; density_g_ml?: number } => ({
  ...(s.name === "given density" ? {} : { material: s.name }),
  ...(s.given ? { density_g_ml: toGramsPerMillilitre(s.density) } : {}),
});
