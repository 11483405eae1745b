import { readScenario } from "../../document";
import type { Scenario } from "../../document";

/**
 * A plain lipped blank to begin with: basswood, a polycarbonate bib, three wire eyes, two hangers with hooks that nobody has
 * weighed, two coats, no ballast. Its sizes are invented, round numbers.
 */
const STARTER = {
  format: "trimwright/scenario",
  version: 1,
  name: "New bait",
  notes: "A plain lipped blank to begin with. Its sizes are invented.",
  bait: {
    length_mm: 90,
    top: [
      [0, 0],
      [15, 6.5],
      [35, 9],
      [65, 6],
      [90, 2],
    ],
    bottom: [
      [0, 0],
      [15, -6.5],
      [35, -9],
      [65, -6],
      [90, -2],
    ],
    halfBreadth: [
      [0, 0],
      [15, 5],
      [35, 7],
      [65, 4.5],
      [90, 1.5],
    ],
    body: { material: "basswood" },
    wires: [
      {
        name: "nose eye",
        path_mm: [
          [-3, 1],
          [12, 1],
        ],
        diameter_mm: 0.9,
        material: "stainless steel",
      },
      {
        name: "belly eye",
        path_mm: [
          [40, -1],
          [40, -11],
        ],
        diameter_mm: 0.9,
        material: "stainless steel",
      },
      {
        name: "tail eye",
        path_mm: [
          [78, 0],
          [93, 0],
        ],
        diameter_mm: 0.9,
        material: "stainless steel",
      },
    ],
    bib: {
      root_mm: [4, -3],
      angle_deg: 40,
      length_mm: 14,
      width_mm: 13,
      slot_mm: 4,
      thickness_mm: 1.5,
      outline: "round",
      material: "polycarbonate",
    },
    tie_mm: [-3, 1],
    hangers: [
      { name: "belly", at_mm: [40, -11], ring: { mass_g: 0.08 }, hook: { mass_g: 0.5 } },
      { name: "tail", at_mm: [93, 0], ring: { mass_g: 0.08 }, hook: { mass_g: 0.5 } },
    ],
    coats: [
      { name: "sealer and paint", thickness_mm: 0.1, density_g_ml: 1.3 },
      { name: "clear", thickness_mm: 0.15, material: "epoxy" },
    ],
  },
  water: { temperature_C: 15, salinity_g_kg: 0, depth_m: 4 },
  tackle: { line: { material: "nylon", diameter_mm: 0.25 }, lineOut_m: 20, rodTip_m: 1 },
  cadence: [
    { do: "settle", for_s: 2 },
    { do: "reel", speed_m_s: 0.8, for_s: 8 },
    { do: "pause", for_s: 6 },
  ],
};

/** The plain bait that "New bait" starts. A document of its own each time: undo tells one from the next. */
export function starter(): Scenario {
  const read = readScenario(STARTER);
  if (!read.ok) throw new Error(read.problems.map((one) => one.message).join("\n"));
  return read.scenario;
}
