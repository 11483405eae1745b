import { draftWhy, GMWhy, trimWhy } from "./afloat";
import { leverWhy, restWhy } from "./attitude";
import { displacedWhy, massWhy, waterWhy } from "./mass";
import { chanceWhy, netWhy } from "./net";
import { riseWhy } from "./rise";

export { REASONS } from "../../../words/reasons";

/** The answers to "why" of the bait's figures, one function each. They load with the first question. */
export const whys = {
  draftWhy,
  GMWhy,
  trimWhy,
  leverWhy,
  restWhy,
  displacedWhy,
  massWhy,
  waterWhy,
  chanceWhy,
  netWhy,
  riseWhy,
};
