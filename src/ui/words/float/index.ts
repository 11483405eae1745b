import { Part } from "../base";
import { texts } from "./en";

export const FLOAT = new Part<typeof texts>(texts, { de: () => import("./de") });
