/**
 * The words shared by every room of the model. SI throughout: m, kg, s, N, rad.
 *
 * Two frames are used, both with x to the front and z up, and rotation positive nose-up
 * (counter-clockwise with the nose to the right):
 *  - body frame: origin at the nose tip on the datum line, x = −station, z = height;
 *  - world frame: X along the retrieve, towards the angler, Z up, still surface at Z = 0.
 */

/** A point or a vector in either frame, metres (or m/s, N, as the name says). */
export interface Vec {
  readonly x: number;
  readonly z: number;
}

/** A force in body axes (N) and its moment (N·m, nose-up positive) about the centre of gravity unless said otherwise. */
export interface Wrench {
  x: number;
  z: number;
  m: number;
}

/** Symmetric 3×3 in (u, w, q), stored by its six different entries. Units kg, kg·m, kg·m². */
export interface Sym3 {
  a11: number;
  a13: number;
  a15: number;
  a33: number;
  a35: number;
  a55: number;
}

/**
 * A still surface seen from the body frame: a point p lies under water where
 * `p.x·sin + p.z·cos < level`. `sin` and `cos` are those of the pitch; level in m.
 * (With the nose tip at world height Z0: level = −Z0.)
 */
export interface SurfacePlane {
  readonly sin: number;
  readonly cos: number;
  readonly level: number;
}
