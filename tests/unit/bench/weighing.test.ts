import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  displacementOf,
  hungOnThread,
  meniscusMass,
  reconcile,
  repeatsOf,
  woodSample,
} from "../../../src/model/bench";
import { density, surfaceTension } from "../../../src/model/water";
import { g, mm } from "../../lib/si";

/** Density of moist air, kg/m³, at t (°C), p (Pa) and relative humidity h (0–1). OIML R 111-1:2004, E.3-1 (from memory). */
const airDensity = (t: number, p: number, h: number): number =>
  (0.34848 * (p / 100) - 0.009 * (h * 100) * Math.exp(0.061 * t)) / (273.15 + t);

/** Rows of the published table by id: value and tolerance. */
const rows = new Map(
  readFileSync(new URL("../../published/data/stability.csv", import.meta.url), "utf8")
    .trim()
    .split("\n")
    .slice(1)
    .map((line) => {
      const cells = [...line.matchAll(/("([^"]*)"|[^,]*)(,|$)/g)].map((m) => m[2] ?? m[1] ?? "");
      return [cells[0] ?? "", { value: Number(cells[4]), tolerance: Number(cells[6]) }] as const;
    }),
);
const check = (id: string, actual: number): void => {
  const row = rows.get(id);
  if (!row || !Number.isFinite(row.value)) throw new Error(`no value in the row ${id}`);
  expect(Math.abs(actual - row.value), `${id}: ${actual} against ${row.value}`).toBeLessThanOrEqual(
    row.tolerance,
  );
};

describe("published values", () => {
  it("surface tension of water, IAPWS R1-76", () => {
    for (const T of [0, 10, 15, 20, 25, 30]) check(`st${T}`, surfaceTension(T) * 1e3);
    check("st300", surfaceTension(300 - 273.15) * 1e3);
    expect(() => surfaceTension(-3)).toThrow(/temperature/);
  });
  it("meniscus on a wire, capillary length, moist air", () => {
    check("wire", meniscusMass(0.1 * mm, 20) * 1e6);
    check("capl", Math.sqrt(surfaceTension(20) / (998.2071 * 9.80665)) * 1e3);
    check("air4", airDensity(20, 101_325, 0.5));
  });
  it("hung under water with the air's buoyancy (arch4), the water's density that of the table of this project", () => {
    const hung = hungOnThread({
      inAir: [20 * g],
      under: [12.5 * g],
      resolution: 0.01 * g,
      tapTemperature: 20,
      air: true,
    });
    // (W_A ρ_L − W_L ρ_a)/(W_A − W_L): 2.67 times what ρ_L differs by from the row's 998.2071.
    const shift = (20 / 7.5) * (density(0, 20) - 998.2071);
    expect(Math.abs(hung.density.value - shift - (rows.get("arch4")?.value ?? NaN))).toBeLessThan(1e-4);
    expect(hung.volume.value * hung.density.value).toBeCloseTo(hung.mass.value, 12);
  });
});

describe("held under water", () => {
  const reading = { readings: [14.31 * g], resolution: 0.01 * g, tapTemperature: 18 };
  it("gives the volume of the water displaced", () => {
    const { volume, sources } = displacementOf(reading);
    // ρ(18 °C) = 998.595 kg/m³ (Kell 1975 as tabulated, from memory): 14.31 g are 14.3301 mL.
    expect(volume.value * 1e6).toBeCloseTo(14.3301, 3);
    // One digit of the scale, and 1 °C of the tap: 0.19 g/L at 18 °C, 0.013 % of 14.33 mL.
    expect(sources[0]?.deviation).toBeCloseTo(0.01e-3 / Math.sqrt(12) / 998.595, 11);
    expect((sources[1]?.deviation ?? 0) * 1e6).toBeCloseTo(14.33 * 1.9e-4, 3);
  });
  it("takes the pins off: 4 pins of 1 mm, 30 mm deep, are 94.2 µL", () => {
    const pusher = { count: 4, diameter: 1 * mm, depth: 30 * mm };
    const with_ = displacementOf({ ...reading, pusher });
    const without = displacementOf(reading);
    expect((without.volume.value - with_.volume.value) * 1e9).toBeCloseTo(30 * Math.PI, 6);
    expect(with_.reading).toBeCloseTo(14.31 * g - 30 * Math.PI * 1e-9 * with_.tapDensity, 9);
    // Four pins of 1 mm lift ten times what one of 0.1 mm does, each: 93 mg, and it is said.
    expect(with_.meniscus * 1e6).toBeCloseTo(40 * 2.3301 * (surfaceTension(18) / surfaceTension(20)), 2);
    expect(with_.notes.join(" ")).toContain("surface can pull");
  });
  it("combines scatter and resolution of repeats", () => {
    // s of 1, 2, 3 is 1; of the mean 1/√3; with 1/√12 of the digit: √(1/3 + 1/12).
    const r = repeatsOf([1, 2, 3], 1);
    expect(r.mean).toBe(2);
    expect(r.spread).toBe(2);
    expect(r.deviation).toBeCloseTo(Math.sqrt(1 / 3 + 1 / 12), 12);
    expect(repeatsOf([5], 1).scatter).toBeNull();
  });
  it("refuses what gives nothing", () => {
    expect(() => repeatsOf([], 1)).toThrow(/no reading/);
    expect(() => repeatsOf([NaN], 1)).toThrow(/NaN/);
    expect(() =>
      displacementOf({
        ...reading,
        readings: [0.01 * g],
        pusher: { count: 4, diameter: 2 * mm, depth: 50 * mm },
      }),
    ).toThrow(/pins/);
    expect(() =>
      hungOnThread({ inAir: [1 * g], under: [2 * g], resolution: 0.01 * g, tapTemperature: 20 }),
    ).toThrow("weighed 1.000 g in air and 2.000 g under: the second must be less");
  });
});

describe("wood and drawing", () => {
  it("density of a sample: 2.10 g that push up 5.00 g of water at 20 °C are 0.4192 g/mL", () => {
    const sample = woodSample(
      { readings: [2.1 * g], resolution: 0.01 * g },
      { readings: [5 * g], resolution: 0.01 * g, tapTemperature: 20 },
    );
    expect(sample.density.value).toBeCloseTo((2.1 / 5) * density(0, 20), 6);
    const relative = Math.hypot(0.01 / Math.sqrt(12) / 2.1, sample.volume.deviation / sample.volume.value);
    expect(sample.density.deviation / sample.density.value).toBeCloseTo(relative, 9);
  });
  it("carries a thread: its part under water is not the piece's", () => {
    const bare = hungOnThread({ inAir: [20 * g], under: [12 * g], resolution: 0.01 * g, tapTemperature: 20 });
    const hung = hungOnThread({
      inAir: [20 * g],
      under: [12 * g],
      resolution: 0.01 * g,
      tapTemperature: 20,
      thread: { diameter: 0.5 * mm, depth: 40 * mm },
    });
    expect(bare.volume.value - hung.volume.value).toBeCloseTo((Math.PI / 4) * (0.5 * mm) ** 2 * 40 * mm, 12);
  });
  it("warns above 5 % and believes the narrower", () => {
    const drawn = { value: 14e-6, deviation: 0.3e-6 };
    expect(reconcile(drawn, { value: 14.6e-6, deviation: 0.02e-6 })).toMatchObject({
      warning: false,
      believed: "measured",
    });
    expect(reconcile(drawn, { value: 14.8e-6, deviation: 0.02e-6 }).warning).toBe(true);
    expect(reconcile(drawn, { value: 14.1e-6, deviation: 1e-6 }).believed).toBe("drawn");
  });
});
