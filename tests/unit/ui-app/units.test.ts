import { toldOfMotion } from "../../../src/ui/views/parts/told";
import { describe, expect, test } from "vitest";
import { Prefs, readSaved } from "../../../src/ui/state/prefs.svelte";
import { Units } from "../../../src/ui/state/units";

const metric = new Units(new Prefs(null, 1200));
const inchPrefs = new Prefs(null, 1200);
inchPrefs.setUnits({ length: "in", mass: "oz", temperature: "°F" });
const inches = new Units(inchPrefs);
const germanPrefs = new Prefs(null, 1200, "de");
const german = new Units(germanPrefs);
const any = { min: -1000, max: 1000, above: false };

describe("numbers on the screen", () => {
  test("stand in the person's units", () => {
    expect(metric.show(36, "mm", 1)).toBe("36.0\u202fmm");
    // 25.4 mm to the inch, 28.349523125 g to the ounce (NIST SP 811, app. B).
    expect(inches.show(25.4, "mm", 1)).toBe("1.000\u202fin");
    expect(inches.show(28.349523125, "g", 2)).toBe("1.0000\u202foz");
    expect(inches.show(20, "°C", 1)).toBe("68.0\u202f°F");
    expect(metric.show(-6.13, "°", 1, true)).toBe("\u22126.1°");
    expect(metric.show(0.2, "g", 2, true)).toBe("+0.20\u202fg");
    expect(metric.show(-0.001, "g", 2, true)).toBe("0.00\u202fg");
  });

  test("in words of the model stand in the person's units too", () => {
    const said = "The wall is 1.27 mm, 25.4 mm above 3 mL.";
    expect(metric.told(said)).toBe(said);
    expect(inches.told(said)).toBe("The wall is 0.0500\u202fin, 1.000\u202fin above 3 mL.");
    // 0.3048 m to the foot.
    expect(toldOfMotion(inches, "Rising at 50.8 mm/s; 3.048 m deep at 0.3048 m/s, on 5 m² of water.")).toBe(
      "Rising at 2.00\u202fin/s; 10.000\u202fft deep at 1.0000\u202fft/s, on 5 m² of water.",
    );
    // A temperature has another zero: −2 °C are 28.4 °F.
    expect(toldOfMotion(inches, "At -2 °C and 35 g/kg, at 32.2 °C")).toBe(
      "At 28.4\u202f°F and 35 g/kg, at 90.0\u202f°F",
    );
    // As the target's field has it, whose slider goes by 1 mm/s.
    const field = inches.edit(42.9, "mm/s", 1);
    expect(toldOfMotion(inches, "Rising at 42.9 mm/s")).toBe(`Rising at ${field}\u202fin/s`);
    expect(inches.read("7.5 cm/s", "mm/s", { min: 0, max: 3000, above: true })).toEqual({
      ok: true,
      value: 75,
    });
    expect(metric.told("It rests at -10.0° (-3 to 4), a well-known 3-5.")).toBe(
      "It rests at \u221210.0° (\u22123 to 4), a well-known 3-5.",
    );
  });

  test("have a comma where German is read, at once after a switch", () => {
    expect(german.show(-36, "mm", 1)).toBe("\u221236,0\u202fmm");
    expect(german.bare(0.25, "g", 2, true)).toBe("+0,25");
    expect(german.showSI(0.0254, "mm", 1)).toBe("25,4\u202fmm");
    expect([german.tick(0.5), german.tick(-20)]).toEqual(["0,5", "\u221220"]);
    const prefs = new Prefs(null, 1200, "de");
    const both = new Units(prefs);
    prefs.setLanguage("en");
    expect(both.show(1.5, "g", 1)).toBe("1.5\u202fg");
    prefs.setLanguage("de");
    expect(both.show(1.5, "g", 1)).toBe("1,5\u202fg");
    prefs.setUnits({ length: "in", mass: "g", temperature: "°C" });
    const ounces = new Units(
      Object.assign(new Prefs(null, 1200), { units: { length: "mm", mass: "oz", temperature: "°C" } }),
    );
    expect(ounces.told("It can hold up to 1.3 g; 0.41 g/mL stays, 35 g/kg too.")).toBe(
      "It can hold up to 0.046\u202foz; 0.41 g/mL stays, 35 g/kg too.",
    );
    expect(both.told("Die Wand ist 1,27\u202fmm dick.")).toBe("Die Wand ist 0,0500\u202fin dick.");
  });

  test.each([0.5, 36.137, -0.25, 1234.567, 1e-4, 0, 250])(
    "in a German field %f reads back as itself",
    (value) => {
      for (const unit of ["mm", "g/mL", "°", ""] as const)
        expect(
          german.read(german.edit(value, unit, 0.25), unit, { min: -1e9, max: 1e9, above: false }),
        ).toEqual({
          ok: true,
          value,
        });
    },
  );

  test("that are none are refused, not shown", () => {
    expect(() => metric.show(NaN, "g", 2)).toThrow();
  });

  test("in a field keep the decimals they have and no fewer than their step", () => {
    expect(metric.edit(36, "mm", 0.25)).toBe("36.00");
    expect(metric.edit(36.137, "mm", 0.25)).toBe("36.137");
    expect(metric.edit(0.41 + 0.2, "g/mL", 0.005)).toBe("0.610");
  });
});

describe("typing", () => {
  test.each([
    ["12.5", 12.5],
    ["12,5", 12.5],
    [" \u22123 ", -3],
    ["4 cm", 40],
    ["1 in", 25.4],
  ])("%s mm", (text, value) => {
    expect(metric.read(text, "mm", any)).toEqual({ ok: true, value });
  });

  test("reads the person's own unit back exactly", () => {
    expect(inches.read("1.5", "mm", any)).toEqual({ ok: true, value: 38.1 });
    expect(inches.read("1/8", "g", any)).toMatchObject({ ok: true, value: 3.54369039063 });
  });

  test.each(["", "abc", "1.2.3", "12 kg"])("‘%s’ is refused in words", (text) => {
    const read = metric.read(text, "mm", any);
    expect(read.ok).toBe(false);
    expect(!read.ok && read.text.length).toBeGreaterThan(5);
  });

  test("says which bound was passed, in the unit that was typed", () => {
    expect(metric.read("0", "mm", { min: 0, max: 9, above: true })).toMatchObject({
      text: "Has to be more than 0\u202fmm.",
    });
    expect(inches.read("99", "mm", { min: 0, max: 254, above: false })).toMatchObject({
      text: "Has to be at most 10.00\u202fin.",
    });
  });
});

describe("what an earlier visit left", () => {
  test("odd entries fall back one by one", () => {
    expect(
      readSaved('{"theme":"dark","units":{"length":"ell","mass":"oz"},"dismissed":["lead",3],"guide":7}'),
    ).toEqual({
      theme: "dark",
      units: { length: "mm", mass: "oz", temperature: "°C" },
      language: null,
      dismissed: ["lead"],
      guide: null,
    });
    for (const text of [null, "", "no json", "[]", "3", "null"]) expect(readSaved(text).theme).toBe("auto");
  });

  test("a store that refuses loses the preference and nothing else", () => {
    const prefs = new Prefs(
      {
        getItem: () => null,
        setItem: () => {
          throw new Error("full");
        },
      },
      400,
    );
    prefs.setTheme("dark");
    expect(prefs.theme).toBe("dark");
    expect(prefs.isOpen("water")).toBe(false);
  });
});
