export { hookReaches } from "./reach";
export type { HookReach } from "./reach";
export { skinFrom, USUAL_WALL, wallsOf } from "./walls";
export type { Wall } from "./walls";
export { bodyRoom, stockMisses } from "./stock";
export type { StockMiss, StockSpec } from "./stock";
