/**
 * What a maker says before and while a bait is made: the answers that a new bait is made of, and its target in words. It works
 * with the whole model, so only parts of the page that load when they are needed import it.
 */
export { SIZES, usualAnswers, usualSizes } from "./answers";
export type { Answers } from "./answers";
export { goalOf } from "./goal";
export { loadOf } from "./load";
export { wantedOf } from "./wanted";
export { planned } from "./planned";
export type { Begun, Planner } from "./planned";
export { baitOf, starter } from "./starter";
export { FIRST_WEIGHT, isPlanned } from "./weight";
export { PACES, wishOf, withWish } from "./wish";
export type { Wish } from "./wish";
