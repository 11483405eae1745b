import { describe, expect, test } from "vitest";
import { cylinderDrag, ellipsoidDrag, endEffect, sectionFactor, skinFriction } from "../../src/model/forces";
import { number, readCsv } from "./read-csv";

const rows = readCsv("body_drag.csv");
const of = (kind: string) => rows.filter((r) => r.kind === kind);

describe("drag of bodies", () => {
  test("skin friction: laminar plate (Blasius) below Re 5e4, half the ITTC 1957 line where that is more", () => {
    for (const row of of("skin_friction")) {
      const re = number(row, "Re");
      const value = number(row, "coefficient");
      const laminar = 1.328 / Math.sqrt(re);
      if (row.case?.startsWith("Blasius")) {
        // printed to six decimals
        expect(Math.abs(laminar - value)).toBeLessThan(6e-7);
        if (re <= 5e4) expect(Math.abs(skinFriction(re) - value), `Re ${re}`).toBeLessThan(6e-7);
        else expect(skinFriction(re)).toBeGreaterThanOrEqual(laminar);
      } else if (re >= 2e5) expect(Math.abs(skinFriction(re) - value / 2), `Re ${re}`).toBeLessThan(3e-7);
    }
  });

  test("ellipsoids along the axis: Hoerner's formula on Blasius friction, to the printed digits", () => {
    const cases = of("ellipsoid_subcritical");
    expect(cases.length).toBeGreaterThan(40);
    for (const row of cases) {
      const friction = 1.328 / Math.sqrt(number(row, "Re"));
      // printed to five decimals
      expect(
        Math.abs(ellipsoidDrag(number(row, "fineness"), friction) - number(row, "coefficient")),
      ).toBeLessThan(6e-6);
    }
  });

  test("circular cylinder across the flow: Cheng's formula to the printed digits", () => {
    for (const row of of("circular_cylinder_2D"))
      expect(
        Math.abs(cylinderDrag(number(row, "Re")) - number(row, "coefficient")),
        `Re ${row.Re}`,
      ).toBeLessThan(6e-5);
  });

  test("circular cylinder: measured points, Re 8 to 1e5", () => {
    // The points themselves scatter by ±15 % above Re 3e4 (pairs at one Re differ by 30 %): rms 9 %, worst 24 %.
    const points = of("circular_cylinder_2D_data");
    expect(points.length).toBeGreaterThan(90);
    const off = points.map((row) => cylinderDrag(number(row, "Re")) / number(row, "coefficient") - 1);
    expect(Math.sqrt(off.reduce((sum, e) => sum + e * e, 0) / off.length)).toBeLessThan(0.09);
    expect(Math.max(...off.map(Math.abs))).toBeLessThan(0.25);
    // and no bias worth speaking of
    expect(Math.abs(off.reduce((sum, e) => sum + e, 0) / off.length)).toBeLessThan(0.03);
  });

  test("sections across the flow: ellipses and the plate at Re 1e4 to 1e5", () => {
    const C = cylinderDrag(1e5);
    const value = (name: string): number => {
      const row = of("section_or_plate").find((r) => r.case === name);
      if (!row) throw new Error(`no row for ${name}`);
      return number(row, "coefficient");
    };
    // Handbook values are round numbers; ±0.07 covers their rounding and the spread between handbooks. The 8 : 1
    // section is thinner than any bait (fit 0.19 against 0.25).
    for (const [name, ratio] of [
      ["ellipse 1:1", 1],
      ["ellipse 2:1 along flow", 1 / 2],
      ["ellipse 4:1 along flow", 1 / 4],
      ["ellipse 8:1 along flow", 1 / 8],
      ["ellipse 1:2 broadside", 2],
      ["flat plate normal 2D", Infinity],
    ] as const)
      expect(Math.abs(C * sectionFactor(ratio) - value(name)), name).toBeLessThan(0.07);
  });

  test("end effect: Jorgensen's curve as digitised, and finite cylinders", () => {
    for (const row of of("crossflow_eta"))
      // read from a printed figure: ±0.005
      expect(Math.abs(endEffect(number(row, "fineness")) - number(row, "coefficient"))).toBeLessThan(0.005);
    for (const row of of("finite_cylinder_crossflow")) {
      if (row.fineness === "inf") continue;
      // a data book's round values at Re 1e4–1e5, C = 1.2: within 0.035
      expect(Math.abs(1.2 * endEffect(number(row, "fineness")) - number(row, "coefficient"))).toBeLessThan(
        0.035,
      );
    }
  });
});
