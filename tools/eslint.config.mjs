// Lint rules. Layout is the formatter's business; what is here finds faults. What oxlint.json names is looked for by
// typed-lint.mjs, except in components, which only this linter reads.
import js from "@eslint/js";
import svelte from "eslint-plugin-svelte";
import { defineConfig } from "eslint/config";
import globals from "globals";
import ts from "typescript";
import tseslint from "typescript-eslint";
import svelteConfig from "../svelte.config.js";
import { closedToComponents as barred } from "./import-rules.config.mjs";
import { root } from "./lib/process.mjs";

const noHiddenInput = "The model and the drawings have no hidden input: pass it in as an argument.";

/** What the model's core and the drawings may not touch: the page, the clock, chance, the console, the network, Node. */
const hidden = [
  ...["window", "document", "navigator", "location", "localStorage", "self", "globalThis", "global"],
  ...["Date", "performance", "console", "process", "Buffer", "crypto", "fetch", "Intl"],
  ...["setTimeout", "setInterval", "setImmediate", "queueMicrotask", "requestAnimationFrame", "postMessage"],
];

/**
 * Functions of Math whose last bit differs between JavaScript engines: model/base has its own. (sqrt is exact everywhere.)
 * Rooms that draw may use them: a picture is rounded to pixels, and no number comes from it.
 */
const inexact = [
  ...["sin", "cos", "tan", "asin", "acos", "atan", "atan2"],
  ...["sinh", "cosh", "tanh", "asinh", "acosh", "atanh"],
  ...["exp", "expm1", "log", "log1p", "log2", "log10", "pow", "cbrt", "hypot"],
];
const inexactMessage = "Engines differ in its last bit: use model/base's own.";

const noPower = {
  selector: ":matches(BinaryExpression[operator='**'], AssignmentExpression[operator='**='])",
  message: `The operator ** is Math.pow. ${inexactMessage}`,
};

/** Factors that turn one unit into another. */
const factors = String.raw`/^(1e-?(3|6|9|12)|1000|1_000|1_000_000|0\.001|25\.4|0\.0254|180)$/`;
const noConversion = {
  selector:
    ":matches(BinaryExpression, AssignmentExpression):matches([operator='*'], [operator='/'], [operator='*='], [operator='/='])" +
    ` > Literal[raw=${factors}]`,
  message:
    "Units are converted in src/units alone: use toSI, fromSI or format. A factor that is no unit gets a name, as a constant.",
};

const noChance = { object: "Math", property: "random", message: `${noHiddenInput} Use a seeded generator.` };

/** @param {readonly string[]} group @param {string} message */
const closed = (group, message) => ({ group: [...group], message });

/** For components: what the import checker cannot see there, since the compiler leaves imports of types out. */
const closedToComponents = [
  closed(barred.inner, "Come in by the folder's index."),
  closed(barred.outside, "What runs does not need its tests and tools."),
  closed(barred.engine, "The rigid-body engine stays behind the motion room."),
  closed(barred.node, "The page does not know Node."),
];
const pixiElsewhere = closed(barred.drawing, "Only the stage draws with Pixi.");

/** @type {{ config?: { rules: Record<string, unknown> }, error?: ts.Diagnostic }} */
const { config: typed, error } = ts.readConfigFile(`${root}tools/oxlint.json`, (path) =>
  ts.sys.readFile(path),
);
if (typed === undefined || error !== undefined) throw new Error("tools/oxlint.json cannot be read.");

/** The rules of typed-lint.mjs. Some of them are a plugin's here and not there. */
const elsewhere = Object.keys(typed.rules)
  .map((name) => name.replace(/^typescript\//, ""))
  .flatMap((name) => [name, `@typescript-eslint/${name}`]);
const withoutThose = Object.fromEntries(elsewhere.map((name) => [name, /** @type {const} */ ("off")]));

export default defineConfig(
  { ignores: ["node_modules", "dist", "coverage", "tests/rules/sins", "test-results"] },
  { linterOptions: { reportUnusedDisableDirectives: "error" } },
  js.configs.recommended,
  ...tseslint.configs.strict,
  ...svelte.configs.recommended,
  {
    languageOptions: {
      globals: { ...globals.node },
    },
    rules: {
      eqeqeq: "error",
      "max-lines": ["error", 399],
      "no-console": "error",
      "no-restricted-syntax": "off",
      "prefer-const": "error",
      "object-shorthand": "error",
      "@typescript-eslint/consistent-type-imports": [
        "error",
        { fixStyle: "inline-type-imports", disallowTypeAnnotations: false },
      ],
      "@typescript-eslint/no-explicit-any": "error",
      "@typescript-eslint/no-non-null-assertion": "error",
      "@typescript-eslint/no-unused-vars": ["error", { argsIgnorePattern: "^_", varsIgnorePattern: "^_" }],
      // Documents are plain objects with optional keys.
      "@typescript-eslint/no-dynamic-delete": "off",
    },
  },
  {
    files: ["**/*.svelte", "**/*.svelte.ts", "src/ui/**/*.ts"],
    languageOptions: { globals: { ...globals.browser } },
  },
  {
    files: ["**/*.svelte", "**/*.svelte.ts"],
    languageOptions: {
      parserOptions: {
        parser: tseslint.parser,
        extraFileExtensions: [".svelte"],
        svelteConfig,
      },
    },
    rules: {
      // The compiler knows what is written through runes better.
      "prefer-const": "off",
      // svelte-check, which fails on warnings, knows better which of them are needed.
      "svelte/no-unused-svelte-ignore": "off",
      "@typescript-eslint/no-restricted-imports": [
        "error",
        { patterns: [...closedToComponents, pixiElsewhere] },
      ],
    },
  },
  {
    files: ["src/ui/stage/**/*.svelte", "src/ui/stage/**/*.svelte.ts"],
    rules: {
      "@typescript-eslint/no-restricted-imports": ["error", { patterns: closedToComponents }],
    },
  },
  // Modules with runes are plain TypeScript. Read by Svelte's parser, each would make the compiler's types of everything anew.
  { files: ["**/*.svelte.ts"], languageOptions: { parser: tseslint.parser } },
  {
    files: ["src/model/**/*.ts", "src/drawing/**/*.ts"],
    languageOptions: { globals: { ...globals["shared-node-browser"] } },
    rules: {
      "no-restricted-globals": ["error", ...hidden.map((name) => ({ name, message: noHiddenInput }))],
      "no-restricted-properties": ["error", noChance],
    },
  },
  {
    files: ["src/model/**/*.ts", "src/document/**/*.ts", "src/units/**/*.ts", "src/runner/**/*.ts"],
    rules: {
      "no-restricted-properties": [
        "error",
        noChance,
        ...inexact.map((property) => ({ object: "Math", property, message: inexactMessage })),
      ],
      "no-restricted-syntax": ["error", noPower],
    },
  },
  {
    files: ["src/ui/**/*.ts", "src/ui/**/*.svelte", "src/runner/**/*.ts"],
    rules: { "no-restricted-syntax": ["error", noConversion] },
  },
  {
    files: ["src/runner/**/*.ts"],
    rules: { "no-restricted-syntax": ["error", noConversion, noPower] },
  },
  {
    files: ["src/runner/**/*.ts", "tools/**", "tests/bench/**"],
    rules: { "no-console": "off" },
  },
  {
    files: ["tests/**/*.ts"],
    rules: {
      // A test fails by itself where a value is not there.
      "@typescript-eslint/no-non-null-assertion": "off",
    },
  },
  // It keeps two functions of Math, only to put them back.
  {
    files: ["src/model/motion/engine/steady-on.ts"],
    rules: { "no-restricted-properties": ["error", noChance] },
  },
  { files: ["**/*.ts", "**/*.mjs", "**/*.js"], rules: withoutThose },
);
