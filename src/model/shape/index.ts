export type * from "./types";
