import { season, SALINITY_PRESETS } from "../../../model/bench";
import type { SeasonPoint } from "../../../model/bench";
import type { Bait } from "../../../model/bait";
import type { Scenario } from "../../../document";
import { SUSPENDS_WITHIN_G } from "../../../runner";
import { inputAt, withValue } from "../../state";
import type { Input } from "../../state";
import { toSI } from "../../../units";

/** A season where the document's target names none, °C; common practice, no source. */
export const USUAL_SEASON = { coldest: 4, warmest: 24 } as const;
const STEPS = 41;

type End = "coldest_C" | "warmest_C";

/** The season of the document's target; `otherwise` where it has none. */
export function seasonOf(
  scenario: Scenario,
  otherwise: { readonly coldest: number; readonly warmest: number },
): { readonly coldest: number; readonly warmest: number } {
  return {
    coldest: scenario.target?.coldest_C ?? otherwise.coldest,
    warmest: scenario.target?.warmest_C ?? otherwise.warmest,
  };
}

/** An end of the season as an input of the target; null where the document has no target to hold it. */
export function seasonInput(scenario: Scenario, end: End, usual: number): Input | null {
  if (scenario.target === undefined) return null;
  return inputAt(scenario, ["target", end], {
    read: (from) => from.target?.[end] ?? usual,
    write: (from, value) => (from.target === undefined ? from : withValue(from, ["target", end], value)),
  });
}

/** A preset, or the document's own water where it is none of them. */
type Water = (typeof SALINITY_PRESETS)[number]["name"] | "own";

/** One water over the season. */
export interface SeasonLine {
  readonly name: Water;
  readonly salinity: number;
  readonly own: boolean;
  readonly points: readonly SeasonPoint[];
}

/** Net buoyancy over the season in fresh, brackish and sea water, and in the document's own where that is none of them. */
export function seasonLines(
  bait: Bait,
  own: number,
  { coldest, warmest }: { readonly coldest: number; readonly warmest: number },
): readonly SeasonLine[] {
  const waters: readonly { readonly name: Water; readonly salinity: number }[] = [
    ...SALINITY_PRESETS,
    ...(SALINITY_PRESETS.some((one) => one.salinity === own)
      ? []
      : [{ name: "own" as const, salinity: own }]),
  ];
  return waters.map(({ name, salinity }) => ({
    name,
    salinity,
    own: salinity === own,
    points: season(bait, {
      coldest,
      warmest,
      steps: STEPS,
      salinities: [salinity],
      suspendsWithin: toSI(SUSPENDS_WITHIN_G, "g"),
    }),
  }));
}

export interface Stretch {
  readonly verdict: SeasonPoint["verdict"];
  readonly from: number;
  readonly to: number;
}

/** Stretches of temperature (°C) with one verdict; ends where the net buoyancy crosses, straight between points. */
export function stretches(points: readonly SeasonPoint[]): readonly Stretch[] {
  const within = toSI(SUSPENDS_WITHIN_G, "g");
  const found: { verdict: SeasonPoint["verdict"]; from: number; to: number }[] = [];
  points.forEach((point, i) => {
    const last = found.at(-1);
    const before = points[i - 1];
    if (last === undefined || before === undefined) {
      found.push({ verdict: point.verdict, from: point.temperature, to: point.temperature });
      return;
    }
    if (last.verdict !== point.verdict) {
      const step = (level: number): number =>
        before.temperature +
        ((level - before.net) / (point.net - before.net)) * (point.temperature - before.temperature);
      const crossed = [within, -within].filter(
        (level) => (level - before.net) * (level - point.net) <= 0 && point.net !== before.net,
      );
      const edges = crossed.map(step).sort((a, b) => a - b);
      const first = edges[0] ?? point.temperature;
      last.to = first;
      // Straight from floating to sinking in one step: what lies between suspends.
      if (edges.length === 2 && last.verdict !== "suspends" && point.verdict !== "suspends")
        found.push({ verdict: "suspends", from: first, to: edges[1] ?? first });
      found.push({ verdict: point.verdict, from: edges.at(-1) ?? first, to: point.temperature });
    } else last.to = point.temperature;
  });
  return found;
}
