import { join } from "node:path";
import { ESLint } from "eslint";
import { beforeAll, describe, expect, it } from "vitest";
import { root } from "../../tools/lib/process.mjs";

// Files whose place decides what is forbidden; they must exist, since their types are looked up.
const model = "src/model/base/types.ts";
const motion = "src/model/motion/types.ts";
const drawing = "src/drawing/types.ts";
const page = "src/ui/plots/types.ts";

/** A line of code in a file, and the rule that it must break (`alone`: and no other); null: none. */
interface Case {
  readonly what: string;
  readonly file: string;
  readonly code: string;
  readonly rule: string | null;
  readonly alone?: boolean;
}

const keepOut = (what: string, code: string): Case => ({
  what,
  file: model,
  code,
  rule: "no-restricted-globals",
});
const reproducible = (file: string, code: string, rule: string | null): Case => ({
  what: code,
  file,
  code,
  rule,
  alone: true,
});

const conversion = (code: string, rule: string | null = "no-restricted-syntax"): Case => ({
  what: code,
  file: page,
  code: `export const sin = (x: number): number => ${code};`,
  rule,
  alone: true,
});

const cases: readonly Case[] = [
  keepOut("window", "export const sin = window.innerWidth;"),
  keepOut("document", "export const sin = document.title;"),
  keepOut("the clock", "export const sin = Date.now();"),
  keepOut("another clock", "export const sin = performance.now();"),
  keepOut("the global object", "export const sin = Object.keys(globalThis);"),
  keepOut("a timer", "export const sin = setTimeout(() => undefined, 1);"),
  keepOut("the network", 'export const sin = fetch("x");'),
  keepOut("Node", "export const sin = process.argv;"),
  keepOut("the console", 'console.log("x");'),
  {
    what: "the page",
    file: drawing,
    code: "export const sin = document.title;",
    rule: "no-restricted-globals",
  },
  reproducible(model, "export const sin = Math.random();", "no-restricted-properties"),
  reproducible(motion, "export const sin = Math.random();", "no-restricted-properties"),
  ...["sin(1)", "atan2(1, 2)", "exp(1)", "log(2)", "pow(2, 0.5)", "hypot(1, 2)", "cosh(1)", "cbrt(2)"].map(
    (call) => reproducible(model, `export const sin = Math.${call};`, "no-restricted-properties"),
  ),
  reproducible(motion, "export const sin = Math.sin(1);", "no-restricted-properties"),
  reproducible(model, "export const sin = (x: number): number => x ** 2;", "no-restricted-syntax"),
  reproducible(model, "export const sin = Math.sqrt(2);", null),
  ...["src/document/si.ts", "src/units/units.ts", "src/runner/jobs.ts"].flatMap((file) => [
    reproducible(file, "export const sin = Math.cbrt(2);", "no-restricted-properties"),
    reproducible(file, "export const sin = (x: number): number => x ** 2;", "no-restricted-syntax"),
  ]),
  ...["x * 1e3", "1e-3 * x", "x / 1000", "x * 1e6", "x / 25.4", "(x * 180) / Math.PI"].map((code) =>
    conversion(code),
  ),
  conversion("x + 1e-6", null),
  conversion("Math.max(x, 1000)", null),
  {
    what: "any",
    file: model,
    code: "export const sin = (x: any): unknown => x;",
    rule: "@typescript-eslint/no-explicit-any",
  },
  {
    what: "an unchecked value",
    file: model,
    code: "export const sin = (x: readonly number[]): number => x[0]!;",
    rule: "@typescript-eslint/no-non-null-assertion",
  },
  {
    what: "loose equality",
    file: model,
    code: "export const sin = (x: unknown): boolean => x == 1;",
    rule: "eqeqeq",
  },
  {
    what: "a forgotten promise",
    file: model,
    code: "export const sin = (): void => { Promise.resolve(1); };",
    rule: "@typescript-eslint/no-floating-promises",
  },
  { what: "good code", file: model, code: "export const sin = (x: number): number => x / 2;", rule: null },
];

/** Rules that each case breaks. A file's cases are read at once, a line each: each reading makes all types anew. */
const broken = new Map<Case, string[]>();

/** What is said of the line that is one too many. */
const tooLong: string[] = [];
const files = new Set(cases.map(({ file }) => file));
const TOO_MANY = 400;

beforeAll(async () => {
  const eslint = new ESLint({ cwd: root, overrideConfigFile: join(root, "tools/eslint.config.mjs") });
  for (const file of files) {
    const own = cases.filter((one) => one.file === file);
    const code = own.map((one, i) => one.code.replace("const sin ", `const sin${i} `)).join("\n");
    // and empty lines up to one too many
    const [result] = await eslint.lintText(code.padEnd(code.length + TOO_MANY + 1 - own.length, "\n"), {
      filePath: join(root, file),
    });
    for (const { line, ruleId } of result?.messages ?? [])
      if (line === TOO_MANY && ruleId !== null) tooLong.push(ruleId);
    own.forEach((one, i) => {
      const messages = (result?.messages ?? []).filter(({ line }) => line === i + 1);
      broken.set(
        one,
        messages.map(({ ruleId, message }) => ruleId ?? message),
      );
    });
  }
}, 300_000);

describe("lint rules", () => {
  it("forbid conversions in the runner as on the page", async () => {
    const eslint = new ESLint({ cwd: root, overrideConfigFile: join(root, "tools/eslint.config.mjs") });
    const ruleFor = async (file: string): Promise<unknown> => {
      const config = (await eslint.calculateConfigForFile(join(root, file))) as { rules: object };
      return (config.rules as Record<string, unknown>)["no-restricted-syntax"];
    };
    expect(await ruleFor("src/runner/jobs.ts")).toEqual(
      expect.arrayContaining((await ruleFor(page)) as unknown[]),
    );
    // The factors of units are at home there.
    expect(JSON.stringify(await ruleFor("src/units/units.ts"))).not.toContain("Literal[raw=");
  });

  it("forbid files of 400 lines", () => {
    expect(tooLong).toEqual([...files].map(() => "max-lines"));
  });

  it.each(cases.filter(({ rule }) => rule !== null))("forbid $what in $file", (one) => {
    if (one.alone === true) expect(broken.get(one)).toEqual([one.rule]);
    else expect(broken.get(one)).toContain(one.rule);
  });

  it.each(cases.filter(({ rule }) => rule === null))("have nothing against $what in $file", (one) => {
    expect(broken.get(one)).toEqual([]);
  });
});
