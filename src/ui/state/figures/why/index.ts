/** The answers to "why" of the bait's figures, one function each. They load with the first question. */
export { REASONS } from "../../../words/reasons";
export { draftWhy, GMWhy, trimWhy } from "./afloat";
export { leverWhy, restWhy } from "./attitude";
export { displacedWhy, massWhy, waterWhy } from "./mass";
export { chanceWhy, netWhy } from "./net";
export { riseWhy } from "./rise";
