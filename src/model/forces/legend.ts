import type { ForceKey, ForceLegend, WaterForce } from "./types";

/**
 * Okabe & Ito 2008, Color Universal Design: eight colours that everybody can tell apart; never used without the letter.
 * Black stands for the page's ink: white on dark.
 */
const OKABE_ITO = {
  orange: "#E69F00",
  skyBlue: "#56B4E9",
  bluishGreen: "#009E73",
  yellow: "#F0E442",
  blue: "#0072B2",
  vermillion: "#D55E00",
  reddishPurple: "#CC79A7",
  black: "#000000",
} as const;

/** The line pulls too, but its force comes from the line's own room: here is its place in legend, arrows and log. */
const LINE_LEGEND: ForceLegend = {
  key: "line",
  letter: "T",
  label: "Line",
  colour: OKABE_ITO.orange,
  formula: "tension at the tie eye, along the line",
  source: "docs/model.md §7",
};

/** Floor, walls and loose balls push too, but only in the swim: their force comes from the motion room. */
const CONTACT_LEGEND: ForceLegend = {
  key: "contact",
  letter: "N",
  label: "Floor, walls and balls",
  colour: OKABE_ITO.black,
  formula: "push of floor, walls and chamber walls, beyond the weight of balls at rest",
  source: "docs/model.md §8",
};

/**
 * The forces of the water, and weight: the one list of them, in the order in which they are summed, listed and logged. The sum,
 * the legend, the arrows, the log and the tests read it. A viscous force vanishes with the speed, takes energy away, and is
 * left out of runs in an ideal fluid.
 */
const WATER_FORCES: Readonly<Record<WaterForce, Omit<ForceLegend, "key"> & { readonly viscous: boolean }>> = {
  weight: {
    letter: "W",
    label: "Weight",
    colour: OKABE_ITO.vermillion,
    formula: "m g, downwards at G; hanging hooks act at their eyes",
    source: "docs/model.md §6.1",
    viscous: false,
  },
  buoyancy: {
    letter: "U",
    label: "Lift of the water",
    colour: OKABE_ITO.blue,
    formula: "ρ g V, upwards at the centre of the volume under water",
    source: "Archimedes; docs/model.md §6.2",
    viscous: false,
  },
  crossflow: {
    letter: "DA",
    label: "Drag across the body",
    colour: OKABE_ITO.skyBlue,
    formula: "−½ρ C_dc η 2hw |v_n| v_n ds, summed from nose to tail; C_dc = C_cyl(Re)·f(breadth/height)",
    source:
      "C_cyl: Cheng 2013, J. Hydraul. Eng. 139(3); f: Hoerner 1965, ch. 3 (section values from memory); η: Jorgensen 1977, NASA TR R-474",
    viscous: true,
  },
  axial: {
    letter: "DL",
    label: "Drag along the body",
    colour: OKABE_ITO.bluishGreen,
    formula: "−½ρ u|u| A_f [0.44 d/L + 4 C_f L/d + 4 C_f √(d/L)]",
    source: "Hoerner 1965, Fluid-Dynamic Drag, ch. 6 (formula from memory); C_f: Blasius 1908, ITTC 1957",
    viscous: true,
  },
  tail: {
    letter: "S",
    label: "Side force at the tail",
    colour: OKABE_ITO.yellow,
    formula: "−(1 − k_M)(a33 − a11)|u| w_e/ℓ_e at the trailing end",
    source: "k_M = 0.8 (0.7–0.9): hull measurements of Roddy 1990, DTRC/SHD-1298-08",
    viscous: true,
  },
  bib: {
    letter: "P",
    label: "Bib",
    colour: OKABE_ITO.reddishPurple,
    formula: "½ρ S C_N |v|² across the plate at its centre of pressure, and skin friction along it",
    source:
      "C_N: Polhamus 1966, NASA TN D-3767; Lindenburg 2003, ECN-C--03-025; measured plates: Eiffel 1911, Lamar 1974, Pelletier & Mueller 2000; joined to a body: Nippon Suisan Gakkaishi 68(6), 2002",
    viscous: true,
  },
  hooks: {
    letter: "H",
    label: "Drag of the hooks",
    colour: OKABE_ITO.black,
    formula: "−½ρ (C_d A)|v| v at each hanger; C_d A = 0.5 cm² (m/0.37 g)^⅔",
    source: "wires as cylinders across the flow, ±50 % (common practice, no source)",
    viscous: true,
  },
};

/** Their keys in the same order. */
export const WATER_FORCE_KEYS = Object.keys(WATER_FORCES) as readonly WaterForce[];

export function legendOf(key: WaterForce): ForceLegend {
  const { viscous: _, ...legend } = WATER_FORCES[key];
  return { key, ...legend };
}

/** Legends of all forces, those from other rooms last. */
export const FORCE_LEGEND: readonly ForceLegend[] = [
  ...WATER_FORCE_KEYS.map(legendOf),
  LINE_LEGEND,
  CONTACT_LEGEND,
];

/** The forces that a run in an ideal fluid leaves out. */
export const VISCOUS: readonly ForceKey[] = WATER_FORCE_KEYS.filter((key) => WATER_FORCES[key].viscous);
