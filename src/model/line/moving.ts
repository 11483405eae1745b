/**
 * The tie eye as a line sees it. World frame; m, m/s, m/s². Place and acceleration are those at time t, the velocity is that
 * of half a step before (leapfrog).
 */
export interface EyeMotion {
  x: number;
  z: number;
  vx: number;
  vz: number;
  /** Acceleration that the eye would have without the line. */
  ax: number;
  az: number;
  /**
   * Inverse mass at the eye, 1/kg, symmetric: a pull (Fx, Fz) adds (wxx·Fx + wxz·Fz, wxz·Fx + wzz·Fz) to its
   * acceleration.
   */
  wxx: number;
  wxz: number;
  wzz: number;
}

/** What rod and reel do with the line's upper end at time t. World frame; m, m/s. */
export interface RodEnd {
  x: number;
  z: number;
  vx: number;
  vz: number;
  /** Unstretched line between eye and rod tip, m, and the rate at which it changes, m/s (negative: wound in). */
  length: number;
  lengthRate: number;
  /** The reel gives line freely: the line cannot pull. */
  free: boolean;
}

/** What the line does to the eye. */
export interface LinePull {
  /** Mean force on the eye over the step, world frame, N. */
  x: number;
  z: number;
  /** Tension at the eye, N. */
  tension: number;
  /** True where the line carries nothing. */
  slack: boolean;
}

/** A line that moves with the bait. There are several ways to compute one. */
export interface MovingLine {
  /**
   * Goes one step of `h` seconds on, from t − h/2 to t + h/2 around the given moment t, and writes the mean force on the
   * eye in this step to `out`. The caller adds W·F to the eye's acceleration: the line has counted on that.
   */
  pull(h: number, eye: EyeMotion, rod: RodEnd, out: LinePull): void;
  /** Number of points that `draw` writes. */
  readonly points: number;
  /** Writes the line's points (x, z, x, z, …; world frame, m) at the moment of the last `pull`, eye first. */
  draw(out: Float64Array, offset: number): void;
}
