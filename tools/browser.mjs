// npm run test:browser -- [PLAYWRIGHT'S ARGUMENTS]: build, serve, and run the browser tests.
import "./lib/node-version.mjs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { findChromium } from "./lib/chromium.mjs";
import { ensurePackages } from "./lib/packages.mjs";
import { root, runCommand } from "./lib/process.mjs";
import { listen, serverOf } from "./server.mjs";

/**
 * Run the browser tests against what is in dist/, from our own server on a free port.
 * @param {{ args?: readonly string[], short?: boolean, report?: string, chromium?: string, minutes?: number, hold?: (text: string) => void }} [options]
 *   short: without the long tests; report: file for Playwright's JSON report; hold: hears what is printed, instead of the terminal
 */
export async function browserTests(options = {}) {
  const { args = [], short = false, report, minutes, hold } = options;
  const chromium = options.chromium ?? (await findChromium());
  const server = serverOf(join(root, "dist"));
  const address = await listen(server, "0");
  try {
    return await runCommand("playwright", ["test", "-c", "tools/playwright.config.ts", ...args], {
      packageName: "@playwright/test",
      env: {
        TRIMWRIGHT_CHROMIUM: chromium,
        TRIMWRIGHT_ADDRESS: address,
        ...(short ? { TRIMWRIGHT_SHORT: "1" } : {}),
        ...(report === undefined ? {} : { TRIMWRIGHT_REPORT: report }),
      },
      ...(minutes === undefined ? {} : { minutes }),
      ...(hold === undefined ? {} : { hold }),
    });
  } finally {
    server.closeAllConnections();
    server.close();
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  await ensurePackages();
  const built = await runCommand("vite", ["build", "--logLevel", "warn"]);
  if (built.code === 0) {
    try {
      process.exitCode = (await browserTests({ args: process.argv.slice(2) })).code;
    } catch (error) {
      console.error(error instanceof Error ? error.message : error);
      process.exitCode = 1;
    }
  } else process.exitCode = built.code;
}
