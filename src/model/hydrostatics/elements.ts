import { cos, pow, sin, square, type Vec } from "../base";
import { halfBreadthAt, type Section, type Shape } from "../shape";
import type { Cuttable } from "./types";
import { waysOf } from "./ways";

/** Numbers kept for each element: x, z (m from G), its half extents along x and z, and its volume (m³). */
export const ELEMENT = 5;

/**
 * What displaces water besides the body and the hanging hooks, as lists of numbers for motion; places relative to G, m.
 *  - boxes: the coats' share of a patch of skin, as an upright box with its half extents. In motion this stands for the
 *    rule "by the share of the bare skin under water";
 *  - rods: a straight piece from its middle to its end (wires and the bib, by the length under);
 *  - spheres: x, z, radius, volume: four numbers each (outside ballast and fittings).
 */
export interface Elements {
  readonly boxes: Float64Array;
  readonly rods: Float64Array;
  readonly spheres: Float64Array;
  /** m³ together. */
  readonly volume: number;
}

/** Panels of the skin along φ and round half a section. */
const ALONG = 16;
const ROUND = 6;

/**
 * Patches of the bare skin as [x, z, half extents, share]*: shares add up to 1, and their centroid is the one given.
 */
function skinPatches(drawn: Shape, centroid: Vec): Float64Array {
  const L = drawn.length;
  const grid: Float64Array[] = [];
  for (let i = 0; i <= ALONG; i++) {
    const s = i === ALONG ? L : (L * (1 - cos((Math.PI * i) / ALONG))) / 2;
    grid.push(rim(drawn.section(s)));
  }
  const out: number[] = [];
  let total = 0;
  for (let i = 0; i < ALONG; i++) {
    const fore = grid[i];
    const aft = grid[i + 1];
    if (!fore || !aft) continue;
    for (let j = 0; j < ROUND; j++) {
      const corner = (from: Float64Array, k: number) => [
        from[3 * k] as number,
        from[3 * k + 1] as number,
        from[3 * k + 2] as number,
      ];
      const area = quad(corner(fore, j), corner(fore, j + 1), corner(aft, j + 1), corner(aft, j));
      const heights = [fore[3 * j + 2], fore[3 * j + 5], aft[3 * j + 5], aft[3 * j + 2]].map(Number);
      const x0 = fore[0] as number;
      const x1 = aft[0] as number;
      out.push(
        (x0 + x1) / 2,
        heights.reduce((sum, z) => sum + z / 4, 0),
        Math.abs(x1 - x0) / 2,
        (Math.max(...heights) - Math.min(...heights)) / 2,
        area,
      );
      total += area;
    }
  }
  for (const s of [0, L]) total += face(drawn.section(s), out);
  let cx = 0;
  let cz = 0;
  for (let k = 0; k < out.length; k += ELEMENT) {
    out[k + 4] = (out[k + 4] ?? 0) / total;
    cx += (out[k + 4] ?? 0) * (out[k] ?? 0);
    cz += (out[k + 4] ?? 0) * (out[k + 1] ?? 0);
  }
  for (let k = 0; k < out.length; k += ELEMENT) {
    out[k] = (out[k] ?? 0) + centroid.x - cx;
    out[k + 1] = (out[k + 1] ?? 0) + centroid.z - cz;
  }
  return Float64Array.from(out);
}

/** Points [x, y, z]* of half a section's rim from top to bottom, by its polar angle (docs/model.md §2). */
function rim(section: Section): Float64Array {
  const points = new Float64Array(3 * (ROUND + 1));
  for (let j = 0; j <= ROUND; j++) {
    const angle = Math.PI * (0.5 - j / ROUND);
    const above = 2 * j <= ROUND;
    const n = above ? section.exponentAbove : section.exponentBelow;
    const h = above ? section.top - section.widest : section.widest - section.bottom;
    const ca = Math.max(0, cos(angle));
    const sa = sin(angle);
    const rho = pow(pow(ca, n) + pow(Math.abs(sa), n), -1 / n);
    points[3 * j] = -section.s;
    points[3 * j + 1] = section.halfBreadth * rho * ca;
    points[3 * j + 2] = section.widest + h * rho * sa;
  }
  return points;
}

/** Area of a quadrilateral in space by its diagonals, m². */
function quad(a: number[], b: number[], c: number[], d: number[]): number {
  const [px, py, pz] = [0, 1, 2].map((k) => (c[k] ?? 0) - (a[k] ?? 0)) as [number, number, number];
  const [qx, qy, qz] = [0, 1, 2].map((k) => (d[k] ?? 0) - (b[k] ?? 0)) as [number, number, number];
  return Math.sqrt(square(py * qz - pz * qy) + square(pz * qx - px * qz) + square(px * qy - py * qx)) / 2;
}

/** The half face of a blunt end in level slices, appended to `out`; its area, 0 for a rounded end. */
function face(section: Section, out: number[]): number {
  const height = section.top - section.bottom;
  if (!(height > 0 && section.halfBreadth > 0)) return 0;
  let total = 0;
  const dz = height / ROUND;
  for (let j = 0; j < ROUND; j++) {
    const z = section.bottom + (j + 0.5) * dz;
    const area = halfBreadthAt(section, z) * dz;
    out.push(-section.s, z, 0, dz / 2, area);
    total += area;
  }
  return total;
}

/** A swimmer's elements (docs/model.md §5). */
export function elementsOf({ bait, rigid, options }: Cuttable): Elements {
  const { G } = rigid;
  const ways = waysOf(bait.itemsWith(options.side));
  const { coats } = ways;
  const boxes: number[] = [];
  const rods: number[] = [];
  const spheres: number[] = [];
  let { volume } = coats;
  for (const { a, b, volume: part } of ways.pieces) {
    rods.push((a.x + b.x) / 2 - G.x, (a.z + b.z) / 2 - G.z, (b.x - a.x) / 2, (b.z - a.z) / 2, part);
    volume += part;
  }
  for (const { at, radius, volume: part } of ways.spheres) {
    spheres.push(at.x - G.x, at.z - G.z, radius, part);
    volume += part;
  }
  if (coats.volume > 0) {
    const patches = skinPatches(bait.drawn, coats.centre ?? bait.drawn.skinCentroid);
    for (let k = 0; k < patches.length; k += ELEMENT)
      boxes.push(
        (patches[k] as number) - G.x,
        (patches[k + 1] as number) - G.z,
        patches[k + 2] as number,
        patches[k + 3] as number,
        (patches[k + 4] as number) * coats.volume,
      );
  }
  return {
    boxes: Float64Array.from(boxes),
    rods: Float64Array.from(rods),
    spheres: Float64Array.from(spheres),
    volume,
  };
}
