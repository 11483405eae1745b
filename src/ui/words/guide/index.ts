import { Part } from "../base";
import type { Speaker as Speaks } from "../base";
import { texts } from "./en";

export const GUIDE = new Part<typeof texts>(texts, { de: () => import("./de") });
export type Speaker = Speaks<typeof texts>;
export type Key = keyof typeof texts;
