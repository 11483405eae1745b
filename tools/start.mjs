// npm start: install what is missing, build, serve, and say where.
import "./lib/node-version.mjs";
import { join } from "node:path";
import { ensurePackages } from "./lib/packages.mjs";
import { root, runCommand } from "./lib/process.mjs";
import { serve } from "./server.mjs";

await ensurePackages();
const { code, why } = await runCommand("vite", ["build", "--logLevel", "warn"]);
if (code !== 0) {
  console.error(
    `The page could not be built (${why ?? `exit code ${String(code)}`}): see the message above.`,
  );
  process.exit(1);
}
try {
  console.log(`Trimwright is at ${await serve(join(root, "dist"))}  (Ctrl+C ends it)`);
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
