export type * from "./types";
export type * from "./plan-types";
export { band } from "./band";
export type { Band, BandOptions, Contribution } from "./band";
export { floatAt, Floater, floating } from "./floating";
export { ballastPlan } from "./plan";
export { metacentre } from "./metacentre";
export { restTrim } from "./rest";
export { account, staticsOf, submergedLever, upright } from "./statics";
