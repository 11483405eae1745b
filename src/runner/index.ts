export { sideBySide } from "./beside";
export type { Effect, SideBySide } from "./beside";
export { ModelClient } from "./client";
export { recordingCsv } from "./csv";
export { reachCsv } from "./reach-csv";
export type { Righting, SwapAnswer, SwapJob, TubAnswer, TubReading } from "./float";
export { swimSetup, tubSetup } from "./jobs";
export type { Tub } from "./jobs";
export type { LimitQuery, RunJob, RunSink } from "./protocol";
export { BIB_SPREAD, LINE_SPREAD, MUNK_BAND } from "./reach-map";
export type {
  DepthBands,
  DepthEnds,
  MeasuredDepth,
  ReachCell,
  ReachLimit,
  ReachMapJob,
  Variation,
} from "./reach-map";
export { towHere } from "./reach-cells";
export { secondsLeft, waitWords } from "./progress";
export { FILLER, usualZone } from "./weigh";
export type { PlanJob } from "./weigh";
export { changesBait, REACH_NAMES, REACH_PATHS, variableOf, withVariable } from "./vary";
export type { ReachVariable } from "./vary";
export { floats, LEVEL_WITHIN_DEG, SUSPENDS_WITHIN_G } from "../document";
