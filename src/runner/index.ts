export { ModelClient } from "./client";
export { swimSetup, tubSetup } from "./jobs";
export type { Tub } from "./jobs";
export type { ReachJob, RunJob, RunSink } from "./protocol";
export { floats, LEVEL_WITHIN_DEG, SUSPENDS_WITHIN_G } from "./words";
