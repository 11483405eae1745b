import { assemble } from "../bait";
import type { Bait, BaitSpec } from "../bait";
import type { Vec } from "../base";

/** The bait with other weights; its body is as the bench readings gave it. */
export const again = (bait: Bait, spec: BaitSpec): Bait =>
  assemble(spec, {
    drawn: bait.drawn,
    found: { bodyDensity: bait.bodyDensity, volumeFactor: bait.volumeFactor },
  });

/** The bait made heavier at its G (kg, below 0 lighter) and with its G shifted (m); nothing else changes. */
export function shifted(bait: Bait, mass: number, shift: Vec): Bait {
  const { spec } = bait;
  return again(bait, {
    ...spec,
    corrections: [
      ...(spec.corrections ?? []),
      { name: "trial", mass, shift, deviation: { mass: null, x: null, z: null }, without: [] },
    ],
  });
}
