import { Part } from "../base";
import { texts } from "./en";

export const MAKE = new Part<typeof texts>(texts, { de: () => import("./de") });
