import { FORCE_LEGEND, type ForceKey, type ForceLegend } from "../model/forces";

/** Letter, words and colour of a force. @throws Error for a force that the record does not list */
export function forceWords(key: ForceKey): ForceLegend {
  const found = FORCE_LEGEND.find((l) => l.key === key);
  if (!found) throw new Error(`No legend for the force "${key}": add it to the record of forces`);
  return found;
}

/** Letter, words and colour of the sum of all forces. */
export const SUM_WORDS = { letter: "R", label: "Sum of all forces", colour: "#000000" } as const;
