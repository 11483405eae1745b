export type * from "./types";
export { cadenceDuration, LINE_IN, trimCadence } from "./cadence";
export type { LineReach, TrimmedCadence } from "./cadence";
export { MotionError } from "./error";
export { GrowingRecording } from "./recording";
export { record, startRun } from "./run";
