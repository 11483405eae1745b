export { ModelClient } from "./client";
export type { Righting, SwapAnswer, SwapJob, TubAnswer, TubReading } from "./float";
export { swimSetup, tubSetup } from "./jobs";
export type { Tub } from "./jobs";
export { ReachPool } from "./pool";
export type { LimitQuery, ReachJob, RunJob, RunSink } from "./protocol";
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
export { baitAt, notYetAt } from "./stage";
export { FILLER } from "./weigh";
export { changesBait, REACH_PATHS, variableOf, withVariable } from "./vary";
export type { ReachVariable } from "./vary";
export { floats, LEVEL_WITHIN_DEG, SUSPENDS_WITHIN_G } from "./words";
