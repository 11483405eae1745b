import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { densityHungUnder, scaleReading, trueMass, trueMassOfDensity } from "../../src/model/bait";
import { brent } from "../../src/model/base";
import { Floater, metacentre, submergedLever } from "../../src/model/statics";
import type { Afloat } from "../../src/model/statics";
import { ellipsoid, prismEdges } from "../lib/bodies";
import { make } from "../lib/baits";
import { mm, stuff } from "../lib/si";

/**
 * Worked examples of hydrostatics, each row with its source in data/stability.csv. Where the bait's own body can be the body
 * of the example (round and diamond logs, upright cylinders, a cone, an ellipsoid) the example runs through the whole of
 * it: shape, account, level, waterplane. Boxes have no exact section here (a superellipse of the tenth power is not one):
 * those rows test the metacentre's formula alone.
 */
const rows = new Map(
  readFileSync(new URL("./data/stability.csv", import.meta.url), "utf8")
    .trim()
    .split("\n")
    .slice(1)
    .map((line) => {
      const cells = [...line.matchAll(/("([^"]*)"|[^,]*)(,|$)/g)].map((m) => m[2] ?? m[1] ?? "");
      return [
        cells[0] ?? "",
        { value: Number(cells[4]), tolerance: Number(cells[6]), unit: cells[5] },
      ] as const;
    }),
);
/**
 * Against a row's own tolerance, or against `integrals` where that is finer than what the body's integrals promise (1e-5 of
 * the value, docs/model.md §2): the rows' 1e-9 is that of a closed form.
 */
const check = (id: string, actual: number, integrals = 0): void => {
  const row = rows.get(id);
  if (!row || !Number.isFinite(row.value)) throw new Error(`no value in the row ${id}`);
  const tolerance = Math.max(row.tolerance > 0 ? row.tolerance : 1e-6, integrals * Math.abs(row.value));
  expect(
    Math.abs(actual - row.value),
    `${id}: ${actual} against ${row.value} ${row.unit}`,
  ).toBeLessThanOrEqual(tolerance * (1 + 1e-9) + 1e-12);
};

const WATER = 1000;
const held = (edges: ReturnType<typeof prismEdges>, sg: number, pitch: number): Afloat => {
  const afloat = new Floater(make(edges, { body: stuff("body", sg * WATER, "wood") }), WATER).at(pitch);
  if (!afloat) throw new Error("it sinks");
  return afloat;
};
/** A cylinder standing on the water: the datum line upright. */
const cylinder = (D: number, H: number, sg: number): Afloat =>
  held(prismEdges(H, D / 2, D / 2, 2), sg, Math.PI / 2);

describe("upright cylinders, floated nose-up", () => {
  it("cyl1, cyl2, cyl4: GM", () => {
    check("cyl1", cylinder(3, 2, 0.7).GM);
    check("cyl2", cylinder(4, 4, 0.6).GM);
    check("cyl4", cylinder(0.8, 1, 0.65).GM);
  });
  it("cyl3: BM", () => {
    const { waterplaneIT, volume } = cylinder(1, 2, 0.6);
    check("cyl3", waterplaneIT / volume);
  });
  it("cyl5: greatest height that stands", () => {
    check(
      "cyl5",
      brent((H) => cylinder(1, H, 0.65).GM, 0.5, 1, 1e-9),
    );
  });
  it("draft of a standing cylinder is SG × H", () => {
    expect(cylinder(3, 2, 0.7).draft).toBeCloseTo(1.4, 9);
  });
});

describe("logs", () => {
  it("hcyl: half-immersed round log, BM; its metacentre is at the axis for every draft", () => {
    const half = held(prismEdges(5, 1, 1, 2), 0.5, 0);
    check("hcyl", half.waterplaneIT / half.volume, 1e-6);
    // G is at the axis, so GM is 0. 1e-5 R: what the integrals promise (docs/model.md §2).
    for (const sg of [0.1, 0.3, 0.7, 0.95])
      expect(Math.abs(held(prismEdges(5, 1, 1, 2), sg, 0).GM)).toBeLessThan(1e-5);
  });
  it("sq3: a square log edge-up (a section of exponent 1) is stable from SG 0.28125 to 23/32", () => {
    const half = Math.SQRT1_2; // half diagonal of a square of side 1
    const GM = (sg: number): number => held(prismEdges(10, half, half, 1), sg, 0).GM;
    // 1e-5 of the side in GM is 1e-5 or so in SG: the integrals' own promise.
    expect(brent(GM, 0.2, 0.4, 1e-9)).toBeCloseTo(0.28125, 5);
    expect(brent(GM, 0.6, 0.8, 1e-9)).toBeCloseTo(23 / 32, 5);
    expect(GM(0.5)).toBeGreaterThan(0);
  });
  it("sqg, sq1, sq2: a square log flat, by the metacentre's formula", () => {
    const GM = (s: number): number => metacentre({ I_T: 1 / 12, V: s, Z_B: s / 2, Z_G: 0.5 });
    for (const s of ["0.2", "0.25", "0.5", "0.85"]) check(`sqg${s}`, GM(Number(s)));
    check("sq1", brent(GM, 0.1, 0.4, 1e-13));
    check("sq2", brent(GM, 0.6, 0.9, 1e-13));
  });
});

describe("pontoons, by the metacentre's formula", () => {
  const box = (L: number, B: number, draft: number, KG: number): number =>
    metacentre({ I_T: (L * B ** 3) / 12, V: L * B * draft, Z_B: draft / 2, Z_G: KG });
  it("pon1, pon2", () => {
    check("pon1", box(20, 9, 200e3 / 1025 / (20 * 9), 5.6));
    check("pon2", box(5, 3, 0.8, 0.6));
  });
  it("pon3: over the displaced volume, not the total (the published answer is wrong)", () => {
    check("pon3", box(4, 2, 0.6, 0.5));
  });
});

describe("other bodies", () => {
  it("ell: half-immersed ellipsoid, BM across and along, B 3c/8 under the surface", () => {
    const bait = make(ellipsoid(50 * mm, 10 * mm, 12 * mm), { body: stuff("b", 500, "wood") });
    const water = new Floater(bait, WATER);
    const afloat = water.at(0);
    if (!afloat) throw new Error("it sinks");
    check("ell", (afloat.waterplaneIT / afloat.volume) * 1e3, 1e-6);
    expect(afloat.B.z * 1e3).toBeCloseTo(-4.5, 5);
    // Along: the righting lever falls by GM_L = 78.125 − 4.5 mm a radian.
    const h = 1e-4;
    const slope = ((water.at(h)?.lever ?? NaN) - (water.at(-h)?.lever ?? NaN)) / (2 * h);
    expect(-slope * 1e3).toBeCloseTo(78.125 - 4.5, 3);
  });
  it("cone: apex down, semi-angle 30°, stable above SG cos⁶α", () => {
    const H = 2;
    const slope = Math.tan(Math.PI / 6);
    const r = (phi: number): number => ((H * (1 - Math.cos(phi))) / 2) * slope;
    const cone = { ...prismEdges(H, 1, 1, 2), top: r, bottom: (p: number) => -r(p), halfBreadth: r };
    const critical = brent((sg) => held(cone, sg, -Math.PI / 2).GM, 0.3, 0.6, 1e-9);
    // The row's 1e-9 is that of the closed form; the integrals promise 1e-5.
    expect(Math.abs(critical - (rows.get("cone")?.value ?? NaN))).toBeLessThan(1e-5);
  });
  it("sub2: submerged righting moment W·BG·sin", () => {
    check("sub2", 299 * submergedLever(0.0196, (10 * Math.PI) / 180));
  });
});

describe("weighing in air and under water", () => {
  it("arch1: 100 lbf in air, 60 lbf in water of 62.4 lbf/ft³ is 156 lbf/ft³", () => {
    check("arch1", densityHungUnder(100, 60, 62.4, 0));
  });
  it("arch3: ISO 1183-1 method A, m·ρ_L/(m − m_L)", () => {
    expect(densityHungUnder(20, 12.5, 998.2071, 0)).toBeCloseTo((20 * 998.2071) / 7.5, 9);
  });
  it("arch4: with air buoyancy", () => {
    check("arch4", densityHungUnder(20, 12.5, 998.2071, 1.2));
    expect(densityHungUnder(20, 12.5, 998.2071, 0)).toBeCloseTo(2661.8856, 4);
  });
  it("air1, air2, air3: true mass", () => {
    check("air1", trueMassOfDensity(2000, 2700));
    check("air2", trueMassOfDensity(1, 160));
    check("air3", trueMassOfDensity(1, 350));
  });
  it("the form by volume, m = W + ρ_air (V − W/8.0), is the same", () => {
    const m = trueMassOfDensity(2e-3, 2700);
    expect(trueMass(2e-3, m / 2700)).toBeCloseTo(m, 15);
    expect(scaleReading(m, m / 2700)).toBeCloseTo(2e-3, 15);
  });
});
