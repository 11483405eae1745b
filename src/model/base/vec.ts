import { hypot } from "./powers";
import type { SurfacePlane, Vec } from "./types";

/** Plane vectors (x, z), any unit. All functions return new vectors. */
export const vec = (x: number, z: number): Vec => ({ x, z });
export const add = (a: Vec, b: Vec): Vec => ({ x: a.x + b.x, z: a.z + b.z });
export const sub = (a: Vec, b: Vec): Vec => ({ x: a.x - b.x, z: a.z - b.z });
export const scale = (a: Vec, k: number): Vec => ({ x: a.x * k, z: a.z * k });

/** The moment (nose-up positive: x forward, z up) that a force `b` at `a` makes about the origin: x·Z − z·X. */
export const cross = (a: Vec, b: Vec): number => a.x * b.z - a.z * b.x;
export const distance = (a: Vec, b: Vec): number => hypot(a.x - b.x, a.z - b.z);
/** From a point to the nearest point of the straight piece from `a` to `b`. */
export function distanceToSegment(p: Vec, a: Vec, b: Vec): number {
  const d = sub(b, a);
  const square = d.x * d.x + d.z * d.z;
  const t = square > 0 ? Math.min(1, Math.max(0, ((p.x - a.x) * d.x + (p.z - a.z) * d.z) / square)) : 0;
  return distance(p, { x: a.x + t * d.x, z: a.z + t * d.z });
}
export const lerp = (a: Vec, b: Vec, t: number): Vec => ({
  x: a.x + t * (b.x - a.x),
  z: a.z + t * (b.z - a.z),
});

/** Body axes → world axes (or any rotation by the angle whose sine and cosine are given, nose-up positive). */
export const rotate = (a: Vec, sin: number, cos: number): Vec => ({
  x: a.x * cos - a.z * sin,
  z: a.x * sin + a.z * cos,
});

/** Height of a body point above the surface, m: negative under water. */
export const heightAbove = (surface: SurfacePlane, p: Vec): number =>
  p.x * surface.sin + p.z * surface.cos - surface.level;

/** The point of the surface that is nearest to a body point. */
export const footOn = (surface: SurfacePlane, p: Vec): Vec => {
  const h = heightAbove(surface, p);
  return { x: p.x - h * surface.sin, z: p.z - h * surface.cos };
};
