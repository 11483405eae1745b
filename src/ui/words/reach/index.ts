import { Part } from "../base";
import type { Speaker } from "../base";
import { texts } from "./en";

export const REACH = new Part<typeof texts>(texts, { de: () => import("./de") });
export type ReachWords = Speaker<typeof texts>;
