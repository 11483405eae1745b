import { Part } from "../base";
import type { Speaker } from "../base";
import { texts } from "./en";

export const REACH = new Part<typeof texts>(texts, { de: () => import("./de") });
/** Steps of undo that the view names outside an edit: kept with the bait, so in English. Their German: `src/languages/de-steps.ts`. */
export const STEPS = { wanted: "Depth wanted" } as const;
export type ReachWords = Speaker<typeof texts>;
