export type * from "./types";
export { repeatsOf } from "./repeats";
export { netForSpeed, netOf, riseBand, RiseCurve, steadySpeed } from "./rise";
export { season, SALINITY_PRESETS } from "./season";
export type { SeasonOptions } from "./season";
export { sensitivity } from "./sensitivity";
export type { SensitivityOptions } from "./sensitivity";
export { exactGrams } from "./exact";
export { swaps, withLeader } from "./swaps";
export type { SwapOptions } from "./swaps";
export { seenAttitude, seenWaterline, timedTravel } from "./tub";
export type { TubOptions } from "./tub";
export {
  airDensity,
  displacementOf,
  hungOnThread,
  meniscusMass,
  pusherVolume,
  reconcile,
  woodSample,
} from "./weighing";
