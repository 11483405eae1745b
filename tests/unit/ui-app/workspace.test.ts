import { describe, expect, test } from "vitest";
import { movePoints, parseScenario, serialize } from "../../../src/document";
import type { Scenario } from "../../../src/document";
import { bodyInputs, partSections, waterInputs } from "../../../src/ui/state/inputs";
import type { Input } from "../../../src/ui/state/inputs";
import { Workspace } from "../../../src/ui/state/workspace.svelte";
import { scenario } from "./scenario";

function inputOf(work: Workspace, id: string): Input {
  const all = [
    ...waterInputs(work.scenario),
    ...bodyInputs(work.scenario),
    ...partSections(work.scenario).flatMap(({ groups }) => groups),
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

  test("an opened document has steps of undo of its own", () => {
    const work = new Workspace(scenario());
    work.turn(inputOf(work, TEMPERATURE), 20);
    work.settle();
    const { trail, scenario: before, lineage, inFile } = work;
    const other = scenario((plain) => {
      plain.name = "Other";
    });
    work.open(other);
    expect(work.changed).toBe(false);
    expect(work.lineage).not.toBe(lineage);
    expect(work.undoLabel).toBeNull();
    work.undo();
    expect(work.scenario).toBe(other);
    work.open(before, { trail, inFile });
    expect(work.changed).toBe(true);
    work.undo();
    expect(work.scenario).toEqual(scenario());
    expect(work.changed).toBe(false);
  });

  test("a damaged step of undo is said, and the document stays", () => {
    const one = scenario();
    const delta = [{ at: ["water", "temperature_C"], from: 900, to: one.water.temperature_C }];
    const work = new Workspace(one, { trail: { past: [{ label: "heat", delta }], future: [] } });
    work.undo();
    expect(work.scenario).toBe(one);
    expect(work.refusal?.text).toMatch(/damaged/);
    expect(work.undoLabel).toBeNull();
  });

  test("what another tab did comes in as a step that can be undone", () => {
    const work = new Workspace(scenario());
    const lineage = work.lineage;
    const delta = [{ at: ["name"], from: work.scenario.name, to: "Renamed there" }];
    work.adopt(
      { ...work.scenario, name: "Renamed there" },
      {
        trail: { past: [{ label: "rename", delta }], future: [] },
        inFile: work.inFile,
      },
    );
    expect([work.scenario.name, work.lineage, work.changed]).toEqual(["Renamed there", lineage, true]);
    work.undo();
    expect(work.changed).toBe(false);
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

describe("a hand on the drawing", () => {
  const lift = (by: number) => (from: Scenario) => movePoints(from, "top", [1], [0, by]);

  test("a drawing that is refused waits to be mended; the document and its figures are the last good ones", () => {
    const one = scenario();
    const work = new Workspace(one);
    expect(work.move("drag", "move a point", lift(1))).toBe(true);
    const good = work.now;
    expect(work.move("drag", "move a point", lift(-30))).toBe(false);
    expect(work.now).toBe(good);
    expect(work.tried?.scenario.bait.top[1]?.[1]).toBe(-21);
    expect(work.tried?.problems[0]?.path).toMatch(/^bait\.top/);
    work.settle();
    // Released there: nothing of the drag is in the document, and the next move begins where the hand left it.
    expect(work.scenario).toBe(one);
    expect(work.move("next", "move a point", lift(31))).toBe(true);
    work.settle();
    expect(work.scenario.bait.top[1]?.[1]).toBe(10);
    expect(work.tried).toBeNull();
    const text = serialize(one);
    work.undo();
    expect(work.text()).toBe(text);
    expect(work.undoLabel).toBeNull();
  });

  test("undo first takes back what was refused; dropping a running drag leaves no step", () => {
    const one = scenario();
    const work = new Workspace(one);
    work.move("drag", "move a point", lift(-30));
    work.settle();
    expect(work.undoLabel).toBe("move a point");
    work.undo();
    expect(work.tried).toBeNull();
    expect(work.undoLabel).toBeNull();
    work.move("drag", "move a point", lift(2));
    work.drop();
    expect(work.scenario).toBe(one);
    expect(work.undoLabel).toBeNull();
    expect(work.changed).toBe(false);
  });

  test("what is drawn while a drawing waits is taken back move by move, and comes back by redo", () => {
    const one = scenario();
    const work = new Workspace(one);
    const height = (): number | undefined => (work.tried?.scenario ?? work.scenario).bait.top[1]?.[1];
    const at = height() ?? 0;
    for (const [name, by] of [
      ["first", -30],
      ["second", -1],
      ["third", -2],
    ] as const) {
      expect(work.move(name, name, lift(by))).toBe(false);
      work.settle();
    }
    // A running move that is dropped is no step, and takes none away.
    work.move("fourth", "fourth", lift(40));
    work.drop();
    expect([height(), work.undoLabel, work.redoLabel]).toEqual([at - 33, "third", null]);
    work.undo();
    expect([height(), work.undoLabel, work.redoLabel]).toEqual([at - 31, "second", "third"]);
    work.drop();
    expect([height(), work.undoLabel, work.redoLabel]).toEqual([at - 30, "first", "second"]);
    work.undo();
    expect([work.tried, height(), work.undoLabel, work.redoLabel]).toEqual([null, at, null, "first"]);
    for (const step of [30, 31, 33]) {
      work.redo();
      expect(height()).toBe(at - step);
    }
    expect(work.redoLabel).toBeNull();
    work.redo();
    expect(height()).toBe(at - 33);
    // Mended, it is one step of the document.
    work.move("mend", "mend", lift(34));
    work.settle();
    expect([work.tried, height(), work.undoLabel]).toEqual([null, at + 1, "mend"]);
    work.undo();
    expect(work.scenario).toEqual(one);
  });

  test("a waiting drawing goes along with an edit beside the bait, and stays where a redo would end it", () => {
    const work = new Workspace(scenario());
    work.move("good", "good", lift(1));
    work.settle();
    work.undo();
    work.move("bad", "bad", lift(-30));
    work.settle();
    expect(work.redoLabel).toBeNull();
    work.redo();
    const waiting = work.tried?.scenario.bait;
    expect(waiting).toBeDefined();
    work.edit("name", "rename", (from) => ({ ...from, name: "Renamed" }));
    const input = inputOf(work, "water.temperature_C");
    work.turn(input, 7);
    work.turn(input, 8);
    work.settle();
    expect(work.scenario).toMatchObject({ name: "Renamed", water: { temperature_C: 8 } });
    expect(work.tried?.scenario.bait).toBe(waiting);
    expect(work.tried?.scenario).toMatchObject({ name: "Renamed", water: { temperature_C: 8 } });
  });
});
