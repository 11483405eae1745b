import { Part } from "../base";
import { texts } from "./en";

export const RUN = new Part<typeof texts>(texts, { de: () => import("./de") });
