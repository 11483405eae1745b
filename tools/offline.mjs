// Builds the page's service worker (src/ui/offline/worker.ts) with the list of all files that it is to keep.
import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join, sep } from "node:path";
import { root } from "./lib/process.mjs";

/** Stands beside the page: a service worker reaches no further than its own folder. */
export const workerFile = "offline.js";

/**
 * What the worker keeps, and a name for exactly this. Files whose name starts with a dot are not for the page.
 * @param {ReadonlyMap<string, string | Uint8Array>} files by address
 */
export function releaseOf(files) {
  const kept = [...files.keys()]
    .filter((path) => path !== "index.html" && path !== workerFile)
    .filter((path) => !path.split("/").some((part) => part.startsWith(".")) && !path.endsWith(".map"))
    .sort();
  const hash = createHash("sha256");
  for (const path of [...kept, "index.html", workerFile]) {
    const content = files.get(path) ?? "";
    hash.update(`${path}\n${String(content.length)}\n`).update(content);
  }
  return { release: hash.digest("hex").slice(0, 16), files: kept.map((path) => encodeURI(path)) };
}

/** @returns {import("vite").Plugin} */
export function offline() {
  let folder = "";
  return {
    name: "trimwright:offline",
    apply: "build",
    configResolved({ publicDir }) {
      folder = publicDir;
    },
    buildStart() {
      this.emitFile({ type: "chunk", id: join(root, "src/ui/offline/worker.ts"), fileName: workerFile });
    },
    generateBundle: {
      // After all others: only then are all files there.
      order: "post",
      handler(_options, bundle) {
        /** @type {Map<string, string | Uint8Array>} */
        const files = new Map();
        for (const path of readdirSync(folder, { recursive: true, withFileTypes: true }))
          if (path.isFile()) {
            const file = join(path.parentPath, path.name);
            files.set(
              file
                .slice(folder.length + 1)
                .split(sep)
                .join("/"),
              readFileSync(file),
            );
          }
        for (const one of Object.values(bundle))
          files.set(one.fileName, one.type === "chunk" ? one.code : one.source);
        const worker = bundle[workerFile];
        if (worker?.type !== "chunk") throw new Error(`The build made no ${workerFile}.`);
        worker.code = `const BUILT=${JSON.stringify(releaseOf(files))};${worker.code}`;
      },
    },
  };
}
