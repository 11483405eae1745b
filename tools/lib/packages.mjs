import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { root, run } from "./process.mjs";

/** @typedef {{ packages: Record<string, { version?: string, integrity?: string, optional?: boolean }> }} Lock */

/**
 * Why the installed packages are not those of the lock file, or null where they are.
 * npm keeps a record of what it installed in node_modules/.package-lock.json, written last.
 * @param {string} folder the project's root
 * @returns {string | null}
 */
export function whyStale(folder) {
  const record = join(folder, "node_modules", ".package-lock.json");
  if (!existsSync(record)) return "no packages are installed yet";
  /** @type {Lock} */
  const wanted = JSON.parse(readFileSync(join(folder, "package-lock.json"), "utf8"));
  /** @type {Lock} */
  const installed = JSON.parse(readFileSync(record, "utf8"));
  for (const [path, entry] of Object.entries(wanted.packages)) {
    if (path === "") continue;
    const found = installed.packages[path];
    // Optional packages are for other systems, and may be absent here.
    if (found === undefined) {
      if (entry.optional === true) continue;
      return `${path} is not installed`;
    }
    if (found.version !== entry.version || found.integrity !== entry.integrity)
      return `${path} is ${String(found.version)}, the lock file says ${String(entry.version)}`;
    if (!existsSync(join(folder, path))) {
      if (entry.optional === true) continue;
      return `${path} has gone`;
    }
  }
  return null;
}

/**
 * Install the locked packages where they are missing or stale. What npm says goes to standard error.
 * Ends the process with a sentence where that fails.
 */
export async function ensurePackages() {
  const why = whyStale(root);
  if (why === null) return;
  console.error(`Installing packages (${why}) …`);
  // npm tells the scripts that it runs where it lives; elsewhere it is found by name.
  const own = process.env["npm_execpath"];
  const args = ["ci", "--no-audit", "--no-fund", "--loglevel=error"];
  const { code, why: failure } =
    own !== undefined && /npm-cli\.c?js$/.test(own)
      ? await run(process.execPath, [own, ...args], { stdout: "stderr" })
      : await run("npm", args, { stdout: "stderr", shell: process.platform === "win32" });
  if (code !== 0) {
    console.error(
      `The packages could not be installed (npm ci: ${failure ?? `exit code ${String(code)}`}). ` +
        "Check the network and the message above, then run the command again.",
    );
    process.exit(1);
  }
}
