import { Part, Speaker } from "../base";
import { texts } from "./en";
import { steps } from "./steps";

export const DRAW = new Part<typeof texts>(texts, { de: () => import("./de") });
/** Who tells the texts of the view Draw. */
export type DrawWords = ReturnType<typeof DRAW.in>;

/** Names the steps of undo: in English, in which they are kept. */
export const STEPS = new Speaker<typeof steps>(steps, "en");
