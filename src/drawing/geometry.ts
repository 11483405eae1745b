import { add, distanceToSegment, rotate, type Vec } from "../model/base";
import type { Box } from "./types";

/** Plane geometry of the drawing; no physics here. Angles counter-clockwise with x to the right and z up. */

export const turned = (a: Vec, angle: number): Vec => rotate(a, Math.sin(angle), Math.cos(angle));

/** Body frame to world for a bait whose nose tip is at `nose` with pitch `pitch`. */
export const placed = (p: Vec, nose: Vec, pitch: number): Vec => add(nose, turned(p, pitch));

export function boxOf(points: Iterable<Vec>): Box {
  let minX = Infinity;
  let maxX = -Infinity;
  let minZ = Infinity;
  let maxZ = -Infinity;
  for (const p of points) {
    minX = Math.min(minX, p.x);
    maxX = Math.max(maxX, p.x);
    minZ = Math.min(minZ, p.z);
    maxZ = Math.max(maxZ, p.z);
  }
  if (!(minX <= maxX)) throw new RangeError("boxOf: no points to enclose");
  return { minX, maxX, minZ, maxZ };
}

/** Even–odd test. */
export function insidePolygon(polygon: readonly Vec[], p: Vec): boolean {
  let inside = false;
  let a = polygon[polygon.length - 1];
  for (const b of polygon) {
    if (a && a.z > p.z !== b.z > p.z && p.x < a.x + ((p.z - a.z) / (b.z - a.z)) * (b.x - a.x))
      inside = !inside;
    a = b;
  }
  return inside;
}

export function distanceToPath(p: Vec, path: readonly Vec[]): number {
  let best = Infinity;
  let a: Vec | undefined;
  for (const b of path) {
    best = Math.min(best, a ? distanceToSegment(p, a, b) : Math.hypot(p.x - b.x, p.z - b.z));
    a = b;
  }
  return best;
}

/** Straight hatch lines at `angle`, `spacing` apart, clipped to a polygon (even–odd). */
export function hatch(polygon: readonly Vec[], spacing: number, angle: number): [Vec, Vec][] {
  if (!(spacing > 0)) throw new RangeError(`hatch: spacing ${spacing} must be above 0`);
  const level = polygon.map((p) => turned(p, -angle));
  const box = boxOf(level);
  const lines: [Vec, Vec][] = [];
  const first = Math.ceil(box.minZ / spacing);
  const last = Math.floor(box.maxZ / spacing);
  for (let i = first; i <= last; i++) {
    const z = i * spacing;
    const cuts: number[] = [];
    let a = level[level.length - 1];
    for (const b of level) {
      if (a && a.z > z !== b.z > z) cuts.push(a.x + ((z - a.z) / (b.z - a.z)) * (b.x - a.x));
      a = b;
    }
    cuts.sort((p, q) => p - q);
    for (let k = 0; k + 1 < cuts.length; k += 2) {
      const x0 = cuts[k];
      const x1 = cuts[k + 1];
      if (x0 !== undefined && x1 !== undefined && x1 > x0)
        lines.push([turned({ x: x0, z }, angle), turned({ x: x1, z }, angle)]);
    }
  }
  return lines;
}

/** Cuts a polyline into dashes: `on` drawn, `off` left out, both in the path's own unit of length. */
export function dashed(path: readonly Vec[], on: number, off: number): Vec[][] {
  if (!(on > 0 && off > 0)) throw new RangeError(`dashed: on ${on} and off ${off} must be above 0`);
  const out: Vec[][] = [];
  let drawing = true;
  let left = on;
  let a = path[0];
  if (!a) return out;
  let current: Vec[] = [a];
  for (const b of path.slice(1)) {
    let d = Math.hypot(b.x - a.x, b.z - a.z);
    while (d > left) {
      const k: number = left / d;
      a = { x: a.x + (b.x - a.x) * k, z: a.z + (b.z - a.z) * k };
      d -= left;
      if (drawing) {
        current.push(a);
        out.push(current);
      }
      drawing = !drawing;
      left = drawing ? on : off;
      current = [a];
    }
    left -= d;
    if (drawing && d > 0) current.push(b);
    a = b;
  }
  if (drawing && current.length > 1) out.push(current);
  return out;
}
