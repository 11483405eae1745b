import { SALINITY_PRESETS } from "../model/bench";
import type { TargetWords } from "../model/bench";
import type { Scenario } from "./schema";

const millimetres = (value: number | undefined): number | null => (value === undefined ? null : value / 1e3);
const degrees = (value: number | undefined): number | null =>
  value === undefined ? null : (value * Math.PI) / 180;
const orNull = (value: number | undefined): number | null => value ?? null;

/** Salinity of the kinds of water, g/kg. The model's presets call salt water "sea". */
function salinityOf(kind: "fresh" | "brackish" | "salt"): number {
  const name = kind === "salt" ? "sea" : kind;
  const preset = SALINITY_PRESETS.find((one) => one.name === name);
  if (!preset) throw new Error(`no salinity for ${kind} water`);
  return preset.salinity;
}

/** The target of a scenario in SI, as its words say it; null where there is none. */
export function targetWords({ target, water }: Scenario): TargetWords | null {
  if (target === undefined) return null;
  const byRise = target.netFrom === "rise";
  const timed =
    target.secondsPer300mm === undefined
      ? null
      : (target.behaves === "sinks" ? -0.3 : 0.3) / target.secondsPer300mm;
  const speed = target.rise_mm_s === undefined ? null : target.rise_mm_s / 1e3;
  return {
    behaves: target.behaves ?? null,
    rise: byRise ? (timed ?? speed) : null,
    net: byRise ? null : target.net_g / 1e3,
    netTolerance: target.netTolerance_g / 1e3,
    trim: degrees(target.trim_deg),
    trimTolerance: degrees(target.trimTolerance_deg),
    leastBG: millimetres(target.leastBG_mm),
    depth: orNull(target.depth_m),
    depthTolerance: orNull(target.depthTolerance_m),
    speed: orNull(target.speed_m_s),
    coldest: orNull(target.coldest_C),
    warmest: orNull(target.warmest_C),
    salinity:
      target.salinity_g_kg ?? (target.water === undefined ? water.salinity_g_kg : salinityOf(target.water)),
  };
}
