import { readdirSync, readFileSync } from "node:fs";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { Files } from "../../../src/ui/state/files.svelte";
import { baitOf, FIRST_WEIGHT, planned, starter, usualAnswers } from "../../../src/ui/maker";
import { emptyBox } from "../../../src/document";
import { effectsOf, riseBandOf } from "../../../src/runner/weigh";
import { wishOf } from "../../../src/ui/maker";
import { Workspace } from "../../../src/ui/state/workspace.svelte";
import { scenario } from "./scenario";
import { here, remarks, sized } from "../../lib/new-bait";

const rename = (work: Workspace): boolean =>
  work.edit("name", "rename", (from) => ({ ...from, name: "Mine" }));

describe("a new bait", () => {
  // The notice goes by itself after a while.
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  test("begins as a lipped blank with hooks that nobody has weighed, upright by a first weight", () => {
    const { statics, scenario: bait } = new Workspace(starter()).now;
    expect(bait.name).toBe("New bait");
    expect(bait.bait.body).toEqual({ material: "basswood" });
    expect(bait.bait.bib?.material).toBe("polycarbonate");
    expect(bait.bait.hangers).toHaveLength(2);
    expect(bait.bait.ballast.map(({ name, material }) => [name, material])).toEqual([
      [`${FIRST_WEIGHT}, a guess`, "tungsten"],
    ]);
    expect([...bait.bench, ...bait.tub, ...bait.corrections, ...bait.expect]).toEqual([]);
    // Nothing is asked of it before its maker says so.
    expect(bait.target).toBeUndefined();
    for (const { hook, ring } of bait.bait.hangers)
      expect([hook?.weighed, ring?.weighed]).toEqual([undefined, undefined]);
    expect(statics.upright).toMatchObject({ bellyDownUnderWater: true, uprightAfloat: true });
  });

  test.each(["floats", "suspends", "sinks"] as const)(
    "meant to be one that %s, it is within its target",
    (word) => {
      for (const length of [45, 90, 170]) {
        const { statics, scenario: bait } = new Workspace(
          baitOf(sized("slender", length, { wish: wishOf(word), salinity: 35, temperature: 10 })),
        ).now;
        const { target } = bait;
        if (target === undefined) throw new Error("It was given a target.");
        expect(target.behaves).toBe(word);
        const off = statics.netBuoyancy * 1e3 - target.net_g;
        expect(Math.abs(off), `${length} mm`).toBeLessThanOrEqual(target.netTolerance_g);
        expect(Math.sign(target.net_g)).toBe({ floats: 1, suspends: 0, sinks: -1 }[word]);
      }
    },
  );

  test("a blank that floats by more than it weighs has a rise with its band, and effects", () => {
    const made = starter();
    const bare = { ...made, bait: { ...made.bait, ballast: [] } };
    const { statics } = new Workspace(bare).now;
    expect(statics.netBuoyancy).toBeGreaterThan(statics.mass / 4);
    const { speed } = riseBandOf(bare);
    expect(speed[0]).toBeGreaterThan(0);
    expect(speed[1]).toBeGreaterThan(speed[0]);
    expect(effectsOf(bare, []).length).toBeGreaterThan(5);
  });

  test("nose-down by so many degrees, it rests so", () => {
    const wish = { ...wishOf("suspends"), trim_deg: -12 };
    const { statics } = new Workspace(baitOf(sized("slender", 90, { wish }))).now;
    expect((statics.rest.pitch ?? 0) * (180 / Math.PI)).toBeGreaterThan(-15);
    expect((statics.rest.pitch ?? 0) * (180 / Math.PI)).toBeLessThan(-9);
  });

  test("the target is not what the bait happens to do", () => {
    const light = baitOf(sized("stout", 90, { wood: "balsa", wish: wishOf("suspends") }));
    const heavy = baitOf(sized("stout", 90, { wood: "beech", wish: wishOf("suspends") }));
    expect(light.target).toEqual(heavy.target);
  });

  test("says of itself what its maker's language says", () => {
    expect(baitOf({ ...usualAnswers(), notes: "Ein Rohling" }).notes).toBe("Ein Rohling");
  });

  test("is none of the scenarios", () => {
    const folder = new URL("../../../scenarios/", import.meta.url);
    const names = readdirSync(folder)
      .filter((one) => one.endsWith(".json"))
      .map((one) => (JSON.parse(readFileSync(new URL(one, folder), "utf8")) as { name: string }).name);
    expect(names.length).toBeGreaterThan(0);
    expect(names).not.toContain("New bait");
  });

  test("opens at once, as a bait of its own that needs no saving", () => {
    const work = new Workspace(scenario());
    const files = new Files(work, (one) => work.open(one));
    rename(work);
    files.newBait(starter());
    expect(files.asking).toBeNull();
    expect(work.scenario.name).toBe("New bait");
    expect([work.changed, work.undoLabel, work.lineage]).toEqual([false, null, 1]);
    const first = work.scenario;
    files.newBait(starter());
    expect(work.scenario).toEqual(first);
    expect(work.scenario).not.toBe(first);
  });

  test.each([null, "floats", "suspends", "sinks"] as const)(
    "of the usual sizes, asked for ‘%s’, begins with planned weights, as asked and without a warning",
    async (word) => {
      const made = baitOf({ ...usualAnswers(), wish: word === null ? null : wishOf(word) });
      const { scenario: bait, told } = await planned(made, emptyBox(), here);
      expect(told).toBeNull();
      expect(bait.bait.ballast.length).toBeGreaterThan(0);
      for (const one of bait.bait.ballast) {
        // Weights of usual sizes: the plan of the bench, from the maker's own, is still to be made.
        expect(one.name.startsWith(`${FIRST_WEIGHT}: `)).toBe(true);
        expect(one.drill_mm).toBeGreaterThan(0);
      }
      expect(remarks(bait)).toEqual([]);
      const { statics } = new Workspace(bait).now;
      expect(Math.abs(statics.rest.pitch ?? Infinity) * (180 / Math.PI)).toBeLessThanOrEqual(3);
      expect(statics.upright.bellyDownUnderWater).toBe(true);
      const { target } = bait;
      expect(target).toEqual(made.target);
      const grams = statics.netBuoyancy * 1e3;
      if (target === undefined) expect(grams).toBeGreaterThan(0);
      else expect(Math.abs(grams - target.net_g)).toBeLessThanOrEqual(target.netTolerance_g);
    },
  );

  test("is planned from the maker's own box where that has weights and a drill", async () => {
    const made = baitOf({ ...usualAnswers(), wish: wishOf("floats") });
    const things = [
      { kind: "shot", name: "my shot", count: 30, mass_g: 0.35, material: "tin" } as const,
      { kind: "shot", name: "my ball", count: 30, mass_g: 1, material: "tungsten" } as const,
    ];
    const own = { ...emptyBox(), things, drills_mm: [4, 4.5, 5, 6] };
    const { scenario: bait } = await planned(made, own, here);
    expect(bait.bait.ballast.map((one) => one.name).join()).toMatch(/my (shot|ball)/);
    expect(bait.bait.ballast.some((one) => one.name.startsWith(FIRST_WEIGHT))).toBe(false);
  });
});
