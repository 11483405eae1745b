import { Part } from "../base";
import { texts } from "./en";

/** The answers to "why" of the bait's figures. They come with the first question. */
export const REASONS = new Part<typeof texts>(texts, { de: () => import("./de") });
