import { Part } from "../base";
import { texts } from "./en";

export const FORMS = new Part<typeof texts>(texts, { de: () => import("./de") });
