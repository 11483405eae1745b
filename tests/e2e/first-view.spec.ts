import { gzipSync } from "node:zlib";
import { expect, test } from "./fixture";
import { recorded } from "./page";

/** Bytes of JavaScript, gzipped, that the opening page loads for itself: start, stage and drawing engine. */
const PAGE_LIMIT = 350_000;

test("the first view is light", async ({ page }) => {
  const loads: Promise<{ url: string; bytes: number; german: boolean }>[] = [];
  page.on("response", (response) => {
    if (!/javascript/.test(response.headers()["content-type"] ?? "")) return;
    loads.push(
      response.body().then((body) => ({
        url: response.url(),
        bytes: gzipSync(body, { level: 9 }).length,
        german: body.toString().includes("Köder"),
      })),
    );
  });
  await page.goto("./");
  // The stage has drawn with its engine, and the worker has recorded a whole run: nothing more is coming.
  await expect(page.locator("[data-renderer=canvas]").first()).toBeVisible();
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
  // An English page loads no text in another language.
  expect(own.filter(({ german }) => german)).toEqual([]);
});
