export type * from "./types";
export { band } from "./band";
export type { Band, BandOptions, Contribution } from "./band";
export { floatAt, Floater, floating } from "./floating";
export { metacentre } from "./metacentre";
export { hasBalls, LEAST_BG, restTrim, sideAt } from "./rest";
export { account, STANDARD_GRAVITY, staticsOf, submergedLever, upright } from "./statics";
