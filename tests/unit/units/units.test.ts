import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  convert,
  decimalsOf,
  format,
  formatIn,
  formatNumber,
  fromSI,
  parse,
  parseNumber,
  toSI,
  UNITS,
  unitOf,
  type Quantity,
  type System,
  type UnitName,
} from "../../../src/units";

const value = (result: ReturnType<typeof parseNumber>): number => {
  if (!result.ok) throw new Error(result.why);
  return result.value;
};

describe("factors", () => {
  it("are the exact ones of NIST SP 811", () => {
    expect(convert(1, "in", "mm")).toBeCloseTo(25.4, 13);
    expect(convert(1, "ft", "m")).toBeCloseTo(0.3048, 15);
    expect(convert(1, "oz", "g")).toBeCloseTo(28.349523125, 12);
    expect(convert(1, "lb", "kg")).toBeCloseTo(0.45359237, 15);
    expect(convert(1, "m_s", "ft_s")).toBeCloseTo(3.280839895, 9);
    expect(convert(1, "ozf", "N")).toBeCloseTo(0.278013851, 9);
    expect(convert(1, "in3", "mL")).toBeCloseTo(16.387064, 12);
  });

  it("know that 32 °F is 0 °C, 68 °F 20 °C and −40 the same", () => {
    for (const [f, c] of [
      [32, 0],
      [68, 20],
      [-40, -40],
      [212, 100],
    ] as const) {
      expect(convert(f, "F", "C")).toBeCloseTo(c, 12);
      expect(convert(c, "C", "F")).toBeCloseTo(f, 12);
    }
  });

  it("refuse to turn one thing into another", () => {
    expect(() => convert(1, "mm", "g")).toThrow(/no conversion/);
    expect(convert(1, "mm_s", "m_s")).toBeCloseTo(1e-3, 15);
    expect(convert(1500, "mm", "m")).toBeCloseTo(1.5, 15);
  });
});

describe("reading numbers", () => {
  it.each([
    ["3.5", 3.5],
    ["3,5", 3.5],
    [" -4 ", -4],
    ["−4,25", -4.25],
    ["+2", 2],
    [".5", 0.5],
    ["5.", 5],
    ["1e-3", 1e-3],
    ["1,234", 1.234],
    ["1,234.5", 1234.5],
    ["1.234,5", 1234.5],
    ["1 234,5", 1234.5],
    ["12 345 678", 12345678],
    ["1/8", 0.125],
    ["1 1/2", 1.5],
    ["-2 3/4", -2.75],
    ["1⁄4", 0.25],
  ])("%s", (text, want) => expect(value(parseNumber(text))).toBe(want));

  it.each([
    "",
    "  ",
    "abc",
    "1..2",
    "1,2,3",
    "--3",
    "1/0",
    "1,23.4",
    "NaN",
    "Infinity",
    "1e999",
    "0x10",
    "3 4",
  ])("refuses '%s'", (text) => expect(parseNumber(text).ok).toBe(false));
});

describe("reading quantities", () => {
  it.each<[string, Quantity, System, number]>([
    ["12", "length", "metric", 0.012],
    ["0.5", "length", "imperial", 0.0127],
    ["1 1/2 in", "length", "metric", 0.0381],
    ['2"', "length", "metric", 0.0508],
    ["4 cm", "length", "imperial", 0.04],
    ["1.2m", "length", "metric", 1.2],
    ["1/8 oz", "mass", "metric", 0.003543690390625],
    ["3,5 g", "mass", "imperial", 0.0035],
    ["68 °F", "temperature", "metric", 20],
    ["68", "temperature", "imperial", 20],
    ["12 C", "temperature", "imperial", 12],
    ["0,9 m/s", "speed", "metric", 0.9],
    ["40°", "angle", "metric", (40 * Math.PI) / 180],
    ["40 deg", "angle", "imperial", (40 * Math.PI) / 180],
    ["95 %", "share", "metric", 0.95],
    ["1.1 g/mL", "density", "metric", 1100],
    ["1100 kg/m3", "density", "metric", 1100],
  ])("%s as %s, %s", (text, quantity, system, want) =>
    expect(value(parse(text, quantity, system))).toBeCloseTo(want, 12),
  );

  it("says what would fit", () => {
    expect(parse("3 kg", "length", "metric")).toEqual({
      ok: false,
      why: "kg does not fit here: use mm, cm, in, m, ft",
    });
    expect(parse("three", "mass", "metric")).toEqual({ ok: false, why: '"three" is not a number' });
    expect(parse("", "mass", "metric")).toEqual({ ok: false, why: "a number is needed" });
  });
});

describe("writing", () => {
  it("uses the system's unit and a sensible count of decimals", () => {
    expect(format(0.0125, "length", "metric")).toBe("12.5\u202fmm");
    expect(format(0.0127, "length", "imperial")).toBe("0.500\u202fin");
    expect(format(0.0042, "mass", "metric")).toBe("4.20\u202fg");
    expect(format(20, "temperature", "imperial", 0)).toBe("68\u202f°F");
    expect(format((-5.71 * Math.PI) / 180, "angle", "metric")).toBe("\u22125.7°");
    expect(format(0.071, "rate", "metric")).toBe("71\u202fmm/s");
    expect(format(0.95, "share", "metric")).toBe("95\u202f%");
    expect(format(2, "number", "metric", 0)).toBe("2");
  });

  it("signs, bares and dashes", () => {
    expect(format(0.00037, "mass", "metric", 2, { sign: true })).toBe("+0.37\u202fg");
    expect(format(0.00037, "mass", "metric", 2, { bare: true })).toBe("0.37");
    expect(format(null, "mass", "metric")).toBe("–");
    expect(formatIn(0.3, "ft", 2)).toBe("0.98\u202fft");
  });

  it("never writes minus nothing, and never a number that is none", () => {
    expect(formatNumber(-0.004, 2)).toBe("0.00");
    expect(formatNumber(-0, 0)).toBe("0");
    expect(formatNumber(0.004, 2, true)).toBe("0.00");
    expect(() => format(NaN, "mass", "metric")).toThrow(/cannot show NaN/);
    expect(() => formatNumber(Infinity, 1)).toThrow(/cannot show/);
  });
});

describe("there and back", () => {
  const quantities: Quantity[] = [
    ...(["length", "distance", "area", "volume", "mass", "density", "speed", "rate"] as const),
    ...(["force", "angle", "temperature", "salinity", "time", "share", "number"] as const),
  ];

  it("what is written is read as the same number, in both systems", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...quantities),
        fc.constantFrom<System>("metric", "imperial"),
        fc.double({ min: -1e4, max: 1e4, noNaN: true }),
        (quantity, system, shown) => {
          const unit = unitOf(quantity, system);
          const decimals = decimalsOf(quantity, system);
          const text = format(toSI(shown, unit), quantity, system);
          const back = fromSI(value(parse(text, quantity, system)), unit);
          // half a unit of the last decimal, and round-off
          expect(Math.abs(back - shown)).toBeLessThanOrEqual(0.5 * 10 ** -decimals * (1 + 1e-6) + 1e-9);
        },
      ),
      { seed: 4, numRuns: 500 },
    );
  });

  it("every unit reads its own symbol", () => {
    for (const name of Object.keys(UNITS) as UnitName[]) {
      const { symbol, quantity } = UNITS[name];
      expect(value(parse(`3 ${symbol}`, quantity, "metric")), name).toBeCloseTo(toSI(3, name), 9);
    }
  });
});
