export type * from "./types";
export { towLoad, type TowLoad } from "./attitude";
export { BEAT_BAND, beat, STROUHAL, type Beat } from "./beat";
export { calibrate, FACTORS, type Calibration, type MeasuredRun } from "./calibrate";
export {
  prepareTow,
  reach,
  reachFrom,
  reachSweep,
  towAttitude,
  withBibAngle,
  type ReachQuery,
  type TowAttitude,
  type TowBait,
} from "./reach";
export { terminalRise } from "./rise";
