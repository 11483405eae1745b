import type { Vec } from "../model/base";
import type { Point, Size } from "./types";

/** Which part of the world a picture shows: the world point at its middle, and pixels to a metre. */
export interface View {
  readonly x: number;
  readonly z: number;
  readonly scale: number;
}

/** Room that the scales take at the picture's edges, px. */
export interface Rulers {
  /** Width of the depth scale. */
  readonly left: number;
  /** Height of the distance scale. */
  readonly bottom: number;
}

/** The ground of one picture: its size, its scales and what part of the world it shows. */
export interface Ground {
  readonly size: Size;
  readonly rulers: Rulers;
  readonly view: View;
  /** A phone's picture: smaller scales, letters without values, buttons at the bottom. */
  readonly narrow: boolean;
  /** World to screen. */
  readonly at: (p: Vec) => Point;
}

/** World (m, Z up) to screen (px, y down). */
export function toScreen(view: View, size: Size, p: Vec): Point {
  return {
    x: size.width / 2 + (p.x - view.x) * view.scale,
    y: size.height / 2 - (p.z - view.z) * view.scale,
  };
}

/** Screen to world. */
export function toWorld(view: View, size: Size, p: Point): Vec {
  return {
    x: view.x + (p.x - size.width / 2) / view.scale,
    z: view.z - (p.y - size.height / 2) / view.scale,
  };
}

export const isNarrow = (size: Size): boolean => size.width < 520;

export function rulerSizes(size: Size): Rulers {
  return isNarrow(size) ? { left: 40, bottom: 20 } : { left: 52, bottom: 22 };
}

export function groundOf(view: View, size: Size): Ground {
  return {
    size,
    rulers: rulerSizes(size),
    view,
    narrow: isNarrow(size),
    at: (p) => toScreen(view, size, p),
  };
}

/** A place on the screen as a place of a mark, whose z points up. */
export const onScreen = (x: number, y: number): Vec => ({ x, z: 0 - y });

export const pointOnScreen = (p: Point): Vec => onScreen(p.x, p.y);
