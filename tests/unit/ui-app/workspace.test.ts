import { describe, expect, test } from "vitest";
import { parseScenario, serialize } from "../../../src/document";
import { bodyInputs, waterInputs, ballastInputs } from "../../../src/ui/state/inputs";
import type { Input } from "../../../src/ui/state/inputs";
import { Workspace } from "../../../src/ui/state/workspace.svelte";
import { scenario } from "./scenario";

function inputOf(work: Workspace, id: string): Input {
  const all = [
    ...waterInputs(work.scenario),
    ...bodyInputs(work.scenario),
    ...ballastInputs(work.scenario),
  ].flatMap((group) => group.inputs);
  const found = all.find((input) => input.id === id);
  if (found === undefined) throw new Error(`no input ${id}`);
  return found;
}

const TEMPERATURE = "water.temperature_C";
const LENGTH = "bait.length_mm";

describe("the open document", () => {
  test("a drag is one step of undo, and its statics follow every move", () => {
    const one = scenario();
    const work = new Workspace(one);
    const input = inputOf(work, TEMPERATURE);
    const densities = [2, 8, 20, 28].map((value) => {
      work.turn(input, value);
      return work.now.statics.density;
    });
    // Fresh water is densest at 4 °C: warmer is lighter.
    expect([...densities].sort((a, b) => b - a)[0]).toBe(densities[0]);
    expect(work.changed).toBe(true);
    work.settle();
    expect(work.scenario.water.temperature_C).toBe(28);
    work.undo();
    expect(work.scenario).toEqual(one);
    expect(work.undoLabel).toBeNull();
    expect(work.changed).toBe(false);
    work.redo();
    expect(work.scenario.water.temperature_C).toBe(28);
  });

  test("a drag recomputes from its start: there and back leaves no trace of rounding", () => {
    const one = scenario();
    const work = new Workspace(one);
    const input = inputOf(work, LENGTH);
    for (const value of [81.3, 97.7, 60.1, 80]) work.turn(input, value);
    work.settle();
    expect(work.scenario.bait).toEqual(one.bait);
  });

  test("turning another input ends the drag of the first", () => {
    const work = new Workspace(scenario());
    work.turn(inputOf(work, TEMPERATURE), 20);
    work.turn(inputOf(work, "water.salinity_g_kg"), 30);
    work.settle();
    work.undo();
    expect(work.scenario.water).toMatchObject({ temperature_C: 20, salinity_g_kg: 0 });
    work.undo();
    expect(work.undoLabel).toBeNull();
  });

  test("what the model refuses is said at the input, and the document stays", () => {
    const one = scenario();
    const work = new Workspace(one);
    const width = inputOf(work, "bait.halfBreadth");
    // The chamber is 6 mm wide and the body would be half a millimetre.
    work.turn(width, 0.5);
    expect(work.refusal?.id).toBe("bait.halfBreadth");
    expect(work.refusal?.text).toMatch(/Not taken: .+/);
    expect(work.scenario).toBe(one);
    work.settle();
    expect(work.undoLabel).toBeNull();
    work.turn(width, 13);
    expect(work.refusal).toBeNull();
  });

  test("undo goes back over an opened document, lineage and all", () => {
    const work = new Workspace(scenario());
    work.turn(inputOf(work, TEMPERATURE), 20);
    work.settle();
    const before = work.scenario;
    const lineage = work.lineage;
    const other = scenario((plain) => {
      plain.name = "Other";
    });
    work.replace("open Other", other, true);
    expect(work.changed).toBe(false);
    expect(work.lineage).not.toBe(lineage);
    work.undo();
    expect(work.scenario).toEqual(before);
    expect(work.lineage).toBe(lineage);
    expect(work.changed).toBe(true);
  });

  test("saved text reads back as the same document", () => {
    const work = new Workspace(scenario());
    work.turn(inputOf(work, "bait.body.density_g_ml"), 0.4123);
    work.settle();
    const parsed = parseScenario(work.text());
    expect(parsed.ok && parsed.scenario).toEqual(work.scenario);
    work.markSaved();
    expect(work.changed).toBe(false);
    expect(serialize(work.scenario)).toBe(work.text());
  });
});
