import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { movePoints, parseScenario } from "../../../src/document";
import { Prefs } from "../../../src/ui/state/prefs.svelte";
import { Units } from "../../../src/ui/state/units";
import { Workspace } from "../../../src/ui/state/workspace.svelte";
import { outcomeOf } from "../../../src/ui/views/draw/outcome";

it("what cannot be made so is told in the units that are read, with a real minus sign", () => {
  const read = parseScenario(readFileSync("scenarios/suspender-90.json", "utf8"));
  if (!read.ok) throw new Error("the scenario cannot be read");
  const { now } = new Workspace(read.scenario);
  const crossed = movePoints(read.scenario, "top", [2], [0, -30]);
  const prefs = new Prefs(null, 1200);
  // The bottom edge there lies 8.7 mm under the datum line.
  const metric = outcomeOf(crossed, now, new Units(prefs), "en");
  expect(metric.ok).toBe(false);
  expect(metric.text).toMatch(/at least −8\.7 mm/);
  prefs.setUnits({ length: "in", mass: "oz", temperature: "°F" });
  const { text } = outcomeOf(crossed, now, new Units(prefs), "en");
  expect(text).toMatch(/at least −0\.343\u202fin/);
  expect(text).not.toContain("mm");
});
