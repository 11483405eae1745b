import { gzipSync } from "node:zlib";
import { expect, test } from "./fixture";
import { net, recorded } from "./page";

/** Milliseconds from navigation to a verdict that can be read and fields that can be changed. */
const USABLE_MS = 2000;
/** Tries, the best of which counts: other tests and programs share the machine, and can only make it slower. */
const TRIES = 3;
/** Bytes of JavaScript, gzipped, that the opening page loads for itself: start, stage and drawing engine. */
const PAGE_LIMIT = 350_000;

declare global {
  interface Window {
    /** Milliseconds since navigation when the verdict and the inputs first stood on the page. */
    usableAt?: number;
  }
}

test("the first view is usable soon", async ({ page }) => {
  await page.addInitScript(() => {
    const look = (): void => {
      const ready =
        document.querySelector("main button") !== null && document.querySelector("aside input") !== null;
      // The next frame shows what stands there now.
      if (ready) requestAnimationFrame(() => (window.usableAt = performance.now()));
      else requestAnimationFrame(look);
    };
    look();
  });
  const times: number[] = [];
  for (let i = 0; i < TRIES; i++) {
    await page.goto("./");
    await expect(net(page)).toBeVisible();
    await page.waitForFunction(() => window.usableAt !== undefined);
    times.push((await page.evaluate(() => window.usableAt)) ?? Infinity);
  }
  test.info().annotations.push({ type: "milliseconds until usable", description: times.join(", ") });
  expect(Math.min(...times)).toBeLessThan(USABLE_MS);
});

test("the first view is light", async ({ context, page }) => {
  const loads: Promise<{ url: string; bytes: number }>[] = [];
  context.on("response", (response) => {
    if (!/javascript/.test(response.headers()["content-type"] ?? "")) return;
    loads.push(
      response.body().then((body) => ({ url: response.url(), bytes: gzipSync(body, { level: 9 }).length })),
    );
  });
  await page.goto("./");
  // The stage has drawn with its engine, and the worker has recorded a whole run: nothing more is coming.
  await expect(page.locator("[data-renderer=webgl], [data-renderer=canvas]").first()).toBeVisible();
  await recorded(page);

  const scripts = await Promise.all(loads);
  // Workers load beside the page, which does not wait for them.
  const workers = new Set(page.workers().map((worker) => worker.url()));
  const own = scripts.filter(({ url }) => !workers.has(url));
  expect(workers.size).toBeGreaterThan(0);
  expect(own.length).toBeGreaterThan(0);
  const total = own.reduce((sum, { bytes }) => sum + bytes, 0);
  test.info().annotations.push({ type: "bytes of JavaScript, gzipped", description: String(total) });
  expect(total).toBeLessThanOrEqual(PAGE_LIMIT);
});
