export type * from "./types";
export {
  cylinderDrag,
  ellipsoidDrag,
  endEffect,
  hookDragArea,
  sectionFactor,
  skinFriction,
} from "./coefficients";
export { prepareSwimmer } from "./swimmer";
export {
  ellipsoidCoefficients,
  type EllipsoidCoefficients,
  plateAddedMassFactor,
  plateAddedVolume,
} from "./ellipsoid";
export {
  accelerations,
  createEvaluator,
  energy,
  type Evaluator,
  inertiaTerms,
  massMatrix,
  totalWrench,
  towWrench,
} from "./evaluator";
export { FORCE_LEGEND, VISCOUS } from "./legend";
export { FORCES } from "./models";
export { flatPlate, type FlatPlate, joined, plateAt, type PlateForce } from "./plate";
