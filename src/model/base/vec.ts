import { hypot } from "./elementary";
import type { SurfacePlane, Vec } from "./types";

/** Plane vectors (x, z), any unit. All functions return new vectors. */
export const vec = (x: number, z: number): Vec => ({ x, z });
export const add = (a: Vec, b: Vec): Vec => ({ x: a.x + b.x, z: a.z + b.z });
export const sub = (a: Vec, b: Vec): Vec => ({ x: a.x - b.x, z: a.z - b.z });
export const scale = (a: Vec, k: number): Vec => ({ x: a.x * k, z: a.z * k });

/** The moment (nose-up positive: x forward, z up) that a force `b` at `a` makes about the origin: x·Z − z·X. */
export const cross = (a: Vec, b: Vec): number => a.x * b.z - a.z * b.x;
export const distance = (a: Vec, b: Vec): number => hypot(a.x - b.x, a.z - b.z);
export const lerp = (a: Vec, b: Vec, t: number): Vec => ({
  x: a.x + t * (b.x - a.x),
  z: a.z + t * (b.z - a.z),
});

/** Body axes → world axes (or any turn by the angle whose sine and cosine are given, nose-up positive). */
export const turn = (a: Vec, sin: number, cos: number): Vec => ({
  x: a.x * cos - a.z * sin,
  z: a.x * sin + a.z * cos,
});

/** World axes → body axes. */
export const turnBack = (a: Vec, sin: number, cos: number): Vec => ({
  x: a.x * cos + a.z * sin,
  z: -a.x * sin + a.z * cos,
});

/** Height of a body point above the surface, m: negative under water. */
export const heightAbove = (surface: SurfacePlane, p: Vec): number =>
  p.x * surface.sin + p.z * surface.cos - surface.level;

/** The point of the surface that is nearest to a body point. */
export const footOn = (surface: SurfacePlane, p: Vec): Vec => {
  const h = heightAbove(surface, p);
  return { x: p.x - h * surface.sin, z: p.z - h * surface.cos };
};

/**
 * Part of the straight piece from `a` to `b` that lies under the surface: its share of the length (0–1) and
 * the middle of that part (the surface point nearest to the piece's middle where nothing is under).
 */
export function pieceUnder(surface: SurfacePlane, a: Vec, b: Vec): { share: number; middle: Vec } {
  const ha = heightAbove(surface, a);
  const hb = heightAbove(surface, b);
  if (ha <= 0 && hb <= 0) return { share: 1, middle: lerp(a, b, 0.5) };
  if (ha >= 0 && hb >= 0) return { share: 0, middle: footOn(surface, lerp(a, b, 0.5)) };
  const t = ha / (ha - hb); // where the piece meets the surface
  return ha < 0 ? { share: t, middle: lerp(a, b, t / 2) } : { share: 1 - t, middle: lerp(a, b, (1 + t) / 2) };
}

/**
 * Part of a sphere under a plane whose centre stands `h` above it (m): its share of the volume (0–1) and how
 * far that part's centroid lies below the sphere's centre, m.
 * Source: spherical cap, V = π d²(3R − d)/3, centroid 3(2R − d)²/(4(3R − d)) from the centre (standard geometry).
 */
export function sphereUnder(h: number, radius: number): { share: number; below: number } {
  if (h >= radius) return { share: 0, below: radius };
  if (h <= -radius) return { share: 1, below: 0 };
  const d = radius - h; // depth of the cap under the plane
  const share = (d * d * (3 * radius - d)) / (4 * radius * radius * radius);
  return { share, below: (3 * (2 * radius - d) * (2 * radius - d)) / (4 * (3 * radius - d)) };
}
