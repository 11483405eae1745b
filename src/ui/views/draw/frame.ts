import type { Vec } from "../../../model/base";

/** A frame that is being drawn round points, px of the board. */
export interface Frame {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export const frameOf = (a: Vec, b: Vec): Frame => ({
  x: Math.min(a.x, b.x),
  y: Math.min(a.z, b.z),
  width: Math.abs(a.x - b.x),
  height: Math.abs(a.z - b.z),
});
