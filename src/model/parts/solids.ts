import { cbrt, distance, distanceToSegment, hypot } from "../base";
import type { Vec } from "../base";
import type { Solid } from "./types";

/** Whether two solids share room, seen in the plane of symmetry. */

/** An overlap of less than this counts as touching, m. */
const SLACK = 1e-5;

type Box = Extract<Solid, { is: "box" }>;
type Room = Pick<Box, "minX" | "maxX" | "minZ" | "maxZ">;
type Rods = Extract<Solid, { is: "rods" }>;

/** Radius (m) of the ball of a hole's volume: a hole's own shape is not known. */
export const ballRadius = (volume: number): number => cbrt((3 * volume) / (4 * Math.PI));

function boxDistance(box: Box, p: Vec): number {
  const dx = Math.max(box.minX - p.x, p.x - box.maxX, 0);
  const dz = Math.max(p.z - box.maxZ, box.minZ - p.z, 0);
  return hypot(dx, dz);
}

/** Does the straight piece come within `grow` of the box, or reach so deep into it where below 0? Found by clipping it with the box grown so. */
function pieceMeetsBox(box: Box, a: Vec, b: Vec, grow: number): boolean {
  let t0 = 0;
  let t1 = 1;
  const clip = (start: number, slope: number, low: number, high: number): void => {
    if (slope === 0) {
      if (start < low || start > high) t1 = -1;
      return;
    }
    const u = (low - start) / slope;
    const v = (high - start) / slope;
    t0 = Math.max(t0, Math.min(u, v));
    t1 = Math.min(t1, Math.max(u, v));
  };
  clip(a.x, b.x - a.x, box.minX - grow, box.maxX + grow);
  clip(a.z, b.z - a.z, box.minZ - grow, box.maxZ + grow);
  return t1 > t0;
}

/** How deep a rod reaches into a box, m: by how much the box could shrink on all sides before they part. Bisection. */
function rodInBox(box: Box, { inside, radius }: Rods): number {
  const half = Math.min(box.maxX - box.minX, box.maxZ - box.minZ) / 2;
  const meets = (shrink: number): boolean =>
    inside.some(({ a, b }) => pieceMeetsBox(box, a, b, radius - shrink));
  if (!meets(SLACK)) return 0;
  let [low, high] = [SLACK, half + radius];
  for (let i = 0; i < 24; i++) {
    const middle = (low + high) / 2;
    if (meets(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** How deep two rods reach into each other, m; where they cross, by the thickness of both. */
function rodsDepth(a: Rods, b: Rods): number {
  const reach = a.radius + b.radius;
  const depths = a.inside.flatMap((p) =>
    b.inside.map((q) => {
      // Two straight pieces are nearest at an end of one of them, or they cross.
      const side = (o: Vec, u: Vec, v: Vec): number => (u.x - o.x) * (v.z - o.z) - (u.z - o.z) * (v.x - o.x);
      const crossing =
        side(p.a, p.b, q.a) * side(p.a, p.b, q.b) < 0 && side(q.a, q.b, p.a) * side(q.a, q.b, p.b) < 0;
      if (crossing) return reach;
      const apart = Math.min(
        distanceToSegment(p.a, q.a, q.b),
        distanceToSegment(p.b, q.a, q.b),
        distanceToSegment(q.a, p.a, p.b),
        distanceToSegment(q.b, p.a, p.b),
      );
      return reach - apart;
    }),
  );
  return Math.max(0, ...depths);
}

/** How deep a ball reaches into a box, m. */
function ballInBox(box: Box, at: Vec, radius: number): number {
  const apart = boxDistance(box, at);
  if (apart > 0) return radius - apart;
  const inside = Math.min(at.x - box.minX, box.maxX - at.x, at.z - box.minZ, box.maxZ - at.z);
  return radius + inside;
}

function depthOf(a: Solid, b: Solid): number {
  if (a.is === "eye" || b.is === "eye") return 0;
  if (a.is === "box" && b.is === "box")
    return Math.min(
      Math.min(a.maxX, b.maxX) - Math.max(a.minX, b.minX),
      Math.min(a.maxZ, b.maxZ) - Math.max(a.minZ, b.minZ),
    );
  if (a.is === "hole" && b.is === "hole")
    return ballRadius(a.volume) + ballRadius(b.volume) - distance(a.at, b.at);
  if (a.is === "box" && b.is === "hole") return ballInBox(a, b.at, ballRadius(b.volume));
  if (a.is === "box" && b.is === "rods") return rodInBox(a, b);
  if (a.is === "hole" && b.is === "rods") {
    const reach = ballRadius(a.volume) + b.radius;
    return Math.max(0, ...b.inside.map((p) => reach - distanceToSegment(a.at, p.a, p.b)));
  }
  if (a.is === "rods" && b.is === "rods") return rodsDepth(a, b);
  return depthOf(b, a);
}

/** The upright rectangle in which all of a solid lies inside the body; null where nothing does. */
export function roomOf(solid: Solid): Room | null {
  switch (solid.is) {
    case "box":
      return solid;
    case "hole": {
      const { at, volume } = solid;
      return around([at], ballRadius(volume));
    }
    case "rods":
      return around(
        solid.inside.flatMap(({ a, b }) => [a, b]),
        solid.radius,
      );
    case "eye":
      return null;
  }
}

function around(points: readonly Vec[], by: number): Room | null {
  if (points.length === 0) return null;
  let [minX, maxX, minZ, maxZ] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { x, z } of points) {
    minX = Math.min(minX, x);
    maxX = Math.max(maxX, x);
    minZ = Math.min(minZ, z);
    maxZ = Math.max(maxZ, z);
  }
  return { minX: minX - by, maxX: maxX + by, minZ: minZ - by, maxZ: maxZ + by };
}

/** Two rectangles that share nothing: what lies in them does not overlap either. */
export const areApart = (a: Room | null | undefined, b: Room | null | undefined): boolean =>
  a === null ||
  a === undefined ||
  b === null ||
  b === undefined ||
  a.minX > b.maxX ||
  b.minX > a.maxX ||
  a.minZ > b.maxZ ||
  b.minZ > a.maxZ;

/** Room between two boxes or holes, m; 0: they touch or overlap. A hole counts as a ball of its volume. */
export function gap(a: Solid, b: Solid): number {
  if (a.is === "hole")
    return b.is === "hole"
      ? Math.max(0, distance(a.at, b.at) - ballRadius(a.volume) - ballRadius(b.volume))
      : gap(b, a);
  if (a.is === "box" && b.is === "hole") return Math.max(0, boxDistance(a, b.at) - ballRadius(b.volume));
  if (a.is === "box" && b.is === "box")
    return hypot(
      Math.max(a.minX - b.maxX, b.minX - a.maxX, 0),
      Math.max(a.minZ - b.maxZ, b.minZ - a.maxZ, 0),
    );
  return Infinity;
}

/** How deep two solids reach into each other inside the body, m; 0: they do not. A hole counts as a ball of its volume, an eye takes no room. */
export function overlap(a: Solid, b: Solid): number {
  const depth = depthOf(a, b);
  return depth > SLACK ? depth : 0;
}
