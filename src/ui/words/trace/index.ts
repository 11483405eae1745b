import { Part } from "../base";
import type { Speaker } from "../base";
import { texts } from "./en";

export const TRACE = new Part<typeof texts>(texts, { de: () => import("./de") });

/** A message that is told in the language that is read when it is shown. */
export type Told = (words: Speaker<typeof texts>) => string;
/** Texts that have no places: a worker may name them. */
export type TraceKey = keyof typeof texts;
