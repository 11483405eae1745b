// The built page in Chromium: how soon its first number and its whole first view are there, how soon a number follows a slider
// in each view, how long a map takes, whether a long run lets it breathe.
import type { Browser, Page } from "@playwright/test";
import { withBuiltPage } from "./lib/built-page";
import { moveSlider } from "./lib/sliders";

declare global {
  interface Window {
    /** Milliseconds since navigation when the first number that answers why was painted. */
    numberAt?: number;
    /** The same for the whole first view: numbers, inputs, and a stage that has drawn. */
    wholeAt?: number;
    /** Tasks of more than 50 ms, ms. */
    longTasks?: number[];
  }
}

/** Moves of a slider in each view. */
const MOVES = 60;

const size = { width: 1440, height: 900 };
const sorted = (times: readonly number[]): number[] => [...times].sort((a, b) => a - b);
const middle = (times: readonly number[]): number => sorted(times)[Math.floor(times.length / 2)] ?? NaN;
const ms = (time: number): string => `${time.toFixed(0)} ms`;

// Scripts for the page stand as text: what runs this file adds helpers to named functions, which a page does not have.

/** The frame after what is looked for stands there shows it. */
const WATCH_FIRST_VIEW = `(function look() {
  const shown = (name) => requestAnimationFrame(() => { window[name] ??= performance.now(); });
  const number = document.querySelector("main button[aria-label$='Why?']") !== null;
  const rest = document.querySelector("aside input") !== null && document.querySelector("[data-renderer=canvas]") !== null;
  if (number) shown("numberAt");
  if (number && rest) shown("wholeAt");
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
async function firstView(browser: Browser, address: string): Promise<{ number: number; whole: number }> {
  return withPage(browser, address, async (page) => {
    await page.addInitScript({ content: WATCH_FIRST_VIEW });
    await page.goto("./");
    await page.waitForFunction(() => window.wholeAt !== undefined);
    return page.evaluate(() => ({ number: window.numberAt ?? NaN, whole: window.wholeAt ?? NaN }));
  });
}

/** Views with sliders, and what is opened there first. With `named` a second slider, which changes the bait and needs no run. */
const SLIDERS: readonly { readonly view: string; readonly opens?: string; readonly named?: string }[] = [
  { view: "draw", opens: "Section" },
  { view: "weigh" },
  { view: "float", named: "Body density, slider" },
  { view: "swim", named: "Body density, slider" },
  { view: "reach", named: "Body density, slider" },
];

/** From a move of a slider to the painted number, in each view that has both. */
async function sliders(browser: Browser, address: string): Promise<void> {
  for (const { view, opens, named } of SLIDERS)
    for (const one of named === undefined ? [null] : [null, named])
      await withPage(browser, address, async (page) => {
        await page.goto(`./#${view}`);
        await page.locator("main button, aside input").first().waitFor();
        if (opens !== undefined) await page.getByRole("button", { name: opens, exact: true }).click();
        // What the view does as it opens (a run, a map, bands) is done then.
        await page.waitForTimeout(5000);
        const found = await moveSlider(page, MOVES, one);
        if (found === null || found.times.length < MOVES) {
          console.log(`slider to painted number, ${view.padEnd(21)}no slider changes a number each time`);
          return;
        }
        const times = sorted(found.times);
        const late = times[Math.ceil(0.95 * times.length) - 1] ?? NaN;
        console.log(
          `slider to painted number, ${view.padEnd(21)}${ms(late)} at p95 (asked 30 ms; median ${ms(middle(times))}; ${found.slider})`,
        );
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

await withBuiltPage(async (browser, address) => {
  const views: { number: number; whole: number }[] = [];
  const blanks: number[] = [];
  for (let i = 0; i < 5; i++) {
    blanks.push(await blank(browser, address));
    views.push(await firstView(browser, address));
  }
  const empty = middle(blanks);
  for (const [label, asked, all] of [
    ["first number painted, nothing kept from before", 1000, views.map((one) => one.number)],
    ["whole first view, nothing kept from before", 2000, views.map((one) => one.whole)],
  ] as const)
    console.log(
      `${label.padEnd(47)}${ms(middle(all))} (asked ${ms(asked)}; ${all.map(ms).join(", ")}); ratio to a blank page ${(middle(all) / empty).toFixed(1)}`,
    );
  console.log(`  a page with nothing on it                    ${ms(empty)}`);
  await sliders(browser, address);
  const times = await maps(browser, address);
  console.log(
    `map of 25 × 12 on the page, two workers        ${ms(middle(times))} (asked 2000 ms; ${times.map(ms).join(", ")})`,
  );
  const run = await tenMinutes(browser, address);
  console.log(
    `ten minutes of swim recorded                   ${ms(run.took)}; the page's longest task ${ms(run.longest)}`,
  );
});
