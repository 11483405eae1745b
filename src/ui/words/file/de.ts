import type { Echoes } from "../base";

/** What the scenario's file and the model say, in German, each under its English text. */
export const texts: Echoes = {
  Bib: "Tauchschaufel",
};
