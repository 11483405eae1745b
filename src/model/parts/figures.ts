import type { Vec } from "../base";
import type { Ball, Figure } from "./types";

/** Plain shapes of the sketches. m. */

type Look = Pick<Figure, "role" | "layer">;

/** A rectangle between two opposite corners. */
export const rectangle = (look: Look, a: Vec, b: Vec): Figure => ({
  ...look,
  is: "polygon",
  points: [a, { x: b.x, z: a.z }, b, { x: a.x, z: b.z }],
});

export const disc = (look: Look, at: Vec, radius: number): Figure => ({ ...look, is: "circle", at, radius });

/** The circle in which a plane at x, square to the bait's length, cuts a ball, seen along the bait; null: it misses the ball. */
export function cutBall({ at, radius }: Ball, x: number): Ball | null {
  const away = at.x - x;
  if (!(Math.abs(away) < radius)) return null;
  return { at: { x: 0, z: at.z }, radius: Math.sqrt(radius * radius - away * away) };
}
