import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Copy } from "./copy";

/** A made-up plastic and a made-up line, added to a copy of the sources by the recipe for a material: one entry each. */
const PLASTIC = `
  {
    name: "moon foam",
    otherNames: ["lunar foam"],
    density: 240,
    range: [200, 260],
    kind: "plastic",
    source: "made up for a test",
  },`;
const LINE = `
  { name: "moon silk", density: 1300, modulus: 5e9, source: "made up for a test" },`;
const ENTRY = `
export { parseScenario, scenarioJsonSchema } from "./src/document";
export { densitySpread, material, materials, nearestNames } from "./src/model/materials";
export { band } from "./src/model/statics";
`;
type Program = Pick<typeof import("../../src/document"), "parseScenario" | "scenarioJsonSchema"> &
  Pick<
    typeof import("../../src/model/materials"),
    "densitySpread" | "material" | "materials" | "nearestNames"
  > &
  Pick<typeof import("../../src/model/statics"), "band">;

describe("a made-up material, added by the recipe", () => {
  const copy = new Copy("material");
  afterAll(() => {
    copy.remove();
  });
  let program: Program;
  beforeAll(async () => {
    copy.put("src/model/materials/plastics.ts", "export const plastics: readonly Material[] = [", PLASTIC);
    copy.put("src/model/materials/lines.ts", "export const lineMaterials: readonly LineMaterial[] = [", LINE);
    program = await copy.program<Program>(ENTRY, "program.mjs");
  });

  const read = (body: object, line?: object) => {
    const file = JSON.parse(readFileSync("scenarios/suspender-90.json", "utf8")) as {
      readonly bait: object;
      readonly tackle: object;
    };
    return program.parseScenario(
      JSON.stringify({
        ...file,
        bait: { ...file.bait, body },
        tackle: line === undefined ? file.tackle : { ...file.tackle, line },
      }),
    );
  };
  const compiled = (...from: Parameters<typeof read>) => {
    const parsed = read(...from);
    if (!parsed.ok) throw new Error(parsed.problems.map((p) => p.message).join("\n"));
    return parsed.compiled;
  };

  it("is found by its names, is in the list that the page offers, and is proposed where it is misspelt", () => {
    const found = program.material("Moon  foam");
    expect(found).toMatchObject({ density: 240, kind: "plastic" });
    expect(program.material("lunar foam")).toBe(found);
    expect(program.materials).toContain(found);
    const parsed = read({ material: "moon foan" });
    expect(parsed.ok ? [] : parsed.problems.map((p) => p.message)).toEqual([
      expect.stringContaining("moon foam"),
    ]);
  });

  it("gives the body its density, and the band its published range", () => {
    const { bait, water } = compiled({ material: "moon foam" });
    expect(bait.bodyDensity).toBe(240);
    // A range is even between its ends: its standard deviation is its width by √12, here 60/√12 = 17.3 kg/m³.
    const deviation = 60 / Math.sqrt(12);
    const found = program.material("moon foam");
    expect(found && program.densitySpread(found)).toBeCloseTo(deviation / 240, 12);
    // The wood that is there changes its mass by it, and so does the net buoyancy. Differences of 200 draws: to 1 %.
    const wood = bait.items.find((i) => i.group === "body")?.mass ?? NaN;
    const { contributions } = program.band(bait, water.density, { samples: 200 });
    const own = contributions.find((one) => one.input === "body: density")?.netBuoyancy ?? NaN;
    expect(own / ((wood * deviation) / 240)).toBeCloseTo(1, 2);
  });

  it("makes a line with its density and its stiffness", () => {
    const { line } = compiled({ material: "moon foam" }, { material: "moon silk", diameter_mm: 0.2 }).tackle;
    expect(line.density).toBe(1300);
    // EA = E π d²/4 = 5e9 · π · (0.2e-3)²/4 = 157.08 N
    expect(line.EA).toBeCloseTo(157.08, 2);
  });

  it("is told in the recipe: its files, and what an entry says", () => {
    const recipe = /\*\*A material\.\*\*[\s\S]*?(?=\n\n\*\*)/.exec(
      readFileSync("DEVELOPERS.md", "utf8"),
    )?.[0];
    for (const word of ["`plastics.ts`", "`lines.ts`", "name", "density in kg/m³", "kind", "source", "range"])
      expect(recipe).toContain(word);
    expect(recipe).toContain("`otherNames`");
  });
});
