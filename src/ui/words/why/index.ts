import { Part } from "../base";
import { texts } from "./en";

export const WHY = new Part<typeof texts>(texts, { de: () => import("./de") });
