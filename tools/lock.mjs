// The lock file must work wherever packages come from: it names no registry.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { root } from "./lib/process.mjs";

/**
 * What is wrong with a lock file and the package.json that goes with it; empty where nothing is.
 * @param {string} lock
 * @param {string} described
 * @returns {string[]}
 */
export function faultsOf(lock, described) {
  const faults = [];
  if (lock.includes('"resolved"'))
    faults.push(
      'package-lock.json says where packages were fetched ("resolved"). ' +
        "Remove it and run npm install: .npmrc leaves those lines out.",
    );
  /** @type {{ packages: Record<string, { integrity?: string, link?: boolean, inBundle?: boolean }> }} */
  const { packages } = JSON.parse(lock);
  for (const [path, entry] of Object.entries(packages))
    if (path !== "" && entry.link !== true && entry.inBundle !== true && entry.integrity === undefined)
      faults.push(`package-lock.json: ${path} has no checksum ("integrity").`);
  /** @type {{ dependencies?: Record<string, string>, devDependencies?: Record<string, string> }} */
  const { dependencies = {}, devDependencies = {} } = JSON.parse(described);
  for (const [name, version] of Object.entries({ ...dependencies, ...devDependencies }))
    if (!/^\d+\.\d+\.\d+(-[\w.]+)?$/.test(version))
      faults.push(`package.json: ${name} is "${version}"; pin one exact version.`);
  return faults;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const read = (/** @type {string} */ name) => readFileSync(join(root, name), "utf8");
  const faults = faultsOf(read("package-lock.json"), read("package.json"));
  for (const fault of faults) console.error(fault);
  if (faults.length === 0) console.log("Every package is pinned and has its checksum; no registry is named.");
  process.exitCode = faults.length === 0 ? 0 : 1;
}
