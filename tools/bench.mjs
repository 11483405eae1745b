// npm run bench [-- NAME …]: runs the benchmarks one after the other; a whole run is kept in tests/bench/results.md.
import "./lib/node-version.mjs";
import { spawnSync } from "node:child_process";
import { readdirSync, writeFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import { basename, join } from "node:path";
import { ensurePackages } from "./lib/packages.mjs";
import { root, scriptOf } from "./lib/process.mjs";

await ensurePackages();

const folder = join(root, "tests/bench");
const all = readdirSync(folder).filter((name) => name.endsWith(".ts"));
const asked = process.argv.slice(2);
const chosen = asked.length === 0 ? all : all.filter((name) => asked.includes(basename(name, ".ts")));
if (chosen.length === 0) {
  console.error(
    `There is no such benchmark. There are: ${all.map((name) => basename(name, ".ts")).join(", ")}.`,
  );
  process.exit(2);
}

const sections = [];
for (const name of chosen) {
  console.log(`── ${name}`);
  const { status, stdout } = spawnSync(process.execPath, [scriptOf("tsx"), join(folder, name)], {
    cwd: root,
    encoding: "utf8",
    stdio: ["ignore", "pipe", "inherit"],
    timeout: 300_000,
  });
  console.log(stdout);
  if (status !== 0) {
    console.error(`${name} failed; no result is kept.`);
    process.exit(1);
  }
  sections.push(`## ${basename(name, ".ts")}\n\n\`\`\`text\n${stdout.trim()}\n\`\`\`\n`);
}

if (asked.length === 0) {
  const head =
    "# Benchmark results\n\nWritten by `npm run bench`. Absolute figures belong to the machine " +
    `(Node ${process.versions.node}, ${String(availableParallelism())} cores); compare ratios, which stand within one run.\n`;
  writeFileSync(join(folder, "results.md"), [head, ...sections].join("\n"));
  console.log("Kept in tests/bench/results.md.");
}
