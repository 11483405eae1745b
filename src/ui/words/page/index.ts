import { Part } from "../base";
import { texts } from "./en";

export const PAGE = new Part<typeof texts>(texts, { de: () => import("./de") });

type KeyOfView<K> = K extends `view.${infer View}` ? View : never;
/** The views that the catalogue names. */
export type ViewKey = KeyOfView<keyof typeof texts>;
