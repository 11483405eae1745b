import type { Point, Size } from "./types";

/**
 * Pieces of a polyline that come within `margin` of the screen: drawing the far ends of a long line costs time and shows
 * nothing.
 */
export function clipped(path: readonly Point[], size: Size, margin: number): Point[][] {
  const pieces: Point[][] = [];
  let piece: Point[] = [];
  let a: Point | undefined;
  const low = { x: -margin, y: -margin };
  const high = { x: size.width + margin, y: size.height + margin };
  for (const b of path) {
    if (a) {
      // Liang and Barsky's clipping of a segment to a rectangle.
      let t0 = 0;
      let t1 = 1;
      for (const axis of ["x", "y"] as const) {
        const d = b[axis] - a[axis];
        const near = low[axis] - a[axis];
        const far = high[axis] - a[axis];
        if (d === 0) {
          if (near > 0 || far < 0) t1 = -1;
        } else {
          t0 = Math.max(t0, Math.min(near / d, far / d));
          t1 = Math.min(t1, Math.max(near / d, far / d));
        }
      }
      if (t0 <= t1) {
        const at = (t: number, from: Point): Point => ({
          x: from.x + (b.x - from.x) * t,
          y: from.y + (b.y - from.y) * t,
        });
        if (piece.length === 0 || t0 > 0) {
          if (piece.length > 1) pieces.push(piece);
          piece = [at(t0, a)];
        }
        piece.push(at(t1, a));
        if (t1 < 1) {
          pieces.push(piece);
          piece = [];
        }
      } else if (piece.length > 1) {
        pieces.push(piece);
        piece = [];
      } else piece = [];
    }
    a = b;
  }
  if (piece.length > 1) pieces.push(piece);
  return pieces;
}
