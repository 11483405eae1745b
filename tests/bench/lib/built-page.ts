import { join } from "node:path";
import { chromium, type Browser } from "@playwright/test";
import { findChromium } from "../../../tools/lib/chromium.mjs";
import { root, runCommand } from "../../../tools/lib/process.mjs";
import { listen, serverOf } from "../../../tools/server.mjs";

/** Builds and serves the page, and measures it in a Chromium of its own. A build that fails ends the program. */
export async function withBuiltPage(
  measure: (browser: Browser, address: string) => Promise<void>,
): Promise<void> {
  if ((await runCommand("vite", ["build", "--logLevel", "error"])).code !== 0) process.exit(1);
  const server = serverOf(join(root, "dist"));
  const address = await listen(server, "0");
  const browser = await chromium.launch({
    executablePath: await findChromium(),
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
    ],
  });
  try {
    await measure(browser, address);
  } finally {
    await browser.close();
    server.closeAllConnections();
    server.close();
  }
}
