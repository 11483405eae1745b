import type { Compiled, Scenario } from "../../document";
import { material } from "../../model/materials";
import { staticsOf } from "../../model/statics";
import { fromSI, toSI } from "../../units";
import type { Blank } from "./parts";

/**
 * The first weight of a new bait: without one it would lie on its side. Its mass follows from the net buoyancy wanted, its
 * station from the attitude wanted; it lies as low as the wall allows. It is a guess to look at: a plan takes its place.
 */

/** Its name in the file begins so: where only such weights stand, nobody has planned the ballast at the bench. */
export const FIRST_WEIGHT = "first weight";
/** The one weight of just the right mass. */
const GUESS = `${FIRST_WEIGHT}, a guess`;

/** Somebody chose the ballast: the guess that a new bait begins with does not count. */
export const isPlanned = ({ bait }: Scenario): boolean =>
  bait.ballast.some((one) => !one.name.startsWith(FIRST_WEIGHT));

/** Lead-free, and so dense that the weight lies low. */
const METAL = "tungsten";
/**
 * Wood left below and beside a hole, mm, and no more than this share of the greatest half-breadth; common practice, no
 * source. A sloping belly leaves a little less than straight down.
 */
const WALL = 1.8;
const WALL_SHARE = 0.25;
const APART = 1;
const MOST = 6;

const mm = (m: number): number => fromSI(m, "mm");
const grams = (kg: number): number => fromSI(kg, "g");

export interface Weights {
  /** Entries of the file. */
  readonly ballast: readonly Record<string, unknown>[];
  /** First and last station (mm) that their holes take; null: there is none. */
  readonly takes: readonly [number, number] | null;
}

const NONE: Weights = { ballast: [], takes: null };

/**
 * @param net kg, wanted
 * @param trim_deg wanted, nose-up positive
 * @param blank the bait without its weight is `compiled`
 */
export function firstWeight(
  { bait, around }: Compiled,
  blank: Blank,
  net: number,
  trim_deg: number,
): Weights {
  const trim = toSI(trim_deg, "deg");
  const metal = material(METAL);
  if (metal === null) throw new Error(`The table of materials has no ${METAL}.`);
  const now = staticsOf(bait, around.density);
  // Inside it counts in full, less the wood of its hole.
  const share = 1 - bait.bodyDensity / metal.density;
  const more = now.netBuoyancy - net;
  if (more <= 0) return NONE;
  const mass = toSI(Number(grams(more / share).toFixed(2)), "g");
  if (mass <= 0) return NONE;
  const { length, maxHalfBreadth } = bait.drawn;
  const wall = Math.min(WALL, WALL_SHARE * mm(maxHalfBreadth));
  for (let count = 1; count <= MOST; count++) {
    const each = mass / count;
    const radius = mm(Math.cbrt((3 * each) / (4 * Math.PI * metal.density)));
    const pitch = 2 * radius + APART;
    const lowAt = (s: number): number => blank.belly(s) + wall + radius;
    // G stands so far from B along the bait that B comes to lie above it at the trim wanted.
    const total = now.mass + mass * share;
    let station = 0.4 * mm(length);
    for (let round = 0; round < 3; round++) {
      const up = (now.mass * now.rest.G.z + mass * share * toSI(lowAt(station), "mm")) / total;
      const x = now.rest.B.x - (now.rest.B.z - up) * Math.tan(trim);
      station = mm((now.mass * now.rest.G.x - x * total) / (mass * share));
      const half = ((count - 1) / 2) * pitch + radius + wall;
      station = Math.min(0.85 * mm(length) - half, Math.max(0.16 * mm(length) + half, station));
    }
    const stations = Array.from({ length: count }, (_, i) => station + (i - (count - 1) / 2) * pitch);
    const fits = (s: number): boolean => {
      const { top, bottom, halfBreadth } = bait.drawn.section(toSI(s, "mm"));
      return mm(top - bottom) > 2 * (radius + wall) && mm(halfBreadth) > radius + wall;
    };
    if (count < MOST && !stations.every(fits)) continue;
    const [first = station] = stations;
    const last = stations.at(-1) ?? station;
    return {
      ballast: stations.map((s, i) => ({
        name: count === 1 ? GUESS : `${GUESS} ${i + 1}`,
        at_mm: [Number(s.toFixed(1)), Number(lowAt(s).toFixed(1))],
        mass_g: Number(grams(each).toFixed(3)),
        material: METAL,
        where: "inside",
      })),
      takes: [first - radius, last + radius],
    };
  }
  return NONE;
}
