import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  convert,
  formatIn,
  formatNumber,
  fromSI,
  parseIn,
  parseNumber,
  tickText,
  toSI,
  UNITS,
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
  it.each<[string, UnitName, number]>([
    ["12", "mm", 0.012],
    ["0.5", "in", 0.0127],
    ["1 1/2 in", "mm", 0.0381],
    ['2"', "mm", 0.0508],
    ["4 cm", "in", 0.04],
    ["1.2m", "mm", 1.2],
    ["1/8 oz", "g", 0.003543690390625],
    ["3,5 g", "oz", 0.0035],
    ["68 °F", "C", 20],
    ["68", "F", 20],
    ["12 C", "F", 12],
    ["0,9 m/s", "m_s", 0.9],
    ["40°", "deg", (40 * Math.PI) / 180],
    ["40 deg", "deg", (40 * Math.PI) / 180],
    ["95 %", "percent", 0.95],
    ["1.1 g/mL", "g_mL", 1100],
    ["1100 kg/m3", "g_mL", 1100],
  ])("%s where %s is meant", (text, unit, want) => expect(value(parseIn(text, unit))).toBeCloseTo(want, 12));

  it("says what would fit", () => {
    expect(parseIn("3 kg", "mm")).toEqual({
      ok: false,
      why: "kg does not fit here: use mm, cm, in, m, ft",
    });
    expect(parseIn("three", "g")).toEqual({ ok: false, why: '"three" is not a number' });
    expect(parseIn("", "g")).toEqual({ ok: false, why: "a number is needed" });
  });
});

describe("writing", () => {
  it("puts the unit behind the number, a degree sign close to it", () => {
    expect(formatIn(0.0125, "mm", 1)).toBe("12.5\u202fmm");
    expect(formatIn(0.0127, "in", 3)).toBe("0.500\u202fin");
    expect(formatIn(0.0042, "g", 2)).toBe("4.20\u202fg");
    expect(formatIn(20, "F", 0)).toBe("68\u202f°F");
    expect(formatIn((-5.71 * Math.PI) / 180, "deg", 1)).toBe("\u22125.7°");
    expect(formatIn(0.071, "mm_s", 0)).toBe("71\u202fmm/s");
    expect(formatIn(0.95, "percent", 0)).toBe("95\u202f%");
    expect(formatIn(2, "one", 0)).toBe("2");
    expect(formatIn(0.3, "ft", 2)).toBe("0.98\u202fft");
  });

  it("never writes minus nothing, and never a number that is none", () => {
    expect(formatNumber(-0.004, 2)).toBe("0.00");
    expect(formatNumber(-0, 0)).toBe("0");
    expect(formatNumber(0.004, 2, true)).toBe("0.00");
    expect(formatNumber(0.37, 2, true)).toBe("+0.37");
    expect(() => formatIn(NaN, "g", 2)).toThrow(/cannot show NaN/);
    expect(() => formatNumber(Infinity, 1)).toThrow(/cannot show/);
  });
});

describe("there and back", () => {
  const names = Object.keys(UNITS) as UnitName[];

  it("what is written is read as the same number, in every unit", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...names),
        fc.constantFrom(0, 1, 3),
        fc.double({ min: -1e4, max: 1e4, noNaN: true }),
        (unit, decimals, shown) => {
          const text = formatIn(toSI(shown, unit), unit, decimals);
          const back = fromSI(value(parseIn(text, unit)), unit);
          // half a unit of the last decimal, and round-off
          expect(Math.abs(back - shown)).toBeLessThanOrEqual(0.5 * 10 ** -decimals * (1 + 1e-6) + 1e-9);
        },
      ),
      { seed: 4, numRuns: 500 },
    );
  });

  it("every unit reads its own symbol, whatever is meant without one", () => {
    for (const name of names) {
      const { symbol, quantity } = UNITS[name];
      const other = names.find((one) => UNITS[one].quantity === quantity) ?? name;
      expect(value(parseIn(`3 ${symbol}`, symbol === "" ? name : other)), name).toBeCloseTo(toSI(3, name), 9);
    }
  });
});

describe("the number at a tick", () => {
  it("has its own decimals, a real minus and no tail", () => {
    const ticks = [0, 5, -2.5, 0.1 + 0.2, 0.025, -0, 1e-7, 120].map(tickText);
    expect(ticks).toEqual(["0", "5", "\u22122.5", "0.3", "0.025", "0", "0.0000001", "120"]);
  });
});
