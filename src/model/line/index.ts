export type * from "./types";
export {
  catenaryRise,
  catenaryRun,
  followLine,
  lineLoads,
  steadyLine,
  type LineLoads,
  type LineModelOptions,
  type LineWater,
} from "./steady";
export { segmentedLine, type SegmentOptions } from "./segments";
export { MATERIAL_DAMPING, tether } from "./tether";
export type { EyeMotion, LinePull, MovingLine, RodEnd } from "./moving";
