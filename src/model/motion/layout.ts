import type { RecordingMeta } from "./types";

/**
 * Columns of one frame. World frame unless said otherwise; m, m/s, rad, N, N·m.
 * The moving body's own G ("centre" in the meta) carries the pose and the velocity.
 */
export const COLUMN = {
  X: 0,
  Z: 1,
  pitch: 2,
  VX: 3,
  VZ: 4,
  q: 5,
  tension: 6,
  /** See LINE. */
  line: 7,
  /** G and B of the whole bait, body frame: hooks at their eyes, balls where they are. */
  Gx: 8,
  Gz: 9,
  Bx: 10,
  Bz: 11,
  first: 12,
} as const;

/** State of the line. */
export const LINE = { none: 0, taut: 1, slack: 2 } as const;

/** First columns of the parts whose number differs from bait to bait. */
export interface Layout {
  /** One angle a hook. */
  readonly hooks: number;
  /** x, z a ball, body frame. */
  readonly balls: number;
  /** X, Z a point. */
  readonly line: number;
  /** X, Z, M a force: body axes, moment about the whole bait's G. */
  readonly forces: number;
  readonly stride: number;
}

export function layout(meta: Pick<RecordingMeta, "hooks" | "balls" | "linePoints" | "forces">): Layout {
  const hooks = COLUMN.first;
  const balls = hooks + meta.hooks.length;
  const line = balls + 2 * meta.balls.length;
  const forces = line + 2 * meta.linePoints;
  return { hooks, balls, line, forces, stride: forces + 3 * meta.forces.length };
}

/** Frames of a run of so many s: whole frames, the first at time 0. A duration that is whole except for round-off counts as whole. */
export const framesIn = (duration: number, frameRate: number): number =>
  Math.floor(duration * frameRate + 1e-6) + 1;
