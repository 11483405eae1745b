// The built page in Chromium: how soon its first view is usable, how long a map takes, whether a long run lets it breathe.
import { join } from "node:path";
import { chromium, type Browser, type Page } from "@playwright/test";
import { findChromium } from "../../tools/lib/chromium.mjs";
import { root, runCommand } from "../../tools/lib/process.mjs";
import { listen, serverOf } from "../../tools/server.mjs";

declare global {
  interface Window {
    /** Milliseconds since navigation when the verdict and the inputs first stood on the page. */
    usableAt?: number;
    /** Tasks of more than 50 ms, ms. */
    longTasks?: number[];
  }
}

const size = { width: 1440, height: 900 };
const sorted = (times: readonly number[]): number[] => [...times].sort((a, b) => a - b);
const middle = (times: readonly number[]): number => sorted(times)[Math.floor(times.length / 2)] ?? NaN;
const ms = (time: number): string => `${time.toFixed(0)} ms`;

// Scripts for the page stand as text: what runs this file adds helpers to named functions, which a page does not have.

/** The next frame after the verdict and the inputs stand there shows them. */
const WATCH_FIRST_VIEW = `(function look() {
  const ready = document.querySelector("main button") !== null && document.querySelector("aside input") !== null;
  if (ready) requestAnimationFrame(() => { window.usableAt = performance.now(); });
  else requestAnimationFrame(look);
})()`;

/** From the first sight of the map's progress to its end, ms. */
const WATCH_MAP = `new Promise((resolve) => {
  let since = 0;
  (function look() {
    const running = document.querySelector("progress") !== null;
    if (running && since === 0) since = performance.now();
    if (!running && since > 0) resolve(performance.now() - since);
    else requestAnimationFrame(look);
  })();
})`;

async function withPage<T>(browser: Browser, address: string, work: (page: Page) => Promise<T>): Promise<T> {
  const context = await browser.newContext({ viewport: size, baseURL: address, reducedMotion: "reduce" });
  try {
    return await work(await context.newPage());
  } finally {
    await context.close();
  }
}

/** Nothing kept from before: as for somebody who comes for the first time. */
async function firstView(browser: Browser, address: string): Promise<number> {
  return withPage(browser, address, async (page) => {
    await page.addInitScript({ content: WATCH_FIRST_VIEW });
    await page.goto("./");
    await page.waitForFunction(() => window.usableAt !== undefined);
    return (await page.evaluate(() => window.usableAt)) ?? NaN;
  });
}

/** A page with nothing on it, from the same server: what the browser itself takes. */
async function blank(browser: Browser, address: string): Promise<number> {
  return withPage(browser, address, async (page) => {
    await page.goto("./scenario.schema.json");
    return page.evaluate(
      () => new Promise<number>((resolve) => requestAnimationFrame(() => resolve(performance.now()))),
    );
  });
}

async function changeAngle(page: Page, angle: number): Promise<void> {
  const field = page
    .getByRole("complementary", { name: "Inputs" })
    .getByRole("textbox", { name: "Bib angle", exact: true });
  await field.fill(String(angle));
  await field.press("Enter");
}

async function maps(browser: Browser, address: string): Promise<number[]> {
  return withPage(browser, address, async (page) => {
    await page.goto("./#reach");
    await page
      .getByRole("img", { name: /^Depth against tie eye height: runs from/ })
      .waitFor({ timeout: 60_000 });
    const times: number[] = [];
    for (const angle of [35, 36, 37, 38, 39]) {
      const took = page.evaluate<number>(WATCH_MAP);
      await changeAngle(page, angle);
      times.push(await took);
      await page.waitForTimeout(1500);
    }
    return times;
  });
}

async function tenMinutes(browser: Browser, address: string): Promise<{ took: number; longest: number }> {
  return withPage(browser, address, async (page) => {
    const csv = page.locator("button:enabled", { hasText: "CSV" });
    await page.goto("./#swim");
    await csv.waitFor();
    const moves = page.getByRole("listbox", { name: "Moves of the cadence" }).getByRole("option");
    await moves.nth(2).click();
    await moves.nth(4).click({ modifiers: ["Shift"] });
    await page.getByLabel("Times in a row").fill("56");
    await page.evaluate(() => {
      const all: number[] = [];
      window.longTasks = all;
      new PerformanceObserver((list) => all.push(...list.getEntries().map((one) => one.duration))).observe({
        entryTypes: ["longtask"],
      });
    });
    const since = performance.now();
    await page.getByRole("button", { name: "Repeat these 3" }).click();
    await page.locator("button:disabled", { hasText: "CSV" }).waitFor();
    await csv.waitFor({ timeout: 120_000 });
    const took = performance.now() - since;
    return { took, longest: await page.evaluate(() => Math.max(0, ...(window.longTasks ?? []))) };
  });
}

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
  const views: number[] = [];
  const blanks: number[] = [];
  for (let i = 0; i < 5; i++) {
    blanks.push(await blank(browser, address));
    views.push(await firstView(browser, address));
  }
  const [view, empty] = [middle(views), middle(blanks)];
  console.log(
    `first view usable, nothing kept from before   ${ms(view)} (asked 2000 ms; ${views.map(ms).join(", ")})`,
  );
  console.log(
    `  a page with nothing on it                    ${ms(empty)}; ratio ${(view / empty).toFixed(1)}`,
  );
  const times = await maps(browser, address);
  console.log(
    `map of 25 × 12 on the page, two workers        ${ms(middle(times))} (asked 2000 ms; ${times.map(ms).join(", ")})`,
  );
  const run = await tenMinutes(browser, address);
  console.log(
    `ten minutes of swim recorded                   ${ms(run.took)}; the page's longest task ${ms(run.longest)}`,
  );
} finally {
  await browser.close();
  server.closeAllConnections();
  server.close();
}
