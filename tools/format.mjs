// node tools/format.mjs --check | --write: the formatter, over every file that is written by hand as code.
import "./lib/node-version.mjs";
import { ensurePackages } from "./lib/packages.mjs";
import { runCommand } from "./lib/process.mjs";

const code = [
  "src/**/*.{ts,svelte,css,html}",
  "tests/**/*.ts",
  "tools/**/*.{mjs,ts,json}",
  "*.{ts,js,json}",
  "!package-lock.json",
];

await ensurePackages();
const { code: exit } = await runCommand("prettier", [
  ...process.argv.slice(2),
  "--log-level",
  "warn",
  "--ignore-path",
  ".gitignore",
  ...code,
]);
process.exitCode = exit;
