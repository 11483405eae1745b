import type { Edges, ShapeSpec } from "../../src/model/shape";
import { knots, mm } from "./si";

/** A body of round sections, radius given over φ; smooth between the joints (φ). */
export function round(
  length: number,
  radius: (phi: number) => number,
  joints: readonly number[] = [],
): Edges {
  return {
    length,
    breaks: [0, ...joints, Math.PI],
    top: radius,
    bottom: (phi) => -radius(phi),
    halfBreadth: radius,
    widest: () => 0,
    exponentAbove: () => 2,
    exponentBelow: () => 2,
  };
}

/** The ellipsoid with semi-axes a (along), b (across), c (up), its middle at height 0: exact edges. */
export function ellipsoid(a: number, b: number, c: number): Edges {
  return {
    ...round(2 * a, (phi) => c * Math.sin(phi)),
    halfBreadth: (phi) => b * Math.sin(phi),
  };
}

/** A prism of one section along the datum line, both ends cut square. */
export const prismEdges = (
  length: number,
  halfBreadth: number,
  halfHeight: number,
  exponent: number,
): Edges => ({
  length,
  breaks: [0, Math.PI],
  top: () => halfHeight,
  bottom: () => -halfHeight,
  halfBreadth: () => halfBreadth,
  widest: () => 0,
  exponentAbove: () => exponent,
  exponentBelow: () => exponent,
});

/** Station over φ, m. */
export const station = (phi: number, length: number): number => (length * (1 - Math.cos(phi))) / 2;

/** A minnow as a maker draws it, exponents changing along it. */
export const minnow: ShapeSpec = {
  length: 92 * mm,
  top: knots([
    [0, 0],
    [30, 10.5],
    [92, 1.5],
  ]),
  bottom: knots([
    [0, 0],
    [34, -11],
    [92, -1.5],
  ]),
  halfBreadth: knots([
    [0, 0],
    [36, 7.5],
    [92, 1.2],
  ]),
  exponentAbove: [
    { s: 0, v: 2 },
    { s: 92 * mm, v: 2 },
  ],
  exponentBelow: [
    { s: 0, v: 2 },
    { s: 46 * mm, v: 3 },
    { s: 92 * mm, v: 2 },
  ],
};

/** A blunt, blocky body whose widest line is not in the middle. */
export const block: ShapeSpec = {
  length: 0.08,
  top: [
    { s: 0, v: 0.009 },
    { s: 0.05, v: 0.012 },
    { s: 0.08, v: 0.003 },
  ],
  bottom: [
    { s: 0, v: -0.006 },
    { s: 0.03, v: -0.012 },
    { s: 0.08, v: -0.002 },
  ],
  widest: [
    { s: 0, v: 0.003 },
    { s: 0.04, v: 0.004 },
    { s: 0.08, v: 0 },
  ],
  halfBreadth: [
    { s: 0, v: 0.008 },
    { s: 0.03, v: 0.01 },
    { s: 0.08, v: 0.004 },
  ],
  exponentAbove: [{ s: 0, v: 1.4 }],
  exponentBelow: [
    { s: 0.01, v: 4 },
    { s: 0.06, v: 10 },
  ],
};

/** Pitch (rad) and level (m) as a surface in the body frame. */
export const surface = (pitch: number, level: number) => ({
  sin: Math.sin(pitch),
  cos: Math.cos(pitch),
  level,
});
