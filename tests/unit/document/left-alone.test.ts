import { expect, it } from "vitest";
import { readScenario } from "../../../src/document";
import type { Scenario } from "../../../src/document";
import { staticsOf } from "../../../src/model/statics";
import { scenarioOf, SCENARIOS } from "../../lib/scenarios";

/** Edits as a hand makes them: what they leave alone stays the same object. */
const EDITS: Readonly<Record<string, (from: Scenario) => Scenario>> = {
  "the line": (from) => ({ ...from, tackle: { ...from.tackle, lineOut_m: from.tackle.lineOut_m + 1 } }),
  "the cadence": (from) => ({ ...from, cadence: [] }),
  "the water": (from) => ({ ...from, water: { ...from.water, temperature_C: 7, depth_m: 9 } }),
  "the bib's factor": (from) => ({ ...from, calibration: { bibFactor: 0.8 } }),
  "the name": (from) => ({ ...from, name: "another" }),
  "the wood": (from) => ({ ...from, bait: { ...from.bait, body: { density_g_ml: 0.333 } } }),
  "the tie eye": (from) => ({
    ...from,
    bait: { ...from.bait, tie_mm: [from.bait.tie_mm[0], from.bait.tie_mm[1] + 0.3] },
  }),
  "the bench": (from) => ({
    ...from,
    bench: [{ kind: "weighing", reading_g: 9, resolution_g: 0.01, with: ["blank"] }],
  }),
  "the outline": (from) => ({
    ...from,
    bait: { ...from.bait, halfBreadth: from.bait.halfBreadth.map(([s, v]) => [s, 0.97 * v]) },
  }),
  "the roundness": (from) => {
    const { roundover: _, ...bait } = from.bait;
    return { ...from, bait };
  },
};

/** What a document comes to, or why it is refused. */
function comesTo(scenario: Scenario, before?: Parameters<typeof readScenario>[2]) {
  const read = readScenario(scenario, undefined, before);
  if (!read.ok) return { problems: read.problems };
  const { bait, ...rest } = read.compiled;
  const { spec, items, bodyDensity, volumeFactor, bench, warnings, shape } = bait;
  const rows = { spec, items, bodyDensity, volumeFactor, bench, warnings, volume: shape.volume };
  return { rest, rows: plain(rows), statics: plain(staticsOf(bait, rest.around.density)) };
}
/** Numbers and names alone: two functions that do the same are not equal. */
const plain = (value: object): unknown => JSON.parse(JSON.stringify(value));

it.each([...SCENARIOS])("what an edit has left alone of %s is what would be made anew", (name) => {
  const scenario = scenarioOf(name);
  const before = readScenario(scenario);
  if (!before.ok) throw new Error("refused");
  for (const edit of Object.values(EDITS)) {
    const edited = edit(scenario);
    expect(comesTo(edited, { scenario, compiled: before.compiled })).toEqual(comesTo(edited));
  }
});

it("takes the bait over where the edit did not touch it, its shape where only that stayed, else nothing", () => {
  const scenario = scenarioOf("suspender-90");
  const before = readScenario(scenario);
  if (!before.ok) throw new Error("refused");
  const { bait } = before.compiled;
  const after = (name: string) => {
    const read = readScenario(EDITS[name]?.(scenario), undefined, { scenario, compiled: before.compiled });
    if (!read.ok) throw new Error(read.problems.map((one) => one.message).join("\n"));
    return read.compiled.bait;
  };
  for (const name of ["the line", "the cadence", "the water", "the bib's factor"])
    expect(after(name)).toBe(bait);
  for (const name of ["the name", "the wood", "the tie eye"]) {
    expect(after(name)).not.toBe(bait);
    expect(after(name).drawn).toBe(bait.drawn);
  }
  expect(after("the outline").drawn).not.toBe(bait.drawn);
});
