import { describe, expect, it } from "vitest";
import { density, densityIpts68, viscosity, water } from "../../src/model/water";
import { number, readCsv } from "./read-csv";

// data/water_density.csv, data/water_viscosity.csv: the UNESCO 44 check values, and other standards for the size of the
// difference between them.

const densities = readCsv("water_density.csv").filter((r) => r["salinity_unit"] !== "");
const viscosities = readCsv("water_viscosity.csv");
type Row = Readonly<Record<string, string>> & { readonly name: string };
const name = (r: Readonly<Record<string, string>>): Row => ({
  ...r,
  name: `${r["model"]}, S ${r["salinity"]}, ${r["temperature_C"]} °C`,
});

describe("EOS-80, one atmosphere", () => {
  const checks = densities
    .filter((r) => r["model"] === "EOS-80 one atmosphere" && r["temperature_scale"] === "IPTS-68")
    .map(name);

  it("has its eight check values in the table", () => expect(checks).toHaveLength(8));

  it.each(checks)("$name", (row) => {
    const got = densityIpts68(number(row, "salinity"), number(row, "temperature_C"));
    const want = number(row, "density_kg_m3");
    // Four are printed with 6 to 8 decimals (within 1e-6 kg/m³), four with 5.
    const printed = (row["density_kg_m3"] ?? "").split(".")[1]?.length ?? 0;
    expect(Math.abs(got - want)).toBeLessThan(printed >= 6 ? 1e-6 : 5.1e-6);
  });

  const nineties = densities.filter(
    (r) => r["temperature_scale"] === "ITS-90" && r["model"]?.startsWith("EOS-80"),
  );

  it.each(nineties.map(name))("$name, ITS-90", (row) => {
    const got = density(number(row, "salinity"), number(row, "temperature_C"));
    expect(Math.abs(got - number(row, "density_kg_m3"))).toBeLessThan(1.01e-5); // printed digits
  });
});

describe("against newer standards", () => {
  it("fresh water agrees with IAPWS-95 within 0.004 kg/m³", () => {
    const rows = densities.filter((r) => r["model"] === "IAPWS-95 pure water");
    expect(rows.length).toBeGreaterThanOrEqual(7);
    // EOS-80's own difference from IAPWS-95 is up to 0.0019 kg/m³ over 0–30 °C (the table); air-free against aerated water 0.003.
    for (const r of rows)
      expect(Math.abs(density(0, number(r, "temperature_C")) - number(r, "density_kg_m3"))).toBeLessThan(
        0.004,
      );
  });

  it("sea water agrees with TEOS-10 within 0.01 kg/m³", () => {
    // Reference sea water: absolute salinity 35.16504 g/kg is practical salinity 35 (TEOS-10 manual, IOC 56)
    const rows = densities.filter((r) => r["model"] === "TEOS-10 full Gibbs" && r["salinity"] === "35.16504");
    expect(rows.length).toBeGreaterThanOrEqual(7);
    for (const r of rows)
      expect(Math.abs(density(35, number(r, "temperature_C")) - number(r, "density_kg_m3"))).toBeLessThan(
        0.01,
      );
  });
});

describe("viscosity, Sharqawy, Lienhard & Zubair 2010", () => {
  const rows = viscosities.filter((r) => r["model"] === "Sharqawy 2010");

  it.each(rows.map((r): Row => ({ ...r, name: `${r["water"]}, ${r["temperature_C"]} °C` })))(
    "$name",
    (row) => {
      const S = parseFloat(row["salinity_or_condition"] ?? "");
      const got = viscosity(S, number(row, "temperature_C"));
      expect(Math.abs(got / number(row, "mu_Pa_s") - 1)).toBeLessThan(1e-6); // seven printed digits
    },
  );

  it("agrees with IAPWS 2008 within 0.05 % in fresh water", () => {
    const fresh = viscosities.filter((r) => r["model"]?.startsWith("IAPWS 2008 at"));
    expect(fresh.length).toBeGreaterThanOrEqual(7);
    for (const r of fresh)
      expect(Math.abs(viscosity(0, number(r, "temperature_C")) / number(r, "mu_Pa_s") - 1)).toBeLessThan(
        5e-4,
      );
  });

  it("agrees with the ITTC values of 15 °C within 0.05 %", () => {
    for (const r of viscosities.filter((v) => /^ITTC (sea|fresh)$/.test(v["model"] ?? ""))) {
      const S = parseFloat(r["salinity_or_condition"] ?? "");
      expect(Math.abs(viscosity(S, 15) / number(r, "mu_Pa_s") - 1)).toBeLessThan(5e-4);
    }
  });

  it("agrees with Millero 1974 within the stated 1.5 %", () => {
    const row = viscosities.find((r) => r["model"] === "Millero 1974");
    expect(row).toBeDefined();
    if (row) expect(Math.abs(viscosity(40, 25) / number(row, "mu_Pa_s") - 1)).toBeLessThan(0.015);
  });
});

describe("the range", () => {
  it("is closed, and what lies outside is refused with the value and the range", () => {
    for (const [S, T] of [
      [0, -2],
      [42, 40],
      [0, 40],
      [42, -2],
    ] as const)
      expect(Number.isFinite(water(S, T).density + water(S, T).viscosity)).toBe(true);
    expect(() => density(-0.1, 10)).toThrow("salinity -0.1 g/kg: give a value from 0 to 42");
    expect(() => density(42.1, 10)).toThrow(/0 to 42/);
    expect(() => viscosity(0, 40.1)).toThrow("water temperature 40.1 °C: give a value from -2 to 40");
    expect(() => water(0, NaN)).toThrow(RangeError);
  });

  it("turns ITS-90 into IPTS-68", () => {
    expect(density(0, 20)).toBe(densityIpts68(0, 20.0048));
  });
});
