import type { ForceKey } from "../../model/forces";

export interface ForceWords {
  readonly letter: string;
  readonly label: string;
  readonly colour: string;
}

const WORDS: Readonly<Record<ForceKey, ForceWords>> = {
  weight: { letter: "W", label: "weight", colour: "#000000" },
  buoyancy: { letter: "F", label: "buoyancy", colour: "#0072B2" },
  crossflow: { letter: "C", label: "cross-flow drag", colour: "#E69F00" },
  axial: { letter: "A", label: "axial drag", colour: "#F0E442" },
  tail: { letter: "V", label: "lift at the tail", colour: "#CC79A7" },
  bib: { letter: "P", label: "bib", colour: "#D55E00" },
  hooks: { letter: "H", label: "hooks", colour: "#56B4E9" },
  line: { letter: "T", label: "line", colour: "#009E73" },
};

export const forceWords = (key: ForceKey): ForceWords => WORDS[key];
