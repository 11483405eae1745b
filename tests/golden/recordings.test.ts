import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { compile, parseScenario } from "../../src/document";
import { record } from "../../src/model/motion";
import { swimSetup, tubSetup } from "../../src/runner";
import stored from "./recordings.json";

/**
 * Same document, same recording, bit for bit, on every machine and after every change that is not meant to change a number.
 * Pinned: the hashes are the program's own. A commit that mends physics stores new ones and says what changed and by how much.
 */
const folder = "scenarios";
const files = readdirSync(folder).filter((name) => name.endsWith(".json"));
const hashes: Readonly<Record<string, { readonly swim: string; readonly release: string }>> = stored;

it("stores a hash for each scenario and for nothing else", () => {
  expect(Object.keys(hashes).sort()).toEqual([...files].sort());
});

describe.each(files)("%s", (file) => {
  const read = parseScenario(readFileSync(join(folder, file), "utf8"));
  if (!read.ok) throw new Error(read.problems.map((one) => one.message).join("\n"));
  const compiled = compile(read.scenario);

  it("swims as stored", () => {
    expect(record(swimSetup(compiled)).hash()).toBe(hashes[file]?.swim);
  });

  it("rises or sinks from 0.5 m as stored", () => {
    const tub = { depth: 0.5, pitch: "rest", duration: 4 } as const;
    expect(record(tubSetup(compiled, tub)).hash()).toBe(hashes[file]?.release);
  });
});
