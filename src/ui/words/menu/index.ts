import { Part } from "../base";
import { texts } from "./en";

export const MENU = new Part<typeof texts>(texts, { de: () => import("./de") });
