import { Part } from "../base";
import { texts } from "./en";

export const STAGE = new Part<typeof texts>(texts, { de: () => import("./de") });
