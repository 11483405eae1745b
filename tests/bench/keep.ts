// The list of own baits in Chromium: how long a file of 200 takes to come in, and whether a list of 500 scrolls at 60 frames.
import type { Browser, Page } from "@playwright/test";
import { withBuiltPage } from "./lib/built-page";
import { fileOf, inventedBaits } from "./lib/many-baits";

const IN_FILE = 200;
const IN_LIST = 500;
/** Time between two pictures at 60 a second, ms. */
const FRAME = 1000 / 60;

const sorted = (times: readonly number[]): number[] => [...times].sort((a, b) => a - b);
const share = (times: readonly number[], of: number): number =>
  sorted(times)[Math.min(times.length - 1, Math.floor(times.length * of))] ?? NaN;

/** Far more than a hand scrolls: at 60 pictures a second the whole list passes in seven seconds. */
const STRIDE = 100;

// Scripts for the page stand as text: what runs this file adds helpers to named functions, which a page does not have.

/** Scrolls to the end, one stride a picture. Gives the times from one picture to the next, ms. */
const SCROLL = `(async (selector, stride) => {
  const place = document.querySelector(selector);
  const turn = () => new Promise((then) => requestAnimationFrame(then));
  const between = [];
  place.scrollTop = 0;
  for (let i = 0; i < 30; i++) await turn();
  let was = await turn();
  for (;;) {
    const before = place.scrollTop;
    place.scrollTop = before + stride;
    const now = await turn();
    between.push(now - was);
    was = now;
    if (place.scrollTop === before) return between;
  }
})`;

/** What the page's own thread has worked so far, ms: the time that other programs took from it does not count. */
async function workOf(page: Page): Promise<() => Promise<number>> {
  const protocol = await page.context().newCDPSession(page);
  await protocol.send("Performance.enable", { timeDomain: "threadTicks" });
  return async () => {
    const { metrics } = await protocol.send("Performance.getMetrics");
    return 1000 * (metrics.find(({ name }) => name === "TaskDuration")?.value ?? NaN);
  };
}

/** As many plain rows as the list has, in a page of their own: what the browser and the machine allow. */
const PLAIN = `<main style="height: 80vh; overflow: auto">${Array.from(
  { length: IN_LIST },
  (_, i) => `<p style="height: 5.5rem">Row ${String(i)}</p>`,
).join("")}</main>`;

async function takeOver(page: Page, text: string, name: string): Promise<void> {
  const summary = page.getByRole("dialog").locator("summary", { hasText: "Many baits in one file" });
  if (!(await page.getByRole("button", { name: /^Take over/ }).isVisible())) await summary.click();
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    page.getByRole("button", { name: /^Take over/ }).click(),
  ]);
  await chooser.setFiles({ name, mimeType: "application/json", buffer: Buffer.from(text) });
}

const told = (page: Page, file: string): Promise<unknown> =>
  page
    .getByRole("dialog")
    .getByText(new RegExp(`^From ${file}: `))
    .waitFor({ timeout: 120_000 });

async function measure(browser: Browser, address: string): Promise<void> {
  const context = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    baseURL: address,
    serviceWorkers: "block",
  });
  try {
    const page = await context.newPage();
    await page.addInitScript("delete globalThis.showOpenFilePicker");
    const worked = await workOf(page);
    const baits = inventedBaits(IN_LIST);
    const [first, rest] = [fileOf(baits.slice(0, IN_FILE)), fileOf(baits.slice(IN_FILE))];

    await page.goto("./");
    // What the browser takes to read the same text, for the ratio.
    const parse = await page.evaluate<number>(
      `((text) => { const since = performance.now(); JSON.parse(text); return performance.now() - since; })(${JSON.stringify(first)})`,
    );
    const times: { readonly whole: number; readonly own: number }[] = [];
    for (let round = 0; round < 3; round++) {
      // Each time into a browser that keeps nothing yet.
      if (round > 0) {
        await page.goto("about:blank");
        const protocol = await context.newCDPSession(page);
        await protocol.send("Storage.clearDataForOrigin", { origin: address, storageTypes: "all" });
        await page.goto("./");
      }
      await page.getByRole("button", { name: "My baits", exact: true }).click();
      const [since, before] = [performance.now(), await worked()];
      await takeOver(page, first, "first.json");
      await told(page, "first.json");
      await page.getByText(`${String(IN_FILE)} baits`, { exact: true }).waitFor();
      times.push({ whole: performance.now() - since, own: (await worked()) - before });
    }
    const [whole, own] = [
      share(
        times.map((one) => one.whole),
        0.5,
      ),
      share(
        times.map((one) => one.own),
        0.5,
      ),
    ];
    console.log(
      `file of ${String(IN_FILE)} baits taken over   ${whole.toFixed(0)} ms (asked 5000 ms; ${times.map((one) => one.whole.toFixed(0)).join(", ")})`,
    );
    console.log(
      `  work of the page's own thread     ${own.toFixed(0)} ms; its text alone is read in ${parse.toFixed(0)} ms, ratio ${(own / parse).toFixed(0)}`,
    );

    await takeOver(page, rest, "rest.json");
    await told(page, "rest.json");
    await page.getByText(`${String(IN_LIST)} baits`, { exact: true }).waitFor();
    const plain = await context.newPage();
    await plain.setContent(PLAIN);
    const plainWorked = await workOf(plain);
    console.log(
      `scrolled, ${String(STRIDE)} px a picture        pictures   between: middle       p95       late   own work a picture   asked   ratio`,
    );
    for (const [words, one, selector, work] of [
      [`${String(IN_LIST)} plain rows`, plain, "main", plainWorked],
      [`${String(IN_LIST)} baits, first time`, page, "dialog .body", worked],
      [`${String(IN_LIST)} baits, once more`, page, "dialog .body", worked],
    ] as const) {
      await one.bringToFront();
      const before = await work();
      const between = await one.evaluate<number[]>(
        `${SCROLL}(${JSON.stringify(selector)}, ${String(STRIDE)})`,
      );
      const each = ((await work()) - before) / between.length;
      const ms = (time: number): string => `${time.toFixed(1)} ms`;
      console.log(
        [
          words.padEnd(30),
          String(between.length).padStart(10),
          ms(share(between, 0.5)).padStart(18),
          ms(share(between, 0.95)).padStart(10),
          String(between.filter((time) => time > 1.5 * FRAME).length).padStart(11),
          ms(each).padStart(21),
          ms(FRAME).padStart(8),
          (FRAME / each).toFixed(1).padStart(8),
        ].join(""),
      );
    }
  } finally {
    await context.close();
  }
}

await withBuiltPage(measure);
