// No dead code: nothing that nobody uses, and nothing in src that only tests use.
import "./lib/node-version.mjs";
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { root, runCommand, scriptOf } from "./lib/process.mjs";

/** @typedef {{ issues: { file: string, files?: unknown[], exports?: { name: string }[] }[] }} Report of knip, as JSON */
/** @typedef {Record<string, Record<string, string>>} Kept file → export ("*": the file) → why only tests use it */

/**
 * What is wrong: code that the program does not use and the list does not name. What is no longer needed on the list is told
 * beside. Exports of an index.ts do not count: it is the door by which tests come in to a room, too.
 * @param {Report} report of what the program itself uses
 * @param {Kept} kept
 * @returns {{ faults: string[], spent: string[] }}
 */
export function faultsOf(report, kept) {
  const found = report.issues.flatMap(({ file, files = [], exports = [] }) => {
    if (file.endsWith("/index.ts")) return [];
    return files.length > 0 ? [{ file, name: "*" }] : exports.map(({ name }) => ({ file, name }));
  });
  const faults = found
    .filter(({ file, name }) => kept[file]?.[name] === undefined)
    .map(({ file, name }) =>
      name === "*"
        ? `${file}: nothing in src imports this file.`
        : `${file}: nothing in src uses ${name}. Remove it with its tests, move it into the tests, or say why it stays.`,
    );
  const spent = Object.entries(kept).flatMap(([file, names]) =>
    Object.keys(names)
      .filter((name) => !found.some((one) => one.file === file && one.name === name))
      .map(
        (name) => `tools/test-only.json names ${name} of ${file}, which is used or gone: remove the entry.`,
      ),
  );
  return { faults, spent };
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const everything = await runCommand("knip", ["-c", "tools/knip.json"]);
  const program = spawnSync(
    process.execPath,
    [scriptOf("knip"), "--production", "-c", "tools/knip-program.json", "--reporter", "json"],
    { cwd: root, encoding: "utf8", stdio: ["ignore", "pipe", "inherit"], maxBuffer: 1e8 },
  );
  /** @type {Report} */
  const report = JSON.parse(program.stdout);
  /** @type {Kept} */
  const kept = JSON.parse(readFileSync(join(root, "tools/test-only.json"), "utf8"));
  const { faults, spent } = faultsOf(report, kept);
  for (const line of [...faults, ...spent]) console.error(line);
  process.exitCode = everything.code !== 0 || faults.length > 0 ? 1 : 0;
}
