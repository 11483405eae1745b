export type * from "./types";
export { ballastPlan } from "./plan";
