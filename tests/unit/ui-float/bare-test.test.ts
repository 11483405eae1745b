import { describe, expect, it } from "vitest";
import {
  baitAt,
  BARE_TEST,
  compile,
  correctionEntry,
  momentsOf,
  notYetAt,
  rowStages,
} from "../../../src/document";
import type { Moment, Scenario } from "../../../src/document";
import { staticsOf } from "../../../src/model/statics";
import { water } from "../../../src/model/water";
import { readTub } from "../../../src/runner/float";
import { dueAt } from "../../../src/ui/views/float/due";
import { accountByStage, bareTest } from "../../../src/ui/views/weigh/account";
import { scenario } from "../ui-app/scenario";

/**
 * The sample with things of round numbers, so that a hand can add them up. To come after the first tub test:
 *
 *   eyes   0.12 g at 1.20 g/mL   0.10 mL
 *   paint  0.50 g at 1.25 g/mL   0.40 mL
 *   clear  0.66 g at 1.10 g/mL   0.60 mL
 *   -----------------------------------
 *          1.28 g                1.10 mL
 */
const COATED = { mass: 1.28e-3, volume: 1.1e-6 };
/** Two hooks and two rings: carbon steel 7.82, stainless steel 8.00 g/mL. */
const HUNG = { mass: (0.5 + 0.1 + 0.4 + 0.1) * 1e-3, volume: (0.9 / 7.82 + 0.2 / 8) * 1e-6 };

const made = (change: (bait: Record<string, unknown>) => void = () => undefined): Scenario =>
  scenario((one) => {
    Object.assign(one.bait, {
      chambers: [],
      fittings: [{ name: "eyes", at_mm: [10, 3], mass_g: 0.12, density_g_ml: 1.2, where: "outside" }],
      coats: [
        { name: "sealer", mass_g: 0.2, density_g_ml: 1 },
        { name: "paint", mass_g: 0.5, density_g_ml: 1.25 },
        { name: "clear", mass_g: 0.66, density_g_ml: 1.1 },
      ],
      hangers: [
        { name: "belly", at_mm: [34, -12], ring: { mass_g: 0.1 }, hook: { mass_g: 0.5 } },
        { name: "tail", at_mm: [92, 0], ring: { mass_g: 0.1 }, hook: { mass_g: 0.4 } },
      ],
    });
    change(one.bait);
  });

const plain = made();
const { bait, around } = compile(plain);
const whole = staticsOf(bait, around.density);
const at = (moment: Moment, of = plain, from = compile(of)) =>
  staticsOf(baitAt(of, from.bait, moment), from.around.density);
const gram = (kg: number): number => kg * 1e3;

describe("the first tub test, bare with its hooks", () => {
  it("is of the finished bait less paint, clear coat and eyes, by hand", () => {
    const bare = at(BARE_TEST);
    expect(bare.mass).toBeCloseTo(whole.mass - COATED.mass, 12);
    expect(bare.displaced).toBeCloseTo(whole.displaced - COATED.volume, 14);
    const net = whole.netBuoyancy + COATED.mass - around.density * COATED.volume;
    expect(bare.netBuoyancy).toBeCloseTo(net, 12);
    // 1.28 g less in air, but only 0.18 g less in the water: it floats a bit higher than the finished bait.
    expect(gram(bare.netBuoyancy - whole.netBuoyancy)).toBeCloseTo(0.18, 2);
  });

  it("is of the closed bait with its hooks and rings hung on, by hand", () => {
    const [bare, closed] = [at(BARE_TEST), at("closed")];
    expect(bare.mass - closed.mass).toBeCloseTo(HUNG.mass, 12);
    expect(bare.displaced - closed.displaced).toBeCloseTo(HUNG.volume, 14);
    // They come off again: the painted bait has none of them.
    expect(at("painted").mass - closed.mass).toBeCloseTo(0.62e-3, 12);
  });

  it("stands in the account with the same numbers, and closes with what is to come", () => {
    const worked = { scenario: plain, compiled: compile(plain), statics: whole };
    const account = accountByStage(worked);
    const test = bareTest(worked, account);
    const bare = at(BARE_TEST);
    expect(test?.mass).toBeCloseTo(bare.mass, 12);
    expect(test?.net).toBeCloseTo(bare.netBuoyancy, 12);
    expect((test?.net ?? NaN) + (test?.coatsToCome ?? NaN) + (test?.restToCome ?? NaN)).toBeCloseTo(
      whole.netBuoyancy,
      12,
    );
  });

  it("is no moment of its own where nothing hangs on the bait, or nothing is to come but what hangs", () => {
    const moments = (of: Scenario): readonly Moment[] => momentsOf(of.bait, compile(of).bait);
    expect(moments(plain)).toContain(BARE_TEST);
    expect(moments(made((one) => (one["hangers"] = [])))).not.toContain(BARE_TEST);
    expect(
      moments(
        made((one) => {
          one["coats"] = [];
          one["fittings"] = [];
        }),
      ),
    ).not.toContain(BARE_TEST);
  });
});

describe("what it should do then", () => {
  const worked = { scenario: plain, compiled: compile(plain), statics: whole };
  const here = { salinity: plain.water.salinity_g_kg, temperature: plain.water.temperature_C };
  const bare = at(BARE_TEST);

  it("is the target and what is still to come, by hand: +0.10 g wanted, 0.18 g to come", () => {
    const due = dueAt(worked, BARE_TEST, bare, 0.1e-3, here);
    expect(due.due).toBeCloseTo(0.1e-3 + COATED.mass - around.density * COATED.volume, 12);
    expect(due.net).toBeCloseTo(bare.netBuoyancy, 12);
    // Coats alone: 1.16 g that displace 1.00 mL.
    expect(due.coats).toBeCloseTo(around.density * 1e-6 - 1.16e-3, 12);
    expect(due.coats + due.others).toBeCloseTo(whole.netBuoyancy - bare.netBuoyancy, 12);
  });

  it("is asked in the tub's own water", () => {
    const sea = { salinity: 35, temperature: 15 };
    const lift = (water(35, 15).density - around.density) * bare.displaced;
    const [own, other] = [here, sea].map((tub) => dueAt(worked, BARE_TEST, bare, 0.1e-3, tub));
    expect((other?.due ?? NaN) - (own?.due ?? NaN)).toBeCloseTo(lift, 12);
    expect((other?.net ?? NaN) - (own?.net ?? NaN)).toBeCloseTo(lift, 12);
    expect(dueAt(worked, BARE_TEST, bare, null, sea).due).toBeNull();
  });
});

describe("a reading of the first tub test", () => {
  const tap = { temperature_C: plain.water.temperature_C, salinity_g_kg: plain.water.salinity_g_kg };
  const timed: Scenario["tub"][number] = {
    kind: "timed",
    direction: "rises",
    height_mm: 300,
    runUp_mm: 200,
    times_s: [2.4, 2.4, 2.4],
    ...tap,
  };
  const reading = { ...timed, without: [...notYetAt(plain, bait, BARE_TEST)] };
  const { tub } = readTub(plain, reading);
  const took = tub.correction.mass;
  const corrected: Scenario = { ...plain, corrections: [correctionEntry(tub.correction)] };
  const then = compile(corrected);
  const more = (moment: Moment): number => at(moment, corrected, then).mass - at(moment).mass;

  it("makes the account of that test agree with the tub", () => {
    expect(Math.abs(took)).toBeGreaterThan(0.05e-3);
    expect(at(BARE_TEST, corrected, then).netBuoyancy).toBeCloseTo(tub.net?.value ?? NaN, 9);
    // Read again, nothing is left to correct. Tolerance: the search for a net buoyancy, 1 mg.
    expect(readTub(corrected, reading).tub.correction.mass).toBeCloseTo(0, 6);
  });

  it("stands from the closed bait on, and changes no blank: its hooks only hung on for the test", () => {
    // Nothing comes onto this bait on closing: laid out, it is the bait that was tested.
    for (const moment of ["blank", "sealed"] as const) expect(more(moment)).toBe(0);
    for (const moment of ["laid out", "closed", BARE_TEST, "painted", "clear-coated", "dressed"] as const)
      expect(more(moment)).toBeCloseTo(took, 12);
    const stages = rowStages(corrected.bait, then.bait);
    expect(stages.filter((_, i) => then.bait.items[i]?.group === "corrections")).toEqual(["laid out"]);
  });

  it("is not found a second time by a later test without hooks", () => {
    // The painted bait, its hooks off for the work: the account already has what the first test found.
    const painted = at("painted", corrected, then);
    const { floating } = painted;
    if (floating === null) throw new Error("the painted bait floats");
    const { sin, cos, level } = floating.surface;
    const on = (s: number): [number, number] => [s, (1e3 * level + s * sin) / cos];
    const later = readTub(corrected, {
      kind: "waterline",
      nose_mm: on(5),
      tail_mm: on(80),
      without: [...notYetAt(plain, bait, "painted")],
      ...tap,
    });
    expect(later.tub.correction.mass).toBeCloseTo(0, 7);
    expect(later.tub.correction.shift.x).toBeCloseTo(0, 6);
  });

  it("of the attitude keeps its moment when the hooks come off", () => {
    const seen = readTub(plain, {
      kind: "attitude",
      pitch_deg: 8,
      state: "rest",
      without: reading.without,
      ...tap,
    }).tub.correction;
    const tilted: Scenario = { ...plain, corrections: [correctionEntry(seen)] };
    const row = (moment: Moment) =>
      baitAt(tilted, compile(tilted).bait, moment).items.find((one) => one.group === "corrections");
    const moment = at(BARE_TEST).mass * seen.shift.x;
    expect(Math.abs(moment)).toBeGreaterThan(1e-7);
    for (const when of [BARE_TEST, "closed", "painted", "dressed"] as const)
      expect(row(when)?.moment.x).toBeCloseTo(moment, 10);
  });
});
