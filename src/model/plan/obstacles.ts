import { cbrt, hypot } from "../base";
import type { Vec } from "../base";
import type { Bait } from "../bait";
import { keepOuts } from "../parts";

/** A hole seen from the side: an upright rectangle, m. */
export interface Rect {
  readonly x0: number;
  readonly x1: number;
  readonly z0: number;
  readonly z1: number;
}

/** Distance from a point to an upright rectangle, m; 0 inside. */
const fromPoint = (r: Rect, p: Vec): number =>
  hypot(Math.max(r.x0 - p.x, 0, p.x - r.x1), Math.max(r.z0 - p.z, 0, p.z - r.z1));

/** Distance from a point to a straight piece, m. */
function pointToPiece(p: Vec, a: Vec, b: Vec): number {
  const dx = b.x - a.x;
  const dz = b.z - a.z;
  const length2 = dx * dx + dz * dz;
  const t = length2 > 0 ? Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.z - a.z) * dz) / length2)) : 0;
  return hypot(a.x + t * dx - p.x, a.z + t * dz - p.z);
}

/** Whether a straight piece meets an upright rectangle (Liang & Barsky 1984, ACM Trans. Graph. 3:1–22). */
function meets(r: Rect, a: Vec, b: Vec): boolean {
  let t0 = 0;
  let t1 = 1;
  for (const [d, from, low, high] of [
    [b.x - a.x, a.x, r.x0, r.x1],
    [b.z - a.z, a.z, r.z0, r.z1],
  ] as const) {
    if (d === 0) {
      if (from < low || from > high) return false;
      continue;
    }
    const p = (low - from) / d;
    const q = (high - from) / d;
    t0 = Math.max(t0, Math.min(p, q));
    t1 = Math.min(t1, Math.max(p, q));
  }
  return t0 <= t1;
}

/** Distance from a straight piece to an upright rectangle, m; 0 where they meet. */
function fromPiece(r: Rect, a: Vec, b: Vec): number {
  if (meets(r, a, b)) return 0;
  const corners = [
    { x: r.x0, z: r.z0 },
    { x: r.x0, z: r.z1 },
    { x: r.x1, z: r.z0 },
    { x: r.x1, z: r.z1 },
  ];
  return Math.min(fromPoint(r, a), fromPoint(r, b), ...corners.map((c) => pointToPiece(c, a, b)));
}

/** Everything inside the body that a hole must keep clear of: each entry gives its distance from a hole's rectangle, m. */
export function obstacles(bait: Bait): ((hole: Rect) => number)[] {
  return keepOuts(bait.spec, bait).flatMap(({ solid }): ((hole: Rect) => number)[] => {
    switch (solid.is) {
      case "box":
        return [
          (h) =>
            hypot(
              Math.max(solid.minX - h.x1, 0, h.x0 - solid.maxX),
              Math.max(solid.minZ - h.z1, 0, h.z0 - solid.maxZ),
            ),
        ];
      case "rods":
        return solid.path.map(
          ({ a, b }) =>
            (h: Rect) =>
              fromPiece(h, a, b) - solid.radius,
        );
      case "eye":
        return [(h) => fromPoint(h, solid.at)];
      case "hole": {
        // The file does not say what shape a given hole has. We take a cylinder as deep as wide.
        const half = cbrt((4 * solid.volume) / Math.PI) / 2;
        return [(h) => fromPoint(h, solid.at) - half];
      }
    }
  });
}
