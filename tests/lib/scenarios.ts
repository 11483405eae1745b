import { readdirSync, readFileSync } from "node:fs";
import { parseScenario } from "../../src/document";
import type { Scenario } from "../../src/document";

/** The example files, as tests read them. */

const folder = new URL("../../scenarios/", import.meta.url);

/** Their names without ".json". */
export const SCENARIOS: readonly string[] = readdirSync(folder)
  .filter((file) => file.endsWith(".json"))
  .map((file) => file.replace(/\.json$/, ""));

export function scenarioOf(name: string): Scenario {
  const parsed = parseScenario(readFileSync(new URL(`${name}.json`, folder), "utf8"));
  if (!parsed.ok) throw new Error(`${name}: ${parsed.problems.map((one) => one.message).join("\n")}`);
  return parsed.scenario;
}
