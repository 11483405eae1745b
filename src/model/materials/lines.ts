import type { LineMaterial } from "./types";

export const lineMaterials: readonly LineMaterial[] = [
  {
    name: "nylon",
    otherNames: ["nylon monofilament", "monofilament", "mono", "polyamide"],
    density: 1140,
    range: [1130, 1150],
    modulus: 2.0e9,
    source:
      "density: NIST material constants for nylon. Modulus: drawn nylon monofilament 2–3 GPa, from memory (0.25 mm: about 100 N per unit strain)",
    note: "takes up 2–9 % of water and softens: ±30 %",
  },
  {
    name: "fluorocarbon",
    otherNames: ["PVDF", "fluorocarbon monofilament"],
    density: 1780,
    range: [1760, 1790],
    modulus: 2.5e9,
    source:
      "density: as PVDF (NIST 1760, plastics tables 1770–1780), from memory. Modulus: drawn PVDF 2–3 GPa, from memory",
    note: "modulus ±30 %",
  },
  {
    name: "braid",
    otherNames: ["polyethylene braid", "braided polyethylene", "PE braid", "UHMWPE"],
    density: 970,
    range: [970, 980],
    modulus: 4.0e10,
    source:
      "density: gel-spun polyethylene fibre, makers' data, from memory. Modulus: braided, far below the fibre's 90–120 GPa, from memory (0.13–0.18 mm: 500–1000 N per unit strain)",
    note: "floats; modulus ±50 %, lower until the braid has settled",
  },
];

/** Young's modulus × section of a round line, N (tension per unit strain); diameter in m. */
export const lineStiffness = (line: LineMaterial, diameter: number): number =>
  (line.modulus * Math.PI * diameter * diameter) / 4;
