import type { Echoes } from "../base";
import { steps } from "./de-steps";

/** What the scenario's file and the model say, in German, each under its English text. */
export const texts: Echoes = {
  Bib: "Tauchschaufel",
  ...steps,
};
