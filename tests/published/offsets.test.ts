import { describe, expect, it } from "vitest";
import { shapeOf } from "../../src/model/shape";
import type { Knot } from "../../src/model/shape";
import { fitSection } from "../../src/model/shaping";
import { suboffRadius } from "./hulls";
import { number, readCsv } from "./read-csv";

// A published hull's offsets, typed into the drawing's table as a maker types them (a model's size, rounded to a hundredth of a
// millimetre), give its published volume. Tolerance: 1 %, what is asked of a typed table; the rounding alone is some 0.05 %.

const rows = readCsv("bodies.csv");
const published = (body: string, quantity: string): number => {
  const row = rows.find((r) => r["body"] === body && r["quantity"] === quantity);
  if (!row) throw new Error(`no row ${body}, ${quantity}`);
  return number(row, "value");
};
const typed = (metres: number): number => Number((metres * 1e3).toFixed(2)) / 1e3;

describe("offsets typed as a table", () => {
  it("of the DARPA SUBOFF hull, a model 100 mm long (Groves, Huang & Chang 1989, Table 1)", () => {
    const feet = 14.291667;
    const scale = 0.1 / feet;
    const stations = [
      0, 0.05, 0.2, 0.5, 1, 1.5, 2, 2.6, 3.333333, 5, 7, 9, 10.645833, 11.2, 11.8, 12.4, 13, 13.5, 13.979167,
      14.2,
    ];
    const edge = (side: number): Knot[] => [
      ...stations.map((x) => ({ s: typed(x * scale), v: side * typed(suboffRadius(x) * scale) })),
      { s: 0.1, v: 0 },
    ];
    const { volume } = shapeOf({
      length: 0.1,
      top: edge(1),
      bottom: edge(-1),
      halfBreadth: edge(1),
      exponentAbove: [{ s: 0, v: 2 }],
      exponentBelow: [{ s: 0, v: 2 }],
    });
    const model = (published("SUBOFF bare hull", "length overall") / 0.1) ** 3;
    expect(Math.abs((volume * model) / published("SUBOFF bare hull", "volume") - 1)).toBeLessThan(0.01);
  });

  it("of Wigley's hull: half-breadths at waterlines, fitted section by section as caliper readings", () => {
    // y = B/2·(1 − ξ²)(1 − ζ²). Its parabolas are no superellipses, so the fit has a residual, and the volume still holds.
    const [L, B, T] = [0.1, 0.02, 0.0125];
    const share = Array.from({ length: 21 }, (_, i) => (1 - Math.cos((Math.PI * i) / 20)) / 2);
    const waterlines = Array.from({ length: 9 }, (_, i) => (-T * (i + 0.5)) / 9);
    const deck = 1e-6;
    const fits = share.map((t) => {
      const across = (z: number): number => typed(B * 4 * t * (1 - t) * (1 - (z / T) ** 2));
      if (t === 0 || t === 1) return { s: t * L, halfBreadth: 0, below: 2 };
      const readings = waterlines
        .map((height) => ({ height, thickness: across(height) }))
        .filter((one) => one.thickness > 0);
      const fit = fitSection(readings, deck, -T, 0);
      return { s: t * L, halfBreadth: fit.halfBreadth, below: fit.exponentBelow };
    });
    const level = (v: number): Knot[] => [
      { s: 0, v },
      { s: L, v },
    ];
    const { volume } = shapeOf({
      length: L,
      top: level(deck),
      bottom: level(-T),
      widest: level(0),
      halfBreadth: fits.map(({ s, halfBreadth }) => ({ s, v: halfBreadth })),
      exponentAbove: [{ s: 0, v: 2 }],
      exponentBelow: fits.slice(1, -1).map(({ s, below }) => ({ s, v: below })),
    });
    expect(Math.abs(volume / (published("Wigley hull", "block coefficient") * L * B * T) - 1)).toBeLessThan(
      0.01,
    );
  });
});
