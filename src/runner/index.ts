export { ModelClient } from "./client";
export { recordingCsv } from "./csv";
export { FRAME_RATE, RATE, swimSetup, tubSetup } from "./jobs";
export type { Tub } from "./jobs";
export type { ReachJob, RunJob, RunSink } from "./protocol";
