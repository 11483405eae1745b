import { Part } from "../base";
import { texts } from "./en";

export const BAITS = new Part<typeof texts>(texts, { de: () => import("./de") });
