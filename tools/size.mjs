// Weighs the built JavaScript as it would cross a network (gzip), and holds the page's start to a limit.
// What the first view loads in all, the drawing engine too, is measured in a browser: tests/e2e/first-view.spec.ts.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { gzipSync } from "node:zlib";
import { root } from "./lib/process.mjs";

/** Bytes, gzipped. */
const limit = 350_000;

/** @typedef {{ file: string, isEntry?: boolean, imports?: string[] }} Chunk */

/**
 * Files that a chunk brings in at once: itself and all that it imports, directly or not.
 * @param {Record<string, Chunk>} manifest
 * @param {string} start key
 * @returns {string[]}
 */
export function filesOf(manifest, start) {
  const seen = new Set([start]);
  // A set hands out what is added to it while it is walked.
  for (const key of seen) for (const next of manifest[key]?.imports ?? []) seen.add(next);
  return [...seen].map((key) => {
    const chunk = manifest[key];
    if (chunk === undefined) throw new Error(`The build's manifest names ${key} without saying what it is.`);
    return chunk.file;
  });
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const dist = join(root, "dist");
  /** @type {Record<string, Chunk>} */
  const manifest = JSON.parse(readFileSync(join(dist, ".vite/manifest.json"), "utf8"));
  const weight = (/** @type {string} */ file) =>
    gzipSync(readFileSync(join(dist, file)), { level: 9 }).length;
  const kB = (/** @type {number} */ bytes) => `${(bytes / 1000).toFixed(1)} kB`;

  // The service worker is an entry too, but no part of the page.
  const entries = Object.keys(manifest).filter(
    (key) => manifest[key]?.isEntry === true && key.endsWith(".html"),
  );
  if (entries.length === 0) throw new Error("The build's manifest has no entry.");
  const files = [...new Set(entries.flatMap((key) => filesOf(manifest, key)))];
  const total = files.reduce((sum, file) => sum + weight(file), 0);
  for (const file of files) console.log(`${kB(weight(file)).padStart(10)}  ${file}`);
  console.log(`${kB(total).padStart(10)}  the page's start, gzipped; the limit is ${kB(limit)}`);
  if (total > limit) {
    console.error(
      `The page's start is ${kB(total - limit)} too heavy: load what the first view does not need later.`,
    );
    process.exitCode = 1;
  }
}
