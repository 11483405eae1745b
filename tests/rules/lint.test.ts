import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, relative } from "node:path";
import js from "@eslint/js";
import { ESLint } from "eslint";
import ts from "typescript";
import tseslint from "typescript-eslint";
import { beforeAll, describe, expect, it } from "vitest";
import { root } from "../../tools/lib/process.mjs";
import { beside, besides, oxlint } from "../../tools/typed-lint.mjs";

// Files whose place decides what is forbidden.
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
  {
    what: "a condition that always holds",
    file: model,
    code: "export const sin = (x: number): number => (x ? x : (x ?? 1));",
    rule: "@typescript-eslint/no-unnecessary-condition",
  },
  {
    what: "a kind forgotten in a switch",
    file: drawing,
    code: 'export const sin = (x: "a" | "b"): void => { switch (x) { case "a": return; } };',
    rule: "@typescript-eslint/switch-exhaustiveness-check",
  },
  {
    what: "what is deprecated",
    file: page,
    code: 'export const sin = escape("x");',
    rule: "@typescript-eslint/no-deprecated",
  },
  {
    what: "a value of any type",
    file: page,
    code: 'export const sin: string = JSON.parse("1");',
    rule: "@typescript-eslint/no-unsafe-assignment",
  },
  {
    what: "an instance that is none",
    file: page,
    code: "export class Own { constructor(readonly name: string) {} } export const sin: Own = { name: '1' };",
    rule: "@typescript-eslint/no-unsafe-class-instance-assignment",
  },
  { what: "good code", file: model, code: "export const sin = (x: number): number => x / 2;", rule: null },
];

/** Rules that each case breaks, by either linter. A file's cases are read at once, a line each. */
const broken = new Map<Case, string[]>();

/** What is said of the line that is one too many. */
const tooLong: string[] = [];
const files = [...new Set(cases.map(({ file }) => file))];
const TOO_MANY = 400;
const of = (file: string): readonly Case[] => cases.filter((one) => one.file === file);
const textOf = (file: string): string => {
  const code = of(file)
    .map((one, i) => one.code.replace("const sin", `const sin${i}`))
    .join("\n");
  // and empty lines up to one too many
  return code.padEnd(code.length + TOO_MANY + 1 - of(file).length, "\n");
};
const add = (file: string, line: number, rule: string): void => {
  const one = of(file)[line - 1];
  if (one !== undefined) broken.set(one, [...(broken.get(one) ?? []), rule]);
};

/** The names that rules have in both linters; "typescript(no-deprecated)" is what oxlint says. */
const named = (code: string): string =>
  code.replace(/^eslint\((.+)\)$/, "$1").replace(/^typescript(?:-eslint)?\((.+)\)$/, "@typescript-eslint/$1");

interface Said {
  readonly diagnostics: readonly {
    readonly code: string;
    readonly filename: string;
    readonly labels: readonly { readonly span: { readonly line: number } }[];
  }[];
}

const settings = { cwd: root, overrideConfigFile: join(root, "tools/eslint.config.mjs") };

beforeAll(async () => {
  const eslint = new ESLint(settings);
  for (const file of files) {
    for (const one of of(file)) broken.set(one, []);
    const [result] = await eslint.lintText(textOf(file), { filePath: join(root, file) });
    for (const { line, ruleId, message } of result?.messages ?? []) {
      if (line === TOO_MANY && ruleId !== null) tooLong.push(ruleId);
      add(file, line, ruleId ?? message);
    }
  }
  // The other linter reads files alone. These lie in a folder like ours.
  const folder = mkdtempSync(join(tmpdir(), "trimwright-lint-"));
  try {
    for (const file of files) {
      mkdirSync(dirname(join(folder, file)), { recursive: true });
      writeFileSync(join(folder, file), textOf(file));
    }
    const like = { extends: join(root, "tsconfig.json"), compilerOptions: { types: [] }, include: ["src"] };
    writeFileSync(join(folder, "tsconfig.json"), JSON.stringify(like));
    let said = "";
    await oxlint([folder], ["--format", "json"], { hold: (text) => (said += text) });
    for (const { code, filename, labels } of (JSON.parse(said) as Said).diagnostics)
      add(relative(folder, filename).replaceAll("\\", "/"), labels[0]?.span.line ?? 0, named(code));
  } finally {
    rmSync(folder, { recursive: true });
  }
  const texts = Object.fromEntries(files.map((file) => [file, textOf(file)]));
  for (const { file, line, rule } of beside(files, texts)) add(file, line, `@typescript-eslint/${rule}`);
}, 300_000);

describe("lint rules", () => {
  it("forbid conversions in the runner as on the page", async () => {
    const eslint = new ESLint(settings);
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
    expect(tooLong).toEqual(files.map(() => "max-lines"));
  });

  it("are all that the recommended lists have, in one linter or the other", async () => {
    const config = (await new ESLint(settings).calculateConfigForFile(join(root, page))) as {
      rules: Record<string, [severity: number]>;
    };
    const { rules } = ts.parseConfigFileTextToJson(
      "oxlint.json",
      readFileSync(join(root, "tools/oxlint.json"), "utf8"),
    ).config as { rules: Record<string, string | [string]> };
    const own = Object.keys(rules).map((name) => name.replace(/^typescript\//, ""));
    const lists = [{ rules: js.configs.recommended.rules }, ...tseslint.configs.strictTypeChecked];
    const wanted = new Map(lists.flatMap((list) => Object.entries(list.rules ?? {})));
    const lost = [...wanted].filter(([name, level]) => {
      const bare = name.replace("@typescript-eslint/", "");
      const here = config.rules[name]?.[0] ?? 0;
      const off = level === "off" || level === 0;
      return !off && here === 0 && !own.includes(bare) && !besides.includes(bare);
    });
    // Documents are plain objects with optional keys.
    expect(lost.map(([name]) => name)).toEqual(["@typescript-eslint/no-dynamic-delete"]);
    const off = Object.keys(rules).filter((name) => rules[name] === "off");
    expect(off).toEqual(["typescript/no-meaningless-void-operator", "typescript/unbound-method"]);
  });

  it.each(cases.filter(({ rule }) => rule !== null))("forbid $what in $file", (one) => {
    if (one.alone === true) expect(broken.get(one)).toEqual([one.rule]);
    else expect(broken.get(one)).toContain(one.rule);
  });

  it.each(cases.filter(({ rule }) => rule === null))("have nothing against $what in $file", (one) => {
    expect(broken.get(one)).toEqual([]);
  });
});
