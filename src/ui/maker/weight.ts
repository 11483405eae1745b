import type { Compiled, Scenario } from "../../document";
import { material } from "../../model/materials";
import { skinFrom, USUAL_WALL } from "../../model/checks";
import { staticsOf } from "../../model/statics";
import { fromSI, toSI } from "../../units";
import type { Blank } from "./parts";

/**
 * The first weight of a new bait: without one it would lie on its side. Its mass follows from the net buoyancy wanted, its
 * station from the attitude wanted; it lies as low as the wall allows, and on the skin where the body has no room for it. It is a guess to look at: a plan takes
 * its place.
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
 * Wood left all round a weight, mm: a hair more than what is said to be thin, because places in the file are rounded. A weight
 * rises towards the middle of the body until it has so much but for a hair, in steps of at least `STEP`.
 */
const WALL = fromSI(USUAL_WALL, "mm") + 0.1;
const HAIR = 0.02;
const STEP = 0.1;
const APART = 1;
const MOST = 6;
/** Stations that a weight keeps to, as shares of the length. Invented. */
const [FORE, AFT] = [0.16, 0.85];

const mm = (m: number): number => fromSI(m, "mm");
const grams = (kg: number): number => fromSI(kg, "g");

export interface Weights {
  /** Entries of the file. */
  readonly ballast: readonly Record<string, unknown>[];
  /** First and last station (mm) that their holes take; null: there is none. */
  readonly takes: readonly [number, number] | null;
}

const NONE: Weights = { ballast: [], takes: null };

/** Where a row of equal balls shall stand. */
interface Row {
  readonly count: number;
  /** mm */
  readonly radius: number;
  readonly stations: readonly number[];
}

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
  const metal = material(METAL);
  if (metal === null) throw new Error(`The table of materials has no ${METAL}.`);
  const now = staticsOf(bait, around.density);
  const { G, B } = now.rest;
  const tan = Math.tan(toSI(trim_deg, "deg"));
  const more = now.netBuoyancy - net;
  if (more <= 0) return NONE;
  const length = mm(bait.drawn.length);
  const radiusOf = (each: number): number => mm(Math.cbrt((3 * each) / (4 * Math.PI * metal.density)));

  /**
   * A row whose middle stands so that B comes to lie above G at the trim wanted: x_G = x_B − (z_B − z_G) tan θ, with the load's
   * mass m (less the wood of its hole) and the volume v that it displaces in both.
   */
  function row(
    count: number,
    mass: number,
    m: number,
    v: number,
    heightAt: (s: number, r: number) => number,
  ): Row {
    const radius = radiusOf(mass / count);
    const pitch = 2 * radius + APART;
    const half = ((count - 1) / 2) * pitch + radius;
    const [M, V] = [now.mass + m, now.displaced + v];
    let station = 0.4 * length;
    for (let round = 0; round < 3; round++) {
      const z = toSI(heightAt(station, radius), "mm");
      const low = (now.mass * G.z + m * z) / M;
      const high = (now.displaced * B.z + v * z) / V;
      const x = ((now.displaced * B.x) / V - (now.mass * G.x) / M - (high - low) * tan) / (m / M - v / V);
      station = Math.min(AFT * length - half, Math.max(FORE * length + half, mm(0 - x)));
    }
    const stations = Array.from({ length: count }, (_, i) => station + (i - (count - 1) / 2) * pitch);
    return { count, radius, stations };
  }

  function asWeights(
    { count, radius, stations }: Row,
    mass: number,
    heights: readonly number[],
    where: string,
  ): Weights {
    const [first = 0, last = 0] = [stations[0], stations.at(-1)];
    return {
      ballast: stations.map((s, i) => ({
        name: count === 1 ? GUESS : `${GUESS} ${i + 1}`,
        at_mm: [Number(s.toFixed(1)), Number((heights[i] ?? 0).toFixed(2))],
        mass_g: Number(grams(mass / count).toFixed(3)),
        material: METAL,
        where,
      })),
      takes: [first - radius, last + radius],
    };
  }

  /** The lowest height at which a ball has its wall all round; null where there is none. */
  function lowest(s: number, radius: number): number | null {
    const wanted = radius + WALL;
    if (mm(bait.shape.section(toSI(s, "mm")).halfBreadth) < wanted - HAIR) return null;
    for (let z = blank.belly(s) + wanted; z <= blank.back(s) - wanted;) {
      const missing =
        wanted - mm(skinFrom(bait.shape, { x: 0 - toSI(s, "mm"), z: toSI(z, "mm") }, toSI(wanted, "mm")));
      if (missing <= HAIR) return z;
      z += Math.max(STEP, missing);
    }
    return null;
  }

  // Inside, it counts in full, less the wood of its hole.
  const share = 1 - bait.bodyDensity / metal.density;
  const inside = toSI(Number(grams(more / share).toFixed(2)), "g");
  if (inside <= 0) return NONE;
  for (let count = 1; count <= MOST; count++) {
    const found = row(count, inside, inside * share, 0, (s, r) => lowest(s, r) ?? blank.belly(s) + WALL + r);
    const heights = found.stations.flatMap((s) => lowest(Number(s.toFixed(1)), found.radius) ?? []);
    if (heights.length === count) return asWeights(found, inside, heights, "inside");
  }
  // No room in the wood: on the skin below, its middle on the edge, where it counts less what it displaces.
  const outside = toSI(Number(grams(more / (1 - around.density / metal.density)).toFixed(3)), "g");
  const on = row(1, outside, outside, outside / metal.density, blank.belly);
  return asWeights(on, outside, on.stations.map(blank.belly), "outside");
}
