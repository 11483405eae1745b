import type { Graphics } from "pixi.js";
import type { Vec } from "../../model/base";
import type { Size } from "./camera";
import { dashed } from "./geometry";
import { numberOf } from "./palette";
import type { Point, Sheet } from "./sheet";
import type { Posed } from "./types";

/** The trace of G, the line and the rod tip. */
export function drawPaths(g: Graphics, sheet: Sheet, bait: Posed, trace: readonly Vec[]): void {
  const { view, at } = sheet;
  const palette = sheet.palette;
  // The trace fades towards its older end, in steps that one stroke each can draw.
  const steps = Math.min(20, trace.length - 1);
  for (let k = 0; k < steps; k++) {
    const from = Math.floor((k * (trace.length - 1)) / steps);
    const to = Math.floor(((k + 1) * (trace.length - 1)) / steps);
    const piece = trace.slice(from, to + 1).map(at);
    if (piece.length > 1)
      g.poly(piece, false).stroke({
        color: numberOf(palette.accent),
        width: 1.75,
        alpha: 0.08 + 0.62 * ((k + 1) / steps),
        join: "round",
      });
  }
  const { line, slack } = bait.snapshot;
  if (line.length < 2) return;
  const width = Math.max(1.1, (bait.scene.rod?.lineDiameter ?? 0) * view.scale);
  const style = { color: numberOf(palette.ink), width, alpha: 0.85, join: "round" as const };
  const margin = 0.5 * Math.hypot(sheet.size.width, sheet.size.height);
  const near = clipped(line.map(at), { width: sheet.size.width, height: sheet.size.height }, margin);
  for (const piece of near) {
    if (slack)
      for (const dash of dashed(
        piece.map((p) => ({ x: p.x, z: p.y })),
        7,
        5,
      ))
        g.poly(
          dash.map((p) => ({ x: p.x, y: p.z })),
          false,
        );
    else g.poly(piece, false);
    g.stroke(style);
  }
  const tip = line[line.length - 1];
  if (!tip) return;
  const p = at(tip);
  if (p.x < -20 || p.x > sheet.size.width + 20 || p.y < -20 || p.y > sheet.size.height + 20) return;
  g.circle(p.x, p.y, 3.5)
    .fill({ color: numberOf(palette.paper) })
    .stroke({ color: numberOf(palette.ink), width: 1.5 });
  sheet.labels.put("rod tip", p.x - 8, p.y, {
    size: 12,
    colour: palette.ink,
    anchorX: 1,
    anchorY: 0.5,
    halo: palette.sky,
  });
}

/** Pieces of a polyline that come within `margin` of the screen: far ends of a long line would only cost. */
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
