export type { SurfacePlane, Sym3, Vec, Wrench } from "./types";
export {
  add,
  cross,
  distance,
  distanceToSegment,
  footOn,
  heightAbove,
  lerp,
  scale,
  sub,
  rotate,
  vec,
} from "./vec";
export { addForce, addWrench, clearWrench, wrench } from "./wrench";
export { addOuter3, solveLinear, solveSym3, sym3 } from "./linear";
export { pchip, pchipSlopes, piecewiseLinear } from "./pchip";
export type { Cubic } from "./pchip";
export { gaussLegendre } from "./quadrature";
export type { GaussRule } from "./quadrature";
export { brent, newton } from "./roots";
export type { NewtonResult } from "./roots";
export { lgamma } from "./special";
export { random } from "./random";
export type { Random } from "./random";
export { Fnv1a, hashNumbers } from "./hash";
export { acos, asin, atan, atan2 } from "./arcs";
export { cbrt, exp, expm1, log, log10, log1p, pow } from "./exponential";
export { acosh, asinh, cosh } from "./hyperbolic";
export { CHORD, curvePoints } from "./curve-points";
export { cube, hypot, square } from "./powers";
export { cos, sin, tan } from "./trig";
