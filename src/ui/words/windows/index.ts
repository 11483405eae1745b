import { Part } from "../base";
import { texts } from "./en";

export const WINDOWS = new Part<typeof texts>(texts, { de: () => import("./de") });
type Key = keyof typeof texts;
/** What a key does, as the window of keys says it. */
export type KeyHelp = Extract<Key, `does.${string}`>;
