import { Part } from "../base";
import type { Speaker } from "../base";
import { texts } from "./en";

export const SWIM = new Part<typeof texts>(texts, { de: () => import("./de") });
export type SwimWords = Speaker<typeof texts>;
