import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { parseScenario, pathSteps, serialize, valueAt } from "../../src/document";
import type { Scenario } from "../../src/document";
import { answer } from "../../src/runner/answer";
import type { Answer } from "../../src/runner/answer";

/** Every scenario is read, answered whole, and held against its own expectations. */
const folder = "scenarios";
const files = readdirSync(folder).filter((name) => name.endsWith(".json"));

function open(file: string): { text: string; scenario: Scenario } {
  const text = readFileSync(join(folder, file), "utf8");
  const read = parseScenario(text);
  if (!read.ok) throw new Error(read.problems.map((one) => one.message).join("\n"));
  return { text, scenario: read.scenario };
}

it("there are scenarios", () => {
  expect(files.length).toBeGreaterThanOrEqual(6);
});

describe.each(files)("%s", (file) => {
  const { text, scenario } = open(file);
  let given: Answer;
  beforeAll(() => {
    given = answer(scenario).answer;
  });

  it("is written as the program writes it, says what it cannot show, and expects something", () => {
    expect(serialize(scenario)).toBe(text);
    expect(scenario.notes).toMatch(/invented/i);
    expect(scenario.limits).not.toBe("");
    expect(scenario.expect.length).toBeGreaterThanOrEqual(4);
  });

  it.each(scenario.expect.map((one) => [one.path, one] as const))("%s", (path, { value, tolerance, why }) => {
    const found = valueAt(given, pathSteps(path));
    if (typeof value === "number" && tolerance !== undefined) {
      expect(typeof found, `${path}: ${String(found)}`).toBe("number");
      expect(
        Math.abs(Number(found) - value),
        `${path} = ${String(found)}, expected ${value} ± ${tolerance} (${why})`,
      ).toBeLessThanOrEqual(tolerance);
    } else expect(found, `${path}: ${why}`).toBe(value);
  });

  it("has an account that adds up", () => {
    const { statics } = given;
    if (statics === undefined) throw new Error("no statics");
    // Sums of some dozen doubles: a few units of the last place.
    const sum = (of: "mass_g" | "displaced_ml" | "net_g") =>
      statics.account.reduce((total, row) => total + row[of], 0);
    expect(sum("mass_g")).toBeCloseTo(statics.mass_g, 10);
    expect(sum("displaced_ml")).toBeCloseTo(statics.displaced_ml, 10);
    expect(sum("net_g")).toBeCloseTo(statics.netBuoyancy_g, 10);
  });
});
