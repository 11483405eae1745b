import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { compile, parseScenario } from "../../../src/document";
import { material } from "../../../src/model/materials";
import { ballastPlan } from "../../../src/model/plan";
import type { PlanKind } from "../../../src/model/plan";
import { deg, g, mm } from "../../lib/si";

const ball = (name: string, d: number): PlanKind => {
  const metal = material(name);
  if (metal === null) throw new Error(`no material ${name}`);
  return {
    name: `${name} ball ${String(d)} mm`,
    stuff: { name, density: metal.density, kind: "metal", given: false },
    mass: (Math.PI / 6) * (d * mm) ** 3 * metal.density,
    count: 6,
    lead: false,
    across: d * mm,
    along: d * mm,
    inside: true,
    outside: false,
  };
};

test("where the lowest seats give no plan, a longer plug does: it lifts a weight, and its filler weighs", () => {
  const file = new URL("../../../scenarios/salt-suspender-115.json", import.meta.url);
  const parsed = parseScenario(readFileSync(file, "utf8"));
  if (!parsed.ok) throw new Error("the scenario is refused");
  const { scenario } = parsed;
  const { spec, water } = compile({ ...scenario, expect: [], bait: { ...scenario.bait, ballast: [] } });
  const length = spec.shape.length;
  const metals = ["tin", "carbon steel", "brass", "tungsten", "zinc", "copper"];
  const wall = 1 * mm;
  const { plans, limits } = ballastPlan(
    spec,
    water.density,
    { net: 0.3 * g, netTolerance: 0.05 * g, trim: -5 * deg, trimTolerance: 10 * deg, leastBG: 1 * mm },
    metals.flatMap((name) => [2.5, 3, 4, 5, 6].map((d) => ball(name, d))),
    { from: 0.1 * length, to: 0.9 * length, lowest: null, highest: null, wall, clearance: 1 * mm },
    { drills: [2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6, 6.5].map((d) => d * mm), filler: 1100, places: 3 },
  );
  expect(limits).toEqual([]);
  const [best] = plans;
  expect(best?.fits).toBe(true);
  expect(Math.abs((best?.net ?? NaN) - 0.3 * g)).toBeLessThanOrEqual(0.05 * g);
  expect(best?.BG).toBeGreaterThanOrEqual(1 * mm);
  expect(Math.max(...(best?.loads ?? []).map(({ hole }) => hole?.plug ?? 0))).toBeGreaterThan(
    wall + 0.9 * mm,
  );
});
