import { join } from "node:path";
import { ESLint } from "eslint";
import { describe, expect, it } from "vitest";
import { folders, rooms } from "../../tools/import-rules.config.mjs";
import { root } from "../../tools/lib/process.mjs";

/**
 * The checker of imports reads a component as the compiler leaves it, without its imports of types. Lint reads those: here
 * each of them is one line of a component that lint is given.
 */
const CLOSED = "@typescript-eslint/no-restricted-imports";
const view = "src/ui/views/parts/Section.svelte";
const stage = "src/ui/stage/Stage.svelte";

const outer = Object.keys(folders).filter((folder) => folder !== "model" && folder !== "ui");
const inModel = Object.keys(rooms).map((room) => `../../../model/${room}`);
const beside = outer.map((folder) => `../../../${folder}`);
const doors = [...inModel, ...beside, "../../stage", "../../plots"];

/** Whether lint objects to a component's import of a type from each of these places. */
async function refused(file: string, places: readonly string[]): Promise<boolean[]> {
  const eslint = new ESLint({ cwd: root, overrideConfigFile: join(root, "tools/eslint.config.mjs") });
  const lines = places.map((place, i) => `  import type { T${i} } from "${place}";`);
  const [result] = await eslint.lintText(`<script lang="ts">\n${lines.join("\n")}\n</script>\n`, {
    filePath: join(root, file),
  });
  const found = new Set(
    (result?.messages ?? []).filter((one) => one.ruleId === CLOSED).map((one) => one.line),
  );
  return places.map((_, i) => found.has(i + 2));
}

describe("a component's imports of types", () => {
  it("come in by a folder's index and not past it, whatever rooms there are", async () => {
    expect(inModel.length).toBeGreaterThan(10);
    expect(await refused(view, doors)).toEqual(doors.map(() => false));
    const inner = [...doors.map((door) => `${door}/inner`), "../../../model/bench/deeper/inner"];
    expect(await refused(view, inner)).toEqual(inner.map(() => true));
    expect(await refused(stage, ["../../model/base/vec", "./types"])).toEqual([true, false]);
  });

  it("leave the engines where they belong, and Node and the tests outside", async () => {
    expect(
      await refused(view, ["planck", "pixi.js", "node:fs", "fs/promises", "../../../../tools/size.mjs"]),
    ).toEqual([...[true, true, true, true, true]]);
    expect(await refused(stage, ["planck", "pixi.js", "../../../tests/lib/sample"])).toEqual([
      ...[true, false, true],
    ]);
    expect(await refused(view, ["svelte", "./Readout.svelte"])).toEqual([false, false]);
  });
}, 120_000);

it("a component converts units by units alone, in its markup too", async () => {
  const eslint = new ESLint({ cwd: root, overrideConfigFile: join(root, "tools/eslint.config.mjs") });
  const code = '<script lang="ts">\n  const x = 2;\n</script>\n\n<p>{x * 1e3}</p>\n<p>{x * 3}</p>\n';
  const [result] = await eslint.lintText(code, { filePath: join(root, view) });
  expect((result?.messages ?? []).map(({ ruleId, line }) => [ruleId, line])).toEqual([
    ["no-restricted-syntax", 5],
  ]);
}, 120_000);
