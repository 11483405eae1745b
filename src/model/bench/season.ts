import type { Bait } from "../bait";
import { restTrim } from "../statics";
import { water } from "../water";
import { netOf } from "./net";
import type { SeasonPoint } from "./types";

/** Practical presets, g/kg: rivers and lakes below 0.5, the open sea about 35; brackish between (Venice system 1958). */
export const SALINITY_PRESETS = [
  { name: "fresh", salinity: 0 },
  { name: "brackish", salinity: 10 },
  { name: "sea", salinity: 35 },
] as const;

export interface SeasonOptions {
  /** °C. */
  readonly coldest: number;
  readonly warmest: number;
  /** Temperatures, 2 or more (default 9). */
  readonly steps?: number;
  /** g/kg; default the bait's own water only. */
  readonly salinities: readonly number[];
  /** Within this net buoyancy of neutral it suspends, kg. */
  readonly suspendsWithin: number;
}

/**
 * Net buoyancy, trim and verdict over a season's temperatures and salinities. The bait keeps its volume: the expansion of
 * the wood, which cancels less than half of the water's, is left out.
 */
export function season(bait: Bait, options: SeasonOptions): SeasonPoint[] {
  const { coldest, warmest, steps = 9, salinities, suspendsWithin } = options;
  if (!(warmest >= coldest))
    throw new RangeError(`season from ${coldest} to ${warmest} °C: the second must not be less`);
  if (!(Number.isInteger(steps) && steps >= 2)) throw new RangeError(`${steps} temperatures: use 2 or more`);
  if (!(suspendsWithin >= 0)) throw new RangeError(`'suspends' within ${suspendsWithin} kg: give 0 or more`);
  const trim = restTrim(bait).pitch;
  return salinities.flatMap((salinity) =>
    Array.from({ length: steps }, (_, i): SeasonPoint => {
      const temperature = coldest + ((warmest - coldest) * i) / (steps - 1);
      const { density } = water(salinity, temperature);
      const net = netOf(bait, density);
      return {
        salinity,
        temperature,
        density,
        net,
        trim,
        verdict: Math.abs(net) <= suspendsWithin ? "suspends" : net > 0 ? "floats" : "sinks",
      };
    }),
  );
}
