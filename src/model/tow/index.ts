export type * from "./types";
export { ballSideAt, Crafts, runningRoot, towLoad, towRoots, type TowLoad } from "./attitude";
export { prepareTow, reach, reachSweep, withBibAngle, type ReachQuery, type TowBait } from "./reach";
export { terminalRise } from "./rise";
