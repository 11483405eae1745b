export type * from "./types";
export { towLoad, type TowLoad } from "./attitude";
export { approachOf, AT_STEADY, steadyDepthAt, type Approach, type Descent, type SteadyAt } from "./approach";
export { BEAT_BAND, beat, STROUHAL, type Beat } from "./beat";
export { calibrate, FACTORS, type Calibration, type MeasuredRun } from "./calibrate";
export {
  prepareTow,
  reach,
  reachFrom,
  reachSweep,
  REASONS,
  towAttitude,
  withBibAngle,
  type ReachQuery,
  type Reason,
  type TowAttitude,
  type TowBait,
} from "./reach";
export { terminalRise } from "./rise";
