import { Part } from "../base";
import { texts } from "./en";

export const BEGIN = new Part<typeof texts>(texts, { de: () => import("./de") });
