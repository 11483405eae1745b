// node tools/typed-lint.mjs: the lint rules of oxlint.json, over all TypeScript and JavaScript. Many of them need types:
// the native compiler gives these in a tenth of the time. What oxlint.json does not name, and components, are ESLint's.
import "./lib/node-version.mjs";
import { spawnSync } from "node:child_process";
import { existsSync, readFileSync, readdirSync } from "node:fs";
import { createRequire } from "node:module";
import { join, relative, sep } from "node:path";
import { pathToFileURL } from "node:url";
import { root, run, scriptOf } from "./lib/process.mjs";

/** Folders and files whose code is looked at. The deliberate breaches of rules are no code of ours. */
const places = ["src", "tests", "tools", "vite.config.ts", "vitest.config.ts", "svelte.config.js"];
const sins = "tests/rules/sins";
const code = /\.(ts|mjs|js)$/;

/**
 * Rules that the checker of types has and that oxlint's settings cannot name yet: the checker is asked itself. When a newer
 * oxlint takes the name, it goes into oxlint.json, and `beside` with all that belongs to it goes out of this file.
 */
export const besides = ["no-unsafe-class-instance-assignment"];

/** @param {string} place @returns {string[]} paths of all code in it, from the root on */
function codeIn(place) {
  if (code.test(place)) return existsSync(join(root, place)) ? [place] : [];
  return readdirSync(join(root, place), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && code.test(entry.name))
    .map((entry) => relative(root, join(entry.parentPath, entry.name)).split(sep).join("/"))
    .filter((file) => !file.startsWith(`${sins}/`));
}

/** The program of the checker of types, which comes as a package of its own for each system. */
function checker() {
  const own = createRequire(scriptOf("tsgolint", "oxlint-tsgolint"));
  const name = `tsgolint${process.platform === "win32" ? ".exe" : ""}`;
  return own.resolve(`@oxlint-tsgolint/${process.platform}-${process.arch}/${name}`);
}

/**
 * Faults against the rules `besides`. The checker is given its work as JSON and answers in messages: four bytes of length,
 * one byte of kind (1: a fault), and JSON.
 * @param {readonly string[]} files paths from the root on
 * @param {Record<string, string>} [instead] texts to read in place of what is in a file
 */
export function beside(files, instead = {}) {
  const whole = (/** @type {string} */ file) => join(root, file);
  const job = {
    version: 2,
    configs: [{ file_paths: files.map(whole), rules: besides.map((name) => ({ name })) }],
    source_overrides: Object.fromEntries(Object.entries(instead).map(([file, text]) => [whole(file), text])),
  };
  const { status, stdout, stderr, error } = spawnSync(checker(), ["headless"], {
    input: JSON.stringify(job),
    maxBuffer: 1e8,
  });
  if (status !== 0) throw new Error(`The checker of types failed: ${error?.message ?? String(stderr)}`);
  const faults = [];
  for (let at = 0; at < stdout.length; at += 5 + stdout.readUInt32LE(at)) {
    const text = stdout.subarray(at + 5, at + 5 + stdout.readUInt32LE(at)).toString("utf8");
    if (stdout[at + 4] !== 1) throw new Error(`The checker of types says: ${text}`);
    /** @type {{ file_path: string, rule: string, range: { pos: number }, message: { description: string } }} */
    const { file_path: path, rule, range, message } = JSON.parse(text);
    const file = relative(root, path).split(sep).join("/");
    // Its places are counted in bytes.
    const before = Buffer.from(instead[file] ?? readFileSync(path)).subarray(0, range.pos);
    faults.push({ file, line: before.toString("utf8").split("\n").length, rule, words: message.description });
  }
  return faults;
}

/**
 * Oxlint over these places, with the types.
 * @param {readonly string[]} where
 * @param {readonly string[]} [more] further arguments
 * @param {Parameters<typeof run>[2]} [options]
 */
export const oxlint = (where, more = [], options = {}) =>
  run(
    process.execPath,
    [
      ...[scriptOf("oxlint"), "-c", join(root, "tools/oxlint.json"), "--type-aware", "--deny-warnings"],
      ...["--report-unused-disable-directives", "--disable-nested-config"],
      ...["--ignore-pattern", `${sins}/**`, "--ignore-pattern", "**/*.svelte", ...more, ...where],
    ],
    options,
  );

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const { code: exit } = await oxlint(places);
  const faults = beside(places.flatMap(codeIn));
  for (const { file, line, rule, words } of faults)
    console.error(`${file}:${String(line)}: ${words} (${rule})`);
  process.exitCode = exit !== 0 || faults.length > 0 ? 1 : 0;
}
