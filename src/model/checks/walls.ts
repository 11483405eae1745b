import { cos, hypot, pow, sin } from "../base";
import { ballRadius, drilledHole, holeAcross, keepOuts } from "../parts";
import type { Bodies, PartSpecs } from "../parts";
import { phiOfStation, sectionAt } from "../shape";
import type { Section, Shape } from "../shape";

/**
 * How much wood is left between the skin and what is hollowed out of the body. A chamber is its box, a given hole a
 * cylinder as deep as wide, a weight without one and an inside fitting the ball of its volume, all in the plane of symmetry. Wires and the bib's tongue leave the body: they have no wall.
 */
export interface Wall {
  /** Place of the part in the document. */
  readonly path: string;
  /** What was measured from: the chamber's box, the hole that a drill makes, from the weight up, the cylinder of a hole's volume, or the ball of a weight's. */
  readonly as: "box" | "bore" | "hole" | "ball";
  /** Least distance to the skin, m; below 0: it breaks through by so much. */
  readonly least: number;
}

/** Least wall that is said to be thin where nobody says otherwise, m: common practice, no source. */
export const USUAL_WALL = 1.5e-3;

interface Point3 {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** Signed distance of a point of the skin from something hollow, m; below 0 inside it. */
type Hollow = (p: Point3) => number;

const ball =
  (x: number, z: number, radius: number): Hollow =>
  (p) =>
    hypot(hypot(p.x - x, p.y), p.z - z) - radius;

/** A cylinder that stands upright; as deep as wide where nothing else is said. */
const upright =
  (x: number, z: number, radius: number, half = radius): Hollow =>
  (p) => {
    const aside = hypot(p.x - x, p.y) - radius;
    const up = Math.abs(p.z - z) - half;
    return Math.min(0, Math.max(aside, up)) + hypot(Math.max(aside, 0), Math.max(up, 0));
  };

/** A box, by the distances from its faces (outside by their hypotenuse, inside by the nearest face). */
const box =
  (x: number, z: number, halfLong: number, halfWide: number, halfTall: number): Hollow =>
  (p) => {
    const dx = Math.abs(p.x - x) - halfLong;
    const dy = Math.abs(p.y) - halfWide;
    const dz = Math.abs(p.z - z) - halfTall;
    const inside = Math.min(0, Math.max(dx, dy, dz));
    return inside + hypot(hypot(Math.max(dx, 0), Math.max(dy, 0)), Math.max(dz, 0));
  };

/** Point of one side of a section, t from −π/2 (bottom) to π/2 (top): a half superellipse by its polar angle. */
function onSection(s: Section, t: number): Point3 {
  const across = Math.max(0, cos(t));
  const up = sin(t);
  const n = up >= 0 ? s.exponentAbove : s.exponentBelow;
  const h = up >= 0 ? s.top - s.widest : s.widest - s.bottom;
  const rho = pow(pow(across, n) + pow(Math.abs(up), n), -1 / n);
  return { x: 0 - s.s, y: s.halfBreadth * rho * across, z: s.widest + h * rho * up };
}

/** First looks along the body and round a section, and the step at which the search ends, rad. */
const ALONG = 96;
const ROUND = 24;
const FINE = 1e-5;

/** Where the search along the body begins: at every break of the edges, and evenly between. */
const allAlong = ({ edges }: Shape): readonly number[] => [
  ...edges.breaks,
  ...Array.from({ length: ALONG + 1 }, (_, i) => (Math.PI * i) / ALONG),
];

/** Least distance of the skin from something hollow: the nearest of a grid of looks, then a pattern search from there. */
function leastOn(shape: Shape, hollow: Hollow, middle: number, looks = allAlong(shape)): number {
  const { edges, length } = shape;
  const at = (phi: number, t: number): number => hollow(onSection(sectionAt(edges, phi), t));
  let [phi, t, least] = [0, 0, Infinity];
  for (const one of looks) {
    const section = sectionAt(edges, one);
    for (let k = 0; k <= ROUND; k++) {
      const angle = Math.PI * (k / ROUND - 0.5);
      const d = hollow(onSection(section, angle));
      if (d < least) [phi, t, least] = [one, angle, d];
    }
  }
  for (let step = Math.PI / ALONG; step > FINE;) {
    let better = false;
    for (const [a, b] of [
      [step, 0],
      [-step, 0],
      [0, step],
      [0, -step],
      [step, step],
      [step, -step],
      [-step, step],
      [-step, -step],
    ] as const) {
      const p = Math.min(Math.PI, Math.max(0, phi + a));
      const q = Math.min(Math.PI / 2, Math.max(-Math.PI / 2, t + b));
      const d = at(p, q);
      if (d < least) [phi, t, least, better] = [p, q, d, true];
    }
    if (!better) step /= 2;
  }
  // Blunt ends are flat faces: the place right ahead of the hollow, or the face's nearest height.
  for (const end of [0, Math.PI]) {
    const face = sectionAt(edges, end);
    if (!(face.top > face.bottom && face.halfBreadth > 0)) continue;
    const z = Math.min(face.top, Math.max(face.bottom, middle));
    least = Math.min(least, hollow({ x: end === 0 ? 0 : 0 - length, y: 0, z }));
  }
  return least;
}

/** Looks to either side of a place whose distance from the skin is asked. */
const BESIDE = 6;

/**
 * Distance of a place in the plane of symmetry from the skin, m; it is looked for no farther along the body than `within`, so
 * what is farther from the skin than that may be told too large.
 */
export function skinFrom(
  shape: Shape,
  at: { readonly x: number; readonly z: number },
  within: number,
): number {
  const looks = Array.from({ length: 2 * BESIDE + 1 }, (_, i) =>
    phiOfStation(Math.min(shape.length, Math.max(0, within * (i / BESIDE - 1) - at.x)), shape.length),
  );
  return leastOn(shape, ball(at.x, at.z, 0), at.z, looks);
}

/** Parts in their body. */
export type Fitted = Bodies & { readonly spec: PartSpecs };

/** The least wall of every chamber, hole and inside fitting, in the order of the account. */
export function wallsOf(bait: Fitted): readonly Wall[] {
  return keepOuts(bait.spec, bait).flatMap(({ solid, path, key, index }): Wall[] => {
    if (solid.is === "hole") {
      const { at, volume } = solid;
      const given = key === "ballast" ? (bait.spec.ballast[index]?.hole ?? null) : null;
      if (given !== null) {
        const hollow = upright(at.x, at.z, holeAcross(given) / 2);
        return [{ path, as: "hole", least: leastOn(bait.shape, hollow, at.z) }];
      }
      return [{ path, as: "ball", least: leastOn(bait.shape, ball(at.x, at.z, ballRadius(volume)), at.z) }];
    }
    const weight = key === "ballast" ? bait.spec.ballast[index] : undefined;
    const bored = weight === undefined ? null : drilledHole(weight, bait.drawn);
    if (bored !== null) {
      const { x, radius, mouth, end, weight: low } = bored;
      const round = upright(x, (low + end) / 2, radius, (end - low) / 2);
      // Below the weight is the plug: it is as thick as it is long. Beside and above it is wood.
      const wood = leastOn(bait.shape, (p) => (p.z < low ? Infinity : round(p)), end);
      return [{ path, as: "bore", least: Math.min(wood, low - mouth) }];
    }
    const chamber = key === "chambers" ? bait.spec.chambers[index] : undefined;
    if (chamber === undefined) return [];
    const long = (chamber.to - chamber.from) / 2;
    const hollow = box(0 - (chamber.from + long), chamber.height, long, chamber.wide / 2, chamber.tall / 2);
    return [{ path, as: "box", least: leastOn(bait.shape, hollow, chamber.height) }];
  });
}
