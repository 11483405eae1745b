import { Part } from "../base";
import { texts } from "./en";

export const RECIPE = new Part<typeof texts>(texts, { de: () => import("./de") });
