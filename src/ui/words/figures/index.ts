import { Part } from "../base";
import { texts } from "./en";

/** The figures of the bait with their words, how it stands to its target, and what the page's state has to tell. */
export const FIGURES = new Part<typeof texts>(texts, { de: () => import("./de") });
