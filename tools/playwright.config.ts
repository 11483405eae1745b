import { defineConfig } from "@playwright/test";
import { root } from "./lib/process.mjs";
import { networkAddresses } from "./server.mjs";

// Set by tools/browser.mjs, which finds a browser and serves the built page.
const executablePath = process.env["TRIMWRIGHT_CHROMIUM"] ?? "";
const baseURL = process.env["TRIMWRIGHT_ADDRESS"] ?? "";
if (executablePath === "" || baseURL === "")
  throw new Error("Run the browser tests with: npm run test:browser -- [PLAYWRIGHT'S ARGUMENTS]");

/** The addresses of this machine: nothing else is reached. */
const known = ["127.0.0.1", "localhost", ...networkAddresses("127.0.0.1")];

const report = process.env["TRIMWRIGHT_REPORT"];
/** `npm test` leaves out what is long: see DEVELOPERS.md. */
const short = process.env["TRIMWRIGHT_SHORT"] !== undefined;

export default defineConfig({
  testDir: `${root}tests/e2e`,
  outputDir: `${root}test-results`,
  fullyParallel: true,
  forbidOnly: true,
  // In `npm test` alone: what passes only at a second try is counted and named, and stops nobody.
  retries: short ? 1 : 0,
  workers: 2,
  // Only what hangs is stopped: a slow machine is none of a test's business.
  timeout: 300_000,
  expect: { timeout: 60_000 },
  reporter: [["list"], ...(report === undefined ? [] : [["json", { outputFile: report }] as const])],
  use: {
    baseURL,
    locale: "en-GB",
    timezoneId: "UTC",
    screenshot: "only-on-failure",
    trace: "off",
    launchOptions: {
      executablePath,
      timeout: 120_000,
      // Nothing leaves the machine, and drawing in software is faster than an emulated graphics card.
      args: [
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        // One process for all pages: each finds compiled what the one before it has loaded.
        "--renderer-process-limit=1",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        `--host-resolver-rules=MAP * ~NOTFOUND, ${known.map((one) => `EXCLUDE ${one}`).join(", ")}`,
      ],
    },
  },
  // All tests on a desk; on a phone those whose page differs there, or that a finger does another way.
  projects: [
    {
      name: "wide",
      grepInvert: short ? /@phone-only|@long/ : /@phone-only/,
      use: { viewport: { width: 1440, height: 900 } },
    },
    {
      name: "phone",
      grep: short ? /@phone(?!-long)/ : /@phone/,
      ...(short ? { grepInvert: /@long/ } : {}),
      use: { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true },
    },
  ],
});
