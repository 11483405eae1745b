// npm run -s answer -- FILE …: the headless command. Standard output belongs to the answer alone.
import "./lib/node-version.mjs";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { ensurePackages } from "./lib/packages.mjs";
import { root } from "./lib/process.mjs";

const cache = join(root, "node_modules/.cache/trimwright");

/** Hash of all that goes into the command: its sources, and the versions of its packages. */
function fingerprint() {
  const hash = createHash("sha256");
  const sources = ["languages", "model", "document", "units", "lesson", "drawing", "sheet", "runner"].flatMap(
    (folder) =>
      readdirSync(join(root, "src", folder), { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile())
        .map((entry) => join(entry.parentPath, entry.name)),
  );
  const others = ["package-lock.json", "tsconfig.json", "tools/answer.mjs"].map((name) => join(root, name));
  for (const file of [...sources.sort(), ...others])
    hash.update(file).update("\0").update(readFileSync(file));
  return hash.digest("hex").slice(0, 20);
}

/** The command as one script, made once for each state of the sources: it starts three times as fast. */
async function bundled() {
  const file = join(cache, `answer-${fingerprint()}.mjs`);
  if (existsSync(file)) return file;
  const { build } = await import("esbuild");
  mkdirSync(cache, { recursive: true });
  for (const old of readdirSync(cache))
    if (old.startsWith("answer-")) rmSync(join(cache, old), { force: true });
  // Written beside and moved into place, so that two commands at once never meet a half-written file.
  const draft = `${file}.${String(process.pid)}`;
  await build({
    absWorkingDir: root,
    entryPoints: ["src/runner/cli.ts"],
    outfile: draft,
    bundle: true,
    platform: "node",
    format: "esm",
    target: "node20",
    sourcemap: "inline",
    logLevel: "warning",
    // The PDF library names them for what the sheets do not use. The solid library reads a file that lies beside it.
    external: ["html2canvas", "dompurify", "canvg", "manifold-3d"],
    // Some packages are still CommonJS inside and ask for Node's modules by `require`.
    banner: {
      js: 'import { createRequire as requireFrom } from "node:module"; const require = requireFrom(import.meta.url);',
    },
  });
  renameSync(draft, file);
  return file;
}

await ensurePackages();
const script = await bundled().catch(() => {
  console.error("The command could not be put together: see the message above.");
  process.exit(1);
});
// npm starts scripts in the project's root; the names of files are meant from where the user is.
const { npm_lifecycle_event: event, INIT_CWD: where } = process.env;
if (event === "answer" && where !== undefined) process.chdir(where);
process.setSourceMapsEnabled(true);
process.argv.splice(1, 1, script);
await import(pathToFileURL(script).href);
