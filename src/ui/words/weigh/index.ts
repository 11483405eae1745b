import { Part } from "../base";
import type { Speaker } from "../base";
import { texts } from "./en";

export const WEIGH = new Part<typeof texts>(texts, { de: () => import("./de") });
/** Who tells the texts of the bench. */
export type WeighWords = Speaker<typeof texts>;
