import { compile, scaled } from "../../../src/document";
import type { Box, Compiled, Scenario } from "../../../src/document";
import { AS_PRINTED, sheetJob, TEMPLATES } from "../../../src/sheet";
import type { SheetChoice, SheetJob } from "../../../src/sheet";
import { scenarioOf, SCENARIOS } from "../../lib/scenarios";
import { fonts } from "./fonts";

/** A bait of another length, alike in all directions. */
export const sized = (from: Scenario, length_mm: number): Scenario => {
  const k = length_mm / from.bait.length_mm;
  return {
    ...scaled(from, { length: k, height: k, breadth: k }),
    name: `${from.name}, ${length_mm} mm long`,
  };
};

/** Without what is too large for a tiny body. */
const light = (from: Scenario): Scenario => ({
  ...from,
  bait: {
    ...from.bait,
    ballast: [],
    chambers: [],
    wires: from.bait.wires.map((one) => ({ ...one, diameter_mm: 0.4 })),
  },
});

/** With a bib that is bent at its root. */
export function bentBib(from: Scenario, slot_angle_deg: number): Scenario {
  const { bib } = from.bait;
  if (bib === undefined) throw new Error(`${from.name} has no bib`);
  return { ...from, bench: [], bait: { ...from.bait, bib: { ...bib, slot_angle_deg } } };
}

/** All scenarios of the project, and baits that are very long and very short. */
export const baits: readonly (readonly [string, Scenario])[] = [
  ...SCENARIOS.map((name): readonly [string, Scenario] => [name, scenarioOf(name)]),
  ["400 mm", sized(scenarioOf("suspender-90"), 400)],
  ["400 mm, long bib", sized(scenarioOf("long-bib-diver-90"), 400)],
  ["230 mm, chamber", sized(scenarioOf("rattle-chamber-60"), 230)],
  ["a bent bib", bentBib(scenarioOf("long-bib-diver-90"), 0)],
  ["a bib bent upward", bentBib(scenarioOf("rattle-chamber-60"), 80)],
  ["25 mm", sized(light(scenarioOf("tail-heavy-90")), 25)],
  ["25 mm, bib", sized(light(scenarioOf("rattle-chamber-60")), 25)],
];

export const ALL: SheetChoice = {
  paper: "A4",
  measured: AS_PRINTED,
  stations: null,
  templates: TEMPLATES.map((one) => one.key),
  build: true,
};

const known = new WeakMap<Scenario, Compiled>();

export function jobOf(from: Scenario, choice: Partial<SheetChoice> = {}, box: Box | null = null): SheetJob {
  const compiled = known.get(from) ?? compile(from);
  known.set(from, compiled);
  return sheetJob(from, fonts, { ...ALL, ...choice }, box, compiled);
}
