import { describe, expect, it } from "vitest";
import { baitAt, compile, notYetAt, rowStages } from "../../../src/document";
import type { Scenario, Stage } from "../../../src/document";
import { staticsOf, submergedLever } from "../../../src/model/statics";
import { readTub, righting } from "../../../src/runner/float";
import { scenario } from "../ui-app/scenario";

const plain = scenario((one) => {
  Object.assign(one.bait, { chambers: [] });
});

describe("righting moments", () => {
  const { bait, around } = compile(plain);
  const statics = staticsOf(bait, around.density);
  const found = righting(plain, "dressed");

  it("under water are those of a lever BG that turns to the rest trim", () => {
    const { BG, displaced, density, rest } = statics;
    if (rest.pitch === null) throw new Error("the sample rests somewhere");
    const at = rest.pitch;
    found.trims.forEach((pitch, i) => {
      // Closed form: ρ ΣV · BG sin(θ_rest − θ); round-off only.
      expect(found.under[i]).toBeCloseTo(density * displaced * submergedLever(BG, at - pitch), 12);
    });
  });

  it("afloat fall through zero at the floating trim, and at no trim that is not one", () => {
    const { floating } = statics;
    if (floating === null || found.afloat === null) throw new Error("the sample floats");
    const stable = [floating, ...floating.others].map((one) => one.pitch);
    const falls = found.trims.slice(1).flatMap((pitch, i) => {
      const [a, b] = [found.afloat?.[i] ?? NaN, found.afloat?.[i + 1] ?? NaN];
      return a > 0 && b <= 0 ? [[found.trims[i] ?? NaN, pitch] as const] : [];
    });
    expect(falls).toHaveLength(stable.length);
    for (const [from, to] of falls) expect(stable.some((pitch) => pitch >= from && pitch <= to)).toBe(true);
  });
});

describe("the bait at a stage", () => {
  const { bait } = compile(plain);

  it("has what is on it and lacks what is named as not yet on it", () => {
    const early = baitAt(plain, bait, "closed");
    const missing = notYetAt(plain, bait, "closed");
    expect(missing.length).toBeGreaterThan(0);
    const names = early.items.filter((item) => item.mass > 0).map((item) => item.item);
    expect(names.filter((name) => missing.includes(name))).toEqual([]);
    expect(baitAt(plain, bait, "dressed")).toBe(bait);
    expect(notYetAt(plain, bait, "dressed")).toEqual([]);
  });

  it("has a tub correction from the stage that was tested on: a weighed blank stays as it was weighed", () => {
    const correction = {
      name: "tub correction",
      mass_g: 0.2,
      shift_mm: [0, 0] as [number, number],
      without: [...notYetAt(plain, bait, "closed")],
    };
    const corrected: Scenario = { ...plain, corrections: [correction] };
    const { bait: whole } = compile(corrected);
    const mass = (of: typeof bait): number => of.items.reduce((sum, row) => sum + row.mass, 0);
    const more = (stage: Stage): number =>
      mass(baitAt(corrected, whole, stage)) - mass(baitAt(plain, bait, stage));
    for (const stage of ["blank", "sealed"] as const) expect(more(stage)).toBe(0);
    // Nothing comes onto this bait on closing: laid out, it is the bait that was tested.
    for (const stage of ["laid out", "closed", "painted", "dressed"] as const)
      expect(more(stage)).toBeCloseTo(2e-4, 12);
    const at = rowStages(corrected.bait, whole);
    expect(at.filter((_, i) => whole.items[i]?.group === "corrections")).toEqual(["laid out"]);
    expect(notYetAt(corrected, whole, "blank")).not.toContain("tub correction");
  });
});

describe("a tub reading", () => {
  const { water } = plain;
  const tap = { temperature_C: water.temperature_C, salinity_g_kg: water.salinity_g_kg };
  const { bait, around } = compile(plain);

  it("that is the waterline as reckoned corrects nothing", () => {
    const { floating } = staticsOf(bait, around.density);
    if (floating === null) throw new Error("the sample floats");
    const { sin, cos, level } = floating.surface;
    // Two points of the surface's trace in the side view: x sin θ + z cos θ = level.
    const on = (s: number): [number, number] => [s, (1e3 * level + s * sin) / cos];
    const { tub } = readTub(plain, {
      kind: "waterline",
      nose_mm: on(5),
      tail_mm: on(80),
      ...tap,
    });
    // Archimedes: what is under the line weighs what the bait weighs. Tolerance: quadrature of the immersed volume.
    expect(tub.correction.mass).toBeCloseTo(0, 7);
    expect(tub.correction.shift.x).toBeCloseTo(0, 6);
  });

  it("of the rest trim as reckoned corrects nothing, and a steeper nose moves G aft", () => {
    const { rest } = staticsOf(bait, around.density);
    const pitch = ((rest.pitch ?? NaN) * 180) / Math.PI;
    const seen = (pitch_deg: number): Scenario["tub"][number] => ({
      kind: "attitude",
      pitch_deg,
      state: "rest",
      ...tap,
    });
    expect(readTub(plain, seen(pitch)).tub.correction.shift.x).toBeCloseTo(0, 9);
    expect(readTub(plain, seen(pitch + 5)).tub.correction.shift.x).toBeLessThan(0);
  });

  it("taken in other water leaves the weight alone and changes the net", () => {
    const timed = (salinity_g_kg: number): Scenario["tub"][number] => ({
      kind: "timed",
      direction: "rises",
      height_mm: 300,
      runUp_mm: 200,
      times_s: [4, 4.2, 3.9],
      temperature_C: water.temperature_C,
      salinity_g_kg,
    });
    const [fresh, sea] = [readTub(plain, timed(0)), readTub(plain, timed(35))];
    // The same rise in denser water: the bait must weigh more, by about Δρ V.
    const more = sea.tub.correction.mass - fresh.tub.correction.mass;
    const { displaced } = staticsOf(bait, around.density);
    expect(more / displaced).toBeGreaterThan(20);
    expect(more / displaced).toBeLessThan(35);
  });
});
