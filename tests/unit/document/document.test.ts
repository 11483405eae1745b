import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  FORMAT,
  VERSION,
  carryForward,
  compile,
  fieldAt,
  parseScenario,
  pathSteps,
  pathText,
  scenarioJsonSchema,
  serialize,
} from "../../../src/document";
import type { Scenario, Step } from "../../../src/document";
import { nearest } from "../../../src/document/problem";
import { sample, sampleScenario } from "../../lib/sample";

describe("a material's own spread", () => {
  const bodyOf = (body: Scenario["bait"]["body"]) => {
    const scenario = sampleScenario();
    return compile({ ...scenario, bench: [], bait: { ...scenario.bait, body } }).spec.body;
  };

  it("comes from the table with the density, and goes where the file gives the density", () => {
    // Printed 8 to 14 lb/ft³, 128 to 224 kg/m³: a uniform spread is (224 − 128)/√12/160 = 0.173.
    expect(bodyOf({ material: "balsa" }).spread).toBeCloseTo((224 - 128) / Math.sqrt(12) / 160, 2);
    expect(bodyOf({ material: "balsa", density_g_ml: 0.15 }).spread).toBeUndefined();
    expect(bodyOf({ material: "PET" }).spread).toBeCloseTo((1400 - 1270) / Math.sqrt(12) / 1380, 12);
    expect(bodyOf({ material: "acrylic" }).spread).toBeUndefined();
  });
});

describe("the schema's fields", () => {
  it("gives a form label, unit, range and slider", () => {
    expect(fieldAt("bait.ballast[0].mass_g")).toEqual({
      kind: "number",
      label: "Mass",
      unit: "g",
      min: 0,
      max: 2000,
      above: false,
      whole: false,
      slider: { min: 0, max: 20, step: 0.05 },
      help: "",
    });
    expect(fieldAt("bait.bib.angle_deg")).toMatchObject({ unit: "°", min: 0, max: 180, label: "Bib angle" });
    expect(fieldAt("bait.chambers[0].balls.count")).toMatchObject({ whole: true, min: 1 });
    expect(fieldAt("water.depth_m")).toMatchObject({ above: true, min: 0 });
    expect(fieldAt("bait.top[2][1]")).toMatchObject({ label: "Height", unit: "mm" });
    expect(fieldAt("bait.bib.outline")).toMatchObject({ kind: "choice", options: ["square", "round"] });
    expect(fieldAt("bench[0].air")).toMatchObject({ kind: "flag" });
    expect(fieldAt("bait.nothing")).toBeNull();
  });

  it("knows the moves of a cadence apart", () => {
    const scenario = sampleScenario();
    expect(fieldAt("cadence[1].for_s", scenario)).toMatchObject({ label: "Reel for" });
    expect(fieldAt("cadence[4].for_s", scenario)).toMatchObject({ label: "Pause for" });
    expect(fieldAt("cadence[4].speed_m_s", scenario)).toBeNull();
  });

  it("gives every number a label and a slider within what is allowed", () => {
    const seen: string[] = [];
    const walk = (value: unknown, path: (string | number)[]) => {
      if (typeof value === "number" && path[0] !== "expect" && path[0] !== "version") {
        const text = pathText(path);
        const field = fieldAt(text, sampleScenario());
        if (field?.kind !== "number") throw new Error(`${text} has no number field`);
        expect(field.label, text).not.toBe("");
        expect(field.slider.min, text).toBeGreaterThanOrEqual(field.min);
        expect(field.slider.max, text).toBeLessThanOrEqual(field.max);
        expect(field.slider.step, text).toBeGreaterThan(0);
        seen.push(text);
      } else if (typeof value === "object" && value !== null) {
        for (const [key, one] of Object.entries(value))
          walk(one, [...path, Array.isArray(value) ? Number(key) : key]);
      }
    };
    walk(sampleScenario(), []);
    expect(seen.length).toBeGreaterThan(80);
  });

  it("publishes a JSON Schema with the same keys, units and bounds", () => {
    const schema = scenarioJsonSchema() as {
      properties: Record<string, Record<string, unknown>>;
      required: string[];
    };
    expect(schema).toMatchObject({
      $schema: "https://json-schema.org/draft/2020-12/schema",
      type: "object",
      additionalProperties: false,
      properties: {
        format: { const: FORMAT },
        version: { const: VERSION },
        water: { properties: { salinity_g_kg: { minimum: 0, maximum: 42, unit: "g/kg" } } },
      },
    });
    expect(schema.required).toEqual(["format", "version", "name", "bait", "water", "tackle"]);
  });

  it("is the one that the app publishes (write it anew with npm run -s answer -- --schema)", () => {
    const published = readFileSync("src/ui/public/scenario.schema.json", "utf8");
    expect(published).toBe(`${JSON.stringify(scenarioJsonSchema(), null, 2)}\n`);
  });

  it("turns paths into steps and back", () => {
    for (const path of ["", "bait", "bait.ballast[0].at_mm[1]", "cadence[12]"])
      expect(pathText(pathSteps(path))).toBe(path);
    expect(pathText(["bait", "odd key"])).toBe('bait["odd key"]');
  });
});

describe("the nearest words", () => {
  it.each([
    ["lenght_mm", ["length_mm", "tie_mm"], ["length_mm"]],
    ["length", ["length_mm", "bottom"], ["length_mm"]],
    ["balast", ["ballast", "bait", "coats"], ["ballast"]],
    ["zzzz", ["ballast", "bait"], []],
  ])("of %s in %j is %j", (word, known, expected) => {
    expect(nearest(word, known, 1)).toEqual(expected);
  });
});

describe("the text of a file", () => {
  it("reads back to an equal scenario, and writes the same text again", () => {
    const scenario = sampleScenario();
    const text = serialize(scenario);
    const again = parseScenario(text);
    expect(again.ok && again.scenario).toEqual(scenario);
    expect(again.ok && serialize(again.scenario)).toBe(text);
    expect(text.endsWith("}\n")).toBe(true);
    for (const line of text.split("\n")) expect(line.length, line).toBeLessThanOrEqual(130);
  });

  it("has the keys in the order of the format, however they came", () => {
    const reversed = (value: unknown): unknown =>
      Array.isArray(value)
        ? value.map(reversed)
        : typeof value === "object" && value !== null
          ? Object.fromEntries(
              Object.entries(value)
                .reverse()
                .map(([key, one]) => [key, reversed(one)]),
            )
          : value;
    const read = parseScenario(JSON.stringify(reversed(sample())));
    expect(read.ok && serialize(read.scenario)).toBe(serialize(sampleScenario()));
  });

  it("leaves empty lists out", () => {
    const text = serialize(sampleScenario((draft) => void (draft.bench = [])));
    expect(text).not.toContain('"bench"');
  });

  it("keeps every number exactly (property)", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 2000, noNaN: true }),
        fc.double({ min: -2, max: 40, noNaN: true }),
        (grams, celsius) => {
          const scenario = sampleScenario();
          const changed = {
            ...scenario,
            bench: [],
            bait: {
              ...scenario.bait,
              ballast: [],
              hangers: [{ name: "h", at_mm: [34, -10] as const, hook: { mass_g: grams } }],
            },
            water: { ...scenario.water, temperature_C: celsius },
          };
          const read = parseScenario(serialize(changed));
          // −0 is written as 0, which is the same number.
          expect(read.ok && read.scenario.bait.hangers[0]?.hook?.mass_g).toEqual(grams === 0 ? 0 : grams);
          expect(read.ok && read.scenario.water.temperature_C).toEqual(celsius === 0 ? 0 : celsius);
        },
      ),
      { seed: 11, numRuns: 100 },
    );
  });

  it("refuses to write what could not be read", () => {
    const scenario = sampleScenario();
    expect(() => serialize({ ...scenario, name: "" })).toThrow();
  });
});

describe("older versions", () => {
  // A history that never was, to try the mechanism: 1 had feet of water, 2 renamed a key, 3 is current.
  const steps: Step[] = [
    {
      from: 1,
      to: 2,
      note: "depth in metres",
      up: ({ depth_ft, ...rest }) => ({ ...rest, depth: Number(depth_ft) * 0.3048 }),
    },
    { from: 2, to: 3, note: "depth_m", up: ({ depth, ...rest }) => ({ ...rest, depth_m: depth }) },
  ];

  it("are carried forward step by step, and say so", () => {
    const old = { format: FORMAT, version: 1, depth_ft: 10 };
    const carried = carryForward(old, 3, steps);
    expect(carried).toEqual({
      ok: true,
      document: { format: FORMAT, version: 3, depth_m: 3.048 },
      notes: ["depth in metres", "depth_m"],
    });
    expect(old).toEqual({ format: FORMAT, version: 1, depth_ft: 10 });
    expect(carryForward({ format: FORMAT, version: 3, depth_m: 2 }, 3, steps)).toMatchObject({
      ok: true,
      notes: [],
    });
  });

  it("are refused where they are unknown", () => {
    for (const version of [0, 4, 1.5, "1", null]) {
      expect(carryForward({ format: FORMAT, version }, 3, steps)).toMatchObject({
        ok: false,
        problems: [{ path: "version", allowed: "1, 2, 3" }],
      });
    }
  });

  it("need a chain without gaps", () => {
    expect(() => carryForward({ format: FORMAT, version: 1 }, 3, steps.slice(0, 1))).toThrow(/no step/);
  });
});

describe("compiling to SI", () => {
  it("puts every number where it belongs", () => {
    const { spec, around, tackle, cadence, calibration, water } = compile(sampleScenario());
    expect(spec.shape.top[1]).toEqual({ s: 0.03, v: 0.009 });
    expect(spec.shape.exponentBelow).toEqual([
      { s: 0, v: 2 },
      { s: 0.08, v: 3 },
    ]);
    expect(spec.tie).toEqual({ x: 0.002, z: 0 }); // 2 mm ahead of the nose: forward is positive
    expect(spec.ballast[0]).toMatchObject({
      at: { x: -0.026, z: -0.005 },
      mass: 0.002,
      hole: 0.3e-6,
      filler: 1100,
    });
    expect(spec.body).toMatchObject({ name: "basswood", kind: "wood", given: false });
    expect(spec.bib).toMatchObject({
      angle: (42 * Math.PI) / 180,
      width: 0.013,
      slot: 0.004,
      outline: "round",
    });
    // Hooks are carbon steel, rings stainless steel unless a density is given (docs/model.md §3).
    expect(spec.hangers[0]).toMatchObject({
      ring: { mass: 8e-5, density: 8000, weighed: false },
      hook: { mass: 5e-4, density: 7820, size: "6" },
    });
    expect(spec.fittings[0]).toMatchObject({ where: "outside", stuff: { density: 1200, given: true } });
    expect(spec.coats.map((one) => [one.thickness, one.mass])).toEqual([
      [null, 3e-4],
      [0.00015, null],
    ]);
    expect(spec.bench).toEqual([
      {
        kind: "displacement",
        reading: 0.009,
        resolution: 1e-5,
        tapTemperature: 18,
        with: ["body"],
        air: false,
      },
      {
        kind: "weighing",
        reading: 0.006,
        resolution: 1e-5,
        tapTemperature: null,
        with: ["body", "ballast"],
        air: true,
      },
    ]);
    // Defaults of docs/model.md §3 but where the file says otherwise.
    expect(spec.uncertainty).toEqual({
      wood: 0.05,
      metal: 0.01,
      plastic: 0.02,
      coatThickness: 0.2,
      hook: 0.25,
      drawnLength: 1e-4,
      given: ["wood"],
    });
    expect(around).toMatchObject({ gravity: 9.80665, current: { x: 0.1, z: 0 }, surface: true, depth: 4 });
    // Fresh water at 12 °C: 999.4977 kg/m³ (Kell 1975, as tabulated in the CRC Handbook); EOS-80 within 0.005.
    expect(water.density).toBeCloseTo(999.4977, 2);
    expect(tackle).toMatchObject({ lineOut: 20, rodTip: 1, line: { diameter: 0.00025, density: 1140 } });
    expect(calibration).toEqual({ bibFactor: 0.9 });
    expect(cadence).toEqual([
      { do: "settle", for: 1 },
      { do: "reel", speed: 0.8, for: 4, length: null },
      { do: "reel", speed: 0.6, for: null, length: 2 },
      { do: "twitch", travel: 0.3, in: 0.15, back: 0.3 },
      { do: "pause", for: 2 },
      { do: "slack", for: 1 },
      { do: "lift", height: 0.5, in: 1 },
      { do: "release", for: 2 },
    ]);
  });

  it("lets a density of the file win over the material's", () => {
    const { spec, tackle } = compile(
      sampleScenario((draft) => {
        draft.bait.body["density_g_ml"] = 0.5;
        Object.assign(draft.tackle.line, { material: "my own", density_kg_m3: 1000, stiffness_N: 80 });
      }),
    );
    expect(spec.body).toEqual({ name: "basswood", density: 500, kind: "wood", given: true });
    expect(tackle.line).toEqual({ material: "my own", diameter: 0.00025, density: 1000, EA: 80 });
  });
});
