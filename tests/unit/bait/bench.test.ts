import { describe, expect, it } from "vitest";
import { AIR_DENSITY, MID } from "../../../src/model/bait";
import type { Bait, BenchReading } from "../../../src/model/bait";
import { density } from "../../../src/model/water";
import { at, g, ml, mm, stuff } from "../../lib/si";
import { ELLIPSOID, make, STEEL, TIN } from "../../lib/baits";

const TAP = 18;
const rho = density(0, TAP);
const displacement = (reading: number, more: Partial<BenchReading> = {}): BenchReading => ({
  kind: "displacement",
  reading,
  resolution: 0.01 * g,
  tapTemperature: TAP,
  with: ["body"],
  air: false,
  ...more,
});
const weighing = (reading: number, more: Partial<BenchReading> = {}): BenchReading => ({
  kind: "weighing",
  reading,
  resolution: 0.01 * g,
  tapTemperature: null,
  with: ["body"],
  air: false,
  ...more,
});
const parts = {
  coats: [{ name: "clear", thickness: 0.15 * mm, mass: null, stuff: stuff("epoxy", 1100, "other") }],
  ballast: [
    {
      name: "belly",
      at: at(40, -6),
      mass: 3 * g,
      stuff: TIN,
      where: "inside" as const,
      hole: 0.6 * ml,
      filler: 0,
    },
    {
      name: "nose",
      at: at(3, -6),
      mass: 1 * g,
      stuff: TIN,
      where: "outside" as const,
      hole: null,
      filler: 0,
    },
  ],
  hangers: [
    { name: "belly", at: at(45, -13), ring: null, hook: { mass: 0.5 * g, density: 7820, size: null } },
    {
      name: "tail",
      at: at(100, 0),
      ring: { mass: 0.1 * g, density: 8000 },
      hook: { mass: 0.5 * g, density: 7820, size: null },
    },
  ],
};
const bench = (...readings: BenchReading[]): Bait => make(ELLIPSOID, { ...parts, bench: readings });
const V = ELLIPSOID.volume;
const coat = ELLIPSOID.skinArea * 0.15 * mm;

describe("bench readings (docs/model.md §3)", () => {
  it("volume factor: reading over ρ(tap), less what else was held under", () => {
    const bait = bench(displacement(25 * g, { with: ["body", "coats"] }));
    expect(bait.volumeFactor).toBeCloseTo((25e-3 / rho - coat) / V, 12);
    expect(bait.shape.volume).toBeCloseTo(25e-3 / rho - coat, 12);
    // The side view, the skin and the coats stay as drawn.
    expect(bait.shape.maxHeight).toBeCloseTo(ELLIPSOID.maxHeight, 14);
    expect(bait.items.find((i) => i.group === "coats")?.displaced).toBeCloseTo(coat, 16);
    expect(bait.drawn.skinArea).toBe(ELLIPSOID.skinArea);
  });

  it("means are weighted by 1/resolution²", () => {
    const bait = bench(
      displacement(25 * g),
      displacement(26 * g, { resolution: 0.02 * g }),
      weighing(10 * g),
      weighing(10.4 * g, { resolution: 0.05 * g }),
    );
    const volume = (25 * 4 + 26 * 1) / 5 / 1e3;
    expect(bait.shape.volume).toBeCloseTo(volume / rho, 12);
    const mass = (10 * 25 + 10.4 * 1) / 26 / 1e3;
    expect(bait.bodyDensity).toBeCloseTo(mass / (volume / rho - 0.6 * ml), 6);
    expect(bait.bench.map((r) => r.residual / g)).toEqual([
      expect.closeTo(25 - 25.2, 9),
      expect.closeTo(26 - 25.2, 9),
      expect.closeTo(10 - mass * 1e3, 9),
      expect.closeTo(10.4 - mass * 1e3, 9),
    ]);
  });

  it("a weighing gives the density of what is left after removals, even with the ballast off the scale", () => {
    const bait = bench(weighing(9 * g));
    expect(bait.volumeFactor).toBe(1);
    expect(bait.bodyDensity).toBeCloseTo((9 * g) / (V - 0.6 * ml), 6);
    expect(bait.items[0]?.mass).toBeCloseTo(9 * g, 14);
  });

  it("everything on the scale: the total mass and volume are what was read", () => {
    const all = [
      "body",
      "chambers",
      "balls",
      "ballast",
      "wires",
      "bib",
      "hangers",
      "fittings",
      "coats",
    ] as const;
    const bait = bench(displacement(26 * g, { with: all }), weighing(15.5 * g, { with: all }));
    const { mass, displaced } = bait.rigid(MID);
    expect(mass).toBeCloseTo(15.5 * g, 14);
    expect(displaced).toBeCloseTo((26 * g) / rho, 14);
    for (const r of bait.bench) expect(Math.abs(r.residual)).toBeLessThan(1e-15);
  });

  it("air buoyancy as m = W + ρ_air (V − W/8.0), only where asked for", () => {
    const bait = bench(weighing(9 * g, { air: true }));
    expect(bait.items[0]?.mass).toBeCloseTo(9 * g + AIR_DENSITY * (V - (9 * g) / 8000), 14);
    // About 0.02 g on such a bait (docs/model.md §3).
    const correction = (bait.items[0]?.mass ?? 0) / g - 9;
    expect(correction).toBeGreaterThan(0.02);
    expect(correction).toBeLessThan(0.035);
    expect(Math.abs(bait.bench[0]?.residual ?? 1)).toBeLessThan(1e-15);
    const held = bench(displacement(25 * g, { air: true }));
    const v = held.shape.volume;
    expect(rho * v).toBeCloseTo(25 * g + AIR_DENSITY * (v - (25 * g) / 8000), 14);
  });

  it("readings without the body are shown by their residual alone, each item by itself", () => {
    const bait = bench(
      weighing(0.55 * g, { with: ["tail"] }),
      displacement(0.5 * g, { with: ["belly ballast"] }),
    );
    expect(bait.volumeFactor).toBe(1);
    expect(bait.bodyDensity).toBe(400);
    expect(bait.bench[0]).toMatchObject({ used: false, model: expect.closeTo(0.6 * g, 12) as number });
    expect(bait.bench[0]?.residual).toBeCloseTo(-0.05 * g, 12);
    expect(bait.bench[1]?.model).toBeCloseTo(((3 * g) / 7310) * rho, 12);
  });

  it("names groups, rows and list entries, each counted once", () => {
    const once = bench(weighing(9 * g, { with: ["body", "hangers"] })).bodyDensity;
    const twice = bench(
      weighing(9 * g, { with: ["body", "hangers", "tail", "belly hook", "hangers"] }),
    ).bodyDensity;
    expect(twice).toBe(once);
    expect(once).toBeCloseTo((9 * g - 1.1 * g) / (V - 0.6 * ml), 6);
  });

  it("refuses a name that is nothing, or two things, with what it may be", () => {
    expect(() => bench(weighing(9 * g, { with: ["body", "tial"] }))).toThrow(
      /bench\[0\]\.with\[1\].*"tial" names nothing.*"tail hook"/,
    );
    expect(() => bench(weighing(9 * g, { with: ["body", "belly"] }))).toThrow(
      /"belly" names 2 different items.*"belly ballast".*"belly hook"/,
    );
  });

  it("warns of a volume factor outside 0.9–1.1, and only then", () => {
    const warned = (factor: number): boolean =>
      bench(displacement(factor * V * rho)).warnings.some((w) => w.path === "bench");
    expect([0.89, 0.91, 1.09, 1.11].map(warned)).toEqual([true, false, false, true]);
  });

  it("refuses readings that leave no body", () => {
    expect(() => bench(displacement(0.1 * g, { with: ["body", "coats"] }))).toThrow(/bench\[0\]\.reading_g/);
    expect(() => bench(weighing(0.5 * g, { with: ["body", "hangers"] }))).toThrow(/bench\[0\]\.reading_g/);
    expect(() => bench(displacement(25 * g, { tapTemperature: null }))).toThrow(/tap_C/);
    expect(() => bench(weighing(9 * g, { resolution: 0 }))).toThrow(/resolution_g/);
    expect(() => bench(weighing(9 * g, { with: ["fittings"] }))).toThrow(/nothing was on the scale/);
  });

  it("the tongue of the bib is as wide as the reconciled body", () => {
    const bib = {
      root: at(5, -2),
      angle: 0.7,
      length: 18 * mm,
      width: 30 * mm,
      slot: 6 * mm,
      thickness: 1.5 * mm,
      outline: "square" as const,
      stuff: STEEL,
    };
    const drawn = make(ELLIPSOID, { bib });
    const wider = make(ELLIPSOID, { bib, bench: [displacement(1.05 * V * rho)] });
    const tongue = (b: Bait): number => b.items.find((i) => i.group === "bib")?.removed ?? 0;
    expect(tongue(wider) / tongue(drawn)).toBeCloseTo(1.05, 9);
  });
});
