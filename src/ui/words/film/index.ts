import { Part } from "../base";
import { texts } from "./en";

export const FILM = new Part<typeof texts>(texts, { de: () => import("./de") });
