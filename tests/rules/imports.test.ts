import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { cruise } from "dependency-cruiser";
import { describe, expect, it } from "vitest";
import rules from "../../tools/import-rules.config.mjs";
import { root } from "../../tools/lib/process.mjs";

const sins = join(root, "tests/rules/sins");
const names = rules.forbidden.map((rule) => rule.name ?? "");

/** "file: rule" of each sin that a file confesses in a comment `sin: rule`. */
function confessed(): string[] {
  const files = readdirSync(sins, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return files.flatMap((entry) => {
    const path = join(entry.parentPath, entry.name);
    const found = readFileSync(path, "utf8").matchAll(/sin: ([a-z-]+)/g);
    return [...found].map(([, rule]) => `${relative(sins, path).replaceAll("\\", "/")}: ${String(rule)}`);
  });
}

/** "file: rule" of each breach that the checker finds in the folder of sins. */
async function caught(): Promise<string[]> {
  const { output } = await cruise(["src"], {
    ...rules.options,
    baseDir: sins,
    validate: true,
    ruleSet: { forbidden: rules.forbidden },
  });
  if (typeof output === "string") throw new Error("The checker answered with text.");
  const breaches = output.summary.violations.map(({ from, rule }) => `${from}: ${rule.name}`);
  return [...new Set(breaches)].sort();
}

describe("import rules", () => {
  it("catch every deliberate sin, and nothing else", async () => {
    expect(await caught()).toEqual([...new Set(confessed())].sort());
  });

  it("have a sin for each rule", () => {
    const shown = confessed().map((line) => line.split(": ")[1]);
    expect(names.filter((name) => !shown.includes(name))).toEqual([]);
  });
});
