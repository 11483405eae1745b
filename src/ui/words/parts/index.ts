import { Part } from "../base";
import type { Language } from "../base";
import { FILE } from "../file";
import { texts } from "./en";

export const PARTS = new Part<typeof texts>(texts, { de: () => import("./de") });

/** What every view of a bait says: the shared components, and what comes from below the page. */
export const partsReady = (language: Language): Promise<unknown> =>
  Promise.all([PARTS.ready(language), FILE.ready(language)]);
