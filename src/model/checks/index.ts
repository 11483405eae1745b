export { hookReaches } from "./reach";
export type { HookReach } from "./reach";
export { skinFrom, USUAL_WALL, wallsOf } from "./walls";
export type { Fitted, Wall } from "./walls";
export { thinBetween, USUAL_CLEAR } from "./between";
export type { Between } from "./between";
export { roomIn } from "./room";
export { bodyRoom, stockMisses } from "./stock";
export type { StockMiss, StockSpec } from "./stock";
