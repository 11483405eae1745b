import { join } from "node:path";
import { ESLint } from "eslint";
import { describe, expect, it } from "vitest";
import { root } from "../../tools/lib/process.mjs";

const eslint = new ESLint({ cwd: root, overrideConfigFile: join(root, "tools/eslint.config.mjs") });

/** Rules that a piece of code breaks, were it written in a given file (which must exist: its types are looked up). */
async function broken(file: string, code: string): Promise<string[]> {
  const [result] = await eslint.lintText(code, { filePath: join(root, file) });
  return (result?.messages ?? []).map(({ ruleId, message }) => ruleId ?? message);
}

const model = "src/model/base/types.ts";
const motion = "src/model/motion/types.ts";

describe("lint rules", () => {
  it.each([
    ["window", "export const sin = window.innerWidth;"],
    ["document", "export const sin = document.title;"],
    ["the clock", "export const sin = Date.now();"],
    ["another clock", "export const sin = performance.now();"],
    ["the global object", "export const sin = Object.keys(globalThis);"],
    ["a timer", "export const sin = setTimeout(() => undefined, 1);"],
    ["the network", 'export const sin = fetch("x");'],
    ["Node", "export const sin = process.argv;"],
    ["the console", 'console.log("x");\nexport {};'],
  ])("keep %s out of the model", async (_, code) => {
    expect(await broken(model, code)).toContain("no-restricted-globals");
  });

  it("keep chance out of the model, and inexact functions out of the motion", async () => {
    expect(await broken(model, "export const sin = Math.random();")).toEqual(["no-restricted-properties"]);
    expect(await broken(motion, "export const sin = Math.random();")).toEqual(["no-restricted-properties"]);
    expect(await broken(motion, "export const sin = Math.sin(1);")).toEqual(["no-restricted-properties"]);
    expect(await broken(model, "export const good = Math.sin(1);")).toEqual([]);
  });

  it.each([
    ["any", "export const sin = (x: any): unknown => x;", "@typescript-eslint/no-explicit-any"],
    [
      "an unchecked value",
      "export const sin = (x: readonly number[]): number => x[0]!;",
      "@typescript-eslint/no-non-null-assertion",
    ],
    ["loose equality", "export const sin = (x: unknown): boolean => x == 1;", "eqeqeq"],
    [
      "a forgotten promise",
      "export const sin = (): void => { Promise.resolve(1); };",
      "@typescript-eslint/no-floating-promises",
    ],
  ])("forbid %s in the sources", async (_, code, rule) => {
    expect(await broken(model, code)).toContain(rule);
  });

  it("have nothing against good code", async () => {
    expect(await broken(model, "export const half = (x: number): number => x / 2;\n")).toEqual([]);
  });
});
