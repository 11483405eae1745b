import { cos, hypot, sin } from "../base";
import type { Bait } from "../bait";
import type { Surroundings } from "../forces";
import { restTrim } from "../statics";
import { water } from "../water";
import { netOf } from "./net";
import { netForSpeed } from "./rise";
import type { RiseOptions } from "./rise";
import { shifted } from "./with";

/** What a bait is meant to do, in the maker's words. SI; null: not said. */
export interface TargetWords {
  readonly behaves: "floats" | "suspends" | "sinks" | null;
  /** Steady speed wanted, m/s, up positive: a rise or a sink. */
  readonly rise: number | null;
  /** Net buoyancy, kg, positive floats, and how far off is still good. */
  readonly net: number | null;
  readonly netTolerance: number | null;
  /** Rest trim under water, rad, nose-up positive. */
  readonly trim: number | null;
  readonly trimTolerance: number | null;
  readonly leastBG: number | null;
  /** Running depth of the tie eye, m, and the speed (m/s) at which it is wanted. */
  readonly depth: number | null;
  readonly depthTolerance: number | null;
  readonly speed: number | null;
  /** Waters in which the target has to hold: °C and g/kg. Null: the scenario's own. */
  readonly coldest: number | null;
  readonly warmest: number | null;
  readonly salinity: number | null;
}

/** A figure that the words give, and how, in one sentence. */
export interface TargetFigure {
  readonly value: number;
  readonly tolerance: number;
  readonly why: string;
}

export interface TargetWater {
  readonly temperature: number;
  readonly salinity: number;
  readonly density: number;
  /** Net buoyancy there of a bait that is on target in the scenario's water, kg. */
  readonly net: number;
}

export interface ResolvedTarget {
  /** kg. Null where the words give none or cannot be met: then `problems` says why. */
  readonly net: TargetFigure | null;
  /** rad */
  readonly trim: TargetFigure | null;
  /** m; null: none is asked for. */
  readonly leastBG: number | null;
  /** m, at a speed in m/s. */
  readonly depth: (TargetFigure & { readonly speed: number | null }) | null;
  /** The coldest and the warmest water, where they are said. */
  readonly waters: readonly TargetWater[];
  /** What a reader should know: in which waters the bait leaves its tolerance. */
  readonly notes: readonly string[];
  /** What is impossible, each with its remedy. */
  readonly problems: readonly string[];
}

/** Tolerance of a bait that is to suspend, kg: makers trim to hundredths of a gram; common practice, no source. */
export const SUSPENDS_WITHIN = 0.03e-3;
/** Tolerance of any other net buoyancy that says none, kg; common practice, no source. */
const NET_WITHIN = 0.05e-3;
/**
 * Where the target gives no tolerance, a speed may be off by this share, because its drag is not known better. Common
 * practice, no source.
 */
const SPEED_WITHIN = 0.2;
/** Least tolerance that a kitchen scale can resolve, kg. */
const LEAST_TOLERANCE = 0.01e-3;
/** Tolerance of a trim that says none, rad: 3°; common practice, no source. */
const TRIM_WITHIN = (3 * Math.PI) / 180;
/** Where the target gives no tolerance, a running depth may be off by this share: the model's own 20 % (docs/model.md §10). */
const DEPTH_WITHIN = 0.2;
/** While a rise is computed, G hangs at least this far below B, m: a bait without its ballast has no such distance. */
const HANGS = 2e-3;

const grams = (kg: number): string => {
  const size = Math.abs(kg * 1e3).toFixed(2);
  return `${Number(size) === 0 ? "" : kg > 0 ? "+" : "−"}${size} g`;
};
/** A temperature that was typed in °F is no round number in °C. */
const tenth = (temperature: number): number => Number(temperature.toFixed(1));
const plain = (kg: number): string => `${(kg * 1e3).toFixed(2)} g`;
const degrees = (rad: number): string => `${((rad * 180) / Math.PI).toFixed(1)}°`;

/** The bait hanging at a trim (null: its own), with G at least `HANGS` below B, as it will be once its ballast is in. */
function poised(bait: Bait, trim: number | null, leastBG: number | null): { bait: Bait; trim: number } {
  const { G, B, pitch } = restTrim(bait);
  const own = hypot(B.x - G.x, B.z - G.z);
  const angle = trim ?? (own >= HANGS && pitch !== null && cos(pitch) > 0 ? pitch : 0);
  const BG = Math.max(HANGS, leastBG ?? 0, own);
  return {
    bait: shifted(bait, 0, { x: B.x - G.x - BG * sin(angle), z: B.z - G.z - BG * cos(angle) }),
    trim: angle,
  };
}

function netFigure(
  bait: Bait,
  around: Surroundings,
  words: TargetWords,
  options: RiseOptions,
  problems: string[],
): TargetFigure | null {
  const { behaves, rise, net, netTolerance: given } = words;
  const against = (asked: number, what: string): boolean => {
    if (behaves === null) return false;
    const does = asked > 0 ? "floats" : "sinks";
    const still = behaves === "suspends";
    if (still ? rise === null || rise === 0 : does === behaves) return false;
    problems.push(
      `The target says that the bait ${behaves}, but ${what} means that it ${does}: change one of the two.`,
    );
    return true;
  };
  if (rise !== null && rise !== 0) {
    const way = rise > 0 ? "Rising" : "Sinking";
    // In the unit in which a rise is told elsewhere; three figures, as a target's field has them.
    const pace = `${Number((Math.abs(rise) * 1e3).toPrecision(3))} mm/s (300 mm in ${(0.3 / Math.abs(rise)).toFixed(1)} s)`;
    if (against(rise, `${way.toLowerCase()} at ${pace}`)) return null;
    try {
      const hung = poised(bait, words.trim, words.leastBG);
      const found = netForSpeed(hung.bait, around, rise, options);
      const spread = Math.abs(found.net) * found.exponent * SPEED_WITHIN;
      return {
        value: found.net,
        tolerance: given ?? Math.max(LEAST_TOLERANCE, spread),
        why:
          `${way} at ${pace} needs ${grams(found.net)}: that is the drag of this bait at this speed, hanging at ${degrees(hung.trim)}.` +
          (given === null
            ? ` ±${plain(Math.max(LEAST_TOLERANCE, spread))} keeps the speed within 20 % (common practice, no source).`
            : ""),
      };
    } catch (fault) {
      if (!(fault instanceof RangeError)) throw fault;
      problems.push(
        `No net buoyancy was found with which this bait ${rise > 0 ? "rises" : "sinks"} at ${pace}. Ask for another time or speed, or give grams.`,
      );
      return null;
    }
  }
  if (behaves === "suspends") {
    const tolerance = given ?? SUSPENDS_WITHIN;
    if (net !== null && Math.abs(net) > tolerance) {
      problems.push(
        `The target says that the bait suspends, but asks for ${grams(net)}, more than ±${plain(tolerance)} from neutral: change one of the two.`,
      );
      return null;
    }
    return {
      value: net ?? 0,
      tolerance,
      why: `A bait suspends where its net buoyancy is nought. ±${plain(tolerance)} is ${given === null ? "what makers trim to (common practice, no source)" : "what the target allows"}.`,
    };
  }
  if (net === null) {
    if (behaves !== null)
      problems.push(
        `The target says that the bait ${behaves}, but not how fast or by how many grams: give a time for 300 mm, a speed, or grams.`,
      );
    return null;
  }
  if (net !== 0 && against(net, grams(net))) return null;
  return {
    value: net,
    tolerance: given ?? NET_WITHIN,
    why: `The target says ${grams(net)}${given === null ? `; ±${plain(NET_WITHIN)} is common practice, no source` : ""}.`,
  };
}

/** The running depth that the words ask for, m; null: none. */
export function depthWanted({ depth, depthTolerance, speed }: TargetWords): ResolvedTarget["depth"] {
  if (depth === null) return null;
  const at = speed === null ? "" : ` at ${speed.toFixed(1)} m/s`;
  const within =
    depthTolerance === null ? "; ±20 % is as good as the model's own depth (docs/model.md §10)" : "";
  return {
    value: depth,
    tolerance: depthTolerance ?? DEPTH_WITHIN * depth,
    speed,
    why: `The target says ${depth.toFixed(1)} m${at}${within}.`,
  };
}

/**
 * The figures that a target in words gives for this bait: net buoyancy, trim, least BG, waters, depth, each with its
 * reason. A rise is turned into grams by the model's own terminal rise: `netForSpeed` seeks the net buoyancy with which
 * this bait, hanging as the target wants it, moves at that speed. What the bait happens to do now does not count.
 *
 * @param bait the finished bait, with or without its ballast
 * @param around the scenario's water: net buoyancy is that in this water
 */
export function resolveTarget(
  bait: Bait,
  around: Surroundings,
  words: TargetWords,
  options: RiseOptions = {},
): ResolvedTarget {
  const problems: string[] = [];
  const notes: string[] = [];
  const net = netFigure(bait, around, words, options, problems);
  const { trim, coldest, warmest } = words;
  if (coldest !== null && warmest !== null && warmest < coldest)
    problems.push(
      `The warmest water (${tenth(warmest)} °C) is colder than the coldest (${tenth(coldest)} °C): change one of the two.`,
    );
  const salinity = words.salinity;
  const waters = [coldest, warmest].flatMap((temperature): TargetWater[] => {
    if (temperature === null || net === null) return [];
    const { density } = water(salinity ?? 0, temperature);
    // The bait keeps its volume, so its lift changes with the water's density.
    const more = netOf(bait, density) - netOf(bait, around.density);
    return [{ temperature, salinity: salinity ?? 0, density, net: net.value + more }];
  });
  for (const w of waters)
    if (net && Math.abs(w.net - net.value) > net.tolerance)
      notes.push(
        `At ${tenth(w.temperature)} °C and ${w.salinity} g/kg the same bait has ${grams(w.net)}, more than the tolerance of ±${plain(net.tolerance)} from ${grams(net.value)}: it cannot be on target in all these waters without a swap.`,
      );
  return {
    net,
    trim:
      trim === null
        ? null
        : {
            value: trim,
            tolerance: words.trimTolerance ?? TRIM_WITHIN,
            why: `The target says ${degrees(trim)}, nose-up positive${words.trimTolerance === null ? "; ±3° is common practice, no source" : ""}.`,
          },
    leastBG: words.leastBG,
    depth: depthWanted(words),
    waters,
    notes,
    problems,
  };
}
