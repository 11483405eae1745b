import { cbrt, cos, sin } from "../../model/base";
import type { BallastSpec, Bait } from "../../model/bait";
import { halfBreadthAt } from "../../model/shape";

/** A hole for a weight, as a drill can make it. m, m³. */
export interface Hole {
  readonly name: string;
  readonly station: number;
  /** Height of the weight's middle above the datum line. */
  readonly height: number;
  readonly diameter: number;
  /** From the face that it is drilled from; in each half where it is drilled from the inner faces. */
  readonly depth: number;
  /** `below`: from the bottom edge, upward. `inner`: into the inner face of each half. */
  readonly from: "below" | "inner";
  readonly volume: number;
  /** Wood left between the hole and the skin (or the top edge), m; below zero where the hole comes out of the wood. */
  readonly wall: number;
  /** How far above its place in the file the weight's middle comes to lie in this hole, m. */
  readonly off: number;
}

/** How far the weight's middle may be off its place for a hole from below to be the one that was meant, m. */
const CLOSE = 0.3e-3;
/** Where no pocket stays in the wood, a hole from below may bring the weight as far from its place, m; the map says how far. */
const NEAR = 1.5e-3;
/** Wood that has to stay beside and above a hole, m. Common practice, no source. */
const WALL = 1.5e-3;
const HAIR = 1e-9;

const areaOf = (diameter: number): number => (Math.PI / 4) * diameter * diameter;
/** Cut of a hole of an entry, m³: the file's, else the weight's own volume. */
const volumeOf = (b: BallastSpec): number => b.hole ?? b.mass / b.stuff.density;

/**
 * The hole of each weight inside. The file gives a hole's volume and the weight's place; drill and depth follow from them.
 * Where the file names the drill, it is that hole from below. Where a hole that is drilled straight up from below brings the weight to its place, it is that one: as the ballast plan
 * bores. Else the hole is two pockets, one in the inner face of each half, with their middle at the weight's place. Where
 * no such pocket stays inside the wood, it is the hole from below that brings the weight nearest to its place.
 */
export function holesOf(bait: Bait, drills: readonly number[]): Hole[] {
  return bait.spec.ballast
    .filter((b) => b.where === "inside" && volumeOf(b) > 0)
    .map((b) => {
      const own = b.drill === undefined ? drills : [b.drill];
      const below = fromBelow(bait, b, own);
      if (below && (b.drill !== undefined || Math.abs(below.off) < CLOSE)) return below;
      const pocket = fromInside(bait, b, own);
      return below && pocket.wall < WALL && Math.abs(below.off) < NEAR ? below : pocket;
    });
}

/** Most pieces that a plan puts into one hole. */
const PIECES = 6;
/** A ball may be so much broader than its drill, m: masses are rounded. */
const SNUG = 0.05e-3;
/** What lies in a hole that was drilled for it is at least so thick, as a share of the drill. Common practice, no source. */
const THICK = 0.75;

/**
 * Where in a hole that was drilled for it the metal's middle can lie as well, heights: balls on each other; or a rod thinner
 * than the drill, which is longer. Only a place near to the file's counts: what a weight is made of the file does not say.
 */
function alsoIn(roof: number, diameter: number, volume: number, place: number): number[] {
  const rod = volume / areaOf(diameter) / 2;
  const balls = Array.from({ length: PIECES }, (_, i) => cbrt((6 * volume) / (Math.PI * (i + 1))));
  const stacks = balls
    .map((ball, i) => ({ ball, middle: roof - ((i + 1) * ball) / 2 }))
    .filter(({ ball }) => ball <= diameter + SNUG && ball >= THICK * diameter);
  const thinner = Math.min(roof - rod, Math.max(roof - rod / (THICK * THICK), place));
  return [thinner, ...stacks.map(({ middle }) => middle)].filter((one) => Math.abs(one - place) < CLOSE);
}

function fromBelow(bait: Bait, b: BallastSpec, drills: readonly number[]): Hole | null {
  const station = -b.at.x;
  if (!(station >= 0 && station <= bait.drawn.length)) return null;
  const section = bait.drawn.section(station);
  const volume = volumeOf(b);
  const own = b.mass / b.stuff.density;
  const ball = cbrt((6 * own) / Math.PI);
  let best: Hole | null = null;
  let least = Infinity;
  for (const diameter of drills) {
    const depth = volume / areaOf(diameter);
    const roof = section.bottom + depth;
    const wall = section.top - roof;
    if (wall < WALL || diameter / 2 + WALL > section.halfBreadth) continue;
    // The weight lies at the hole's inner end: as a ball, or as a rod that fills the drill's width.
    const middles = [
      roof - own / areaOf(diameter) / 2,
      ...(ball <= diameter + (b.drill === undefined ? HAIR : SNUG) ? [roof - ball / 2] : []),
      ...(b.drill === undefined ? [] : alsoIn(roof, diameter, own, b.at.z)),
    ];
    for (const middle of middles) {
      const off = middle - b.at.z;
      if (Math.abs(off) >= least) continue;
      least = Math.abs(off);
      best = { name: b.name, station, height: b.at.z, diameter, depth, from: "below", volume, wall, off };
    }
  }
  return best;
}

/** A pocket's rim is looked at in as many places. */
const RIM = 24;

/** Least wood round a pocket in the inner face: at its floor sideways, and at its rim up, down and along. m. */
function woodRound(bait: Bait, station: number, height: number, radius: number, depth: number): number {
  let least = Infinity;
  for (let i = 0; i < RIM; i += 1) {
    const turn = (2 * Math.PI * i) / RIM;
    const s = station + radius * cos(turn);
    const z = height + radius * sin(turn);
    const { length } = bait.drawn;
    least = Math.min(least, s, length - s);
    if (s < 0 || s > length) continue;
    const section = bait.drawn.section(s);
    least = Math.min(least, section.top - z, z - section.bottom);
    if (z < section.top && z > section.bottom) least = Math.min(least, halfBreadthAt(section, z) - depth);
  }
  return least;
}

function fromInside(bait: Bait, b: BallastSpec, drills: readonly number[]): Hole {
  const station = Math.min(Math.max(-b.at.x, 0), bait.drawn.length);
  const volume = volumeOf(b);
  const made = drills.map((diameter): Hole => {
    const depth = volume / areaOf(diameter) / 2;
    return {
      name: b.name,
      station,
      height: b.at.z,
      diameter,
      depth,
      from: "inner",
      volume,
      wall: woodRound(bait, station, b.at.z, diameter / 2, depth),
      off: 0,
    };
  });
  // As wide as deep, both halves together; but the wall comes first.
  const wanted = cbrt((4 * volume) / Math.PI);
  const misfit = (hole: Hole): number =>
    Math.abs(Math.log(hole.diameter / wanted)) + 10 * Math.max(0, (WALL - hole.wall) / WALL);
  const [first, ...others] = made;
  if (!first) throw new RangeError("holesOf: there is no drill to drill with");
  return others.reduce((best, one) => (misfit(one) < misfit(best) ? one : best), first);
}
