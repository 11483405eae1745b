import { readdirSync, readFileSync } from "node:fs";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { Files } from "../../../src/ui/state/files.svelte";
import { starter } from "../../../src/ui/state/starter";
import { Workspace } from "../../../src/ui/state/workspace.svelte";
import { scenario } from "./scenario";

const rename = (work: Workspace): boolean =>
  work.edit("name", "rename", (from) => ({ ...from, name: "Mine" }));

describe("a new bait", () => {
  // The notice goes by itself after a while.
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  test("is a plain lipped blank without ballast or readings, that floats high but is not yet steady", () => {
    const { statics, scenario: bait } = new Workspace(starter()).now;
    expect(bait.name).toBe("New bait");
    expect(bait.bait).toMatchObject({ ballast: [], body: { material: "basswood" } });
    expect(bait.bait.bib?.material).toBe("polycarbonate");
    expect(bait.bait.hangers).toHaveLength(2);
    expect([...bait.bench, ...bait.tub, ...bait.corrections, ...bait.expect]).toEqual([]);
    // Nobody has weighed anything yet.
    for (const { hook, ring } of bait.bait.hangers)
      expect([hook?.weighed, ring?.weighed]).toEqual([undefined, undefined]);
    expect(statics.netBuoyancy).toBeGreaterThan(0);
    // Round in section and without ballast: belly down under water by its hooks, but afloat it lies over.
    expect(statics.upright.bellyDownUnderWater).toBe(true);
    expect(statics.upright.uprightAfloat).toBe(false);
    expect(statics.warnings).toEqual([]);
  });

  test("is none of the scenarios", () => {
    const folder = new URL("../../../scenarios/", import.meta.url);
    const names = readdirSync(folder)
      .filter((one) => one.endsWith(".json"))
      .map((one) => (JSON.parse(readFileSync(new URL(one, folder), "utf8")) as { name: string }).name);
    expect(names.length).toBeGreaterThan(0);
    expect(names).not.toContain("New bait");
  });

  test("takes the place of an unchanged document at once, and undo brings that back", () => {
    const one = scenario();
    const work = new Workspace(one);
    const files = new Files(work);
    files.newBait();
    expect(files.asking).toBeNull();
    expect(work.scenario.name).toBe("New bait");
    expect(work.changed).toBe(false);
    expect(work.lineage).toBe(1);
    work.undo();
    expect(work.scenario).toBe(one);
    expect(work.lineage).toBe(0);
    work.redo();
    expect(work.scenario.name).toBe("New bait");
  });

  test("asks first where unsaved work would go", () => {
    const work = new Workspace(scenario());
    const files = new Files(work);
    rename(work);
    files.newBait();
    expect(files.asking?.kind).toBe("replace");
    expect(work.scenario.name).toBe("Mine");
    files.dismiss();
    expect(work.scenario.name).toBe("Mine");
    files.newBait();
    files.replace();
    expect(work.scenario.name).toBe("New bait");
    work.undo();
    expect(work.scenario.name).toBe("Mine");
    expect(work.changed).toBe(true);
  });

  test("started twice it is two documents", () => {
    const work = new Workspace(scenario());
    const files = new Files(work);
    files.newBait();
    const first = work.lineage;
    rename(work);
    files.newBait();
    files.replace();
    expect(work.lineage).not.toBe(first);
    work.undo();
    expect(work.scenario.name).toBe("Mine");
    expect(work.lineage).toBe(first);
  });
});
