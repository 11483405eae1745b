export type { SurfacePlane, Sym3, Vec, Wrench } from "./types";
export {
  add,
  cross,
  distance,
  footOn,
  heightAbove,
  lerp,
  pieceUnder,
  scale,
  sphereUnder,
  sub,
  turn,
  turnBack,
  vec,
} from "./vec";
export { addForce, addWrench, clearWrench, momentAbout, wrench } from "./wrench";
export {
  addOuter3,
  addSym3,
  inverseSym3,
  mulSym3,
  solveLinear,
  solveSym3,
  solveTridiagonal,
  sym3,
} from "./linear";
export { pchip, pchipSlopes, piecewiseLinear } from "./pchip";
export type { Cubic } from "./pchip";
export { gaussLegendre, integrate, integratePanels } from "./quadrature";
export type { GaussRule } from "./quadrature";
export { brent, newton, scanRoots } from "./roots";
export type { NewtonResult } from "./roots";
export { gamma, incompleteBeta, lgamma } from "./special";
export { random } from "./random";
export type { Random } from "./random";
export { Fnv1a, hashNumbers } from "./hash";
export { acos, asin, atan, atan2, exp, hypot, log, log10, pow } from "./elementary";
export { cos, sin } from "./trig";
