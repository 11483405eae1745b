import { Part } from "../base";
import { texts } from "./en";

/** What the list of baits has to tell of keeping them: the browser's promise, files of many baits, what an earlier release left. */
export const KEEPING = new Part<typeof texts>(texts, { de: () => import("./de") });
