import type { Echoes } from "../base";

/** Steps of undo in German, each under its English text, view by view. Of two that fit, the first counts. */
export const steps: Echoes = {
  // The page
  rename: "anderer Name",
  // Weigh
  "no target": "kein Ziel",
  "ballast plan": "Ballastplan",
  weighing: "Wägung",
  "weighing on a thread": "Wägung am Faden",
  "displacement reading": "Wägung unter Wasser",
  "density of the wood sample": "Dichte der Holzprobe",
  "remove a reading": "Messung entfernt",
  "weight inside": "Gewicht innen",
  "weight outside": "Gewicht außen",
  "stage of {item}": "Bauschritt: {item}",
  "add {item}": "dazu: {item}",
  "take {item} off": "weg: {item}",
  "{item} onto the bait": "an den Köder: {item}",
  "{item} off the bait": "vom Köder ab: {item}",
  "{item} not weighed": "nicht gewogen: {item}",
  "{item} weighed": "gewogen: {item}",
};
