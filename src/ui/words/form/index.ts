import { Below } from "../base";

/**
 * The form of a lesson is made from the lesson's schema, which has its titles and help in English. Here they stand in the other
 * languages.
 */
export const FORM = new Below({ de: () => import("./de") });
