import { Part } from "../base";
import { texts } from "./en";

/** What is told of a new bait's first ballast. */
export const MAKER = new Part<typeof texts>(texts, { de: () => import("./de") });
