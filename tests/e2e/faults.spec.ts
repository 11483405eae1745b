import type { Page } from "@playwright/test";
import { expect, test } from "./fixture";
import { expectAccessible, net, open, recorded, type, unfold } from "./page";

/** What the page's own script of these tests turns on and off: see `breakable`. */
declare global {
  interface Window {
    noTrack?: boolean;
    noDigits?: boolean;
  }
}

/**
 * Lets a test break two things that the page draws with, before any of the page's own code runs: the watching of the depth
 * track's size, and the writing of digits.
 */
async function breakable(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const watch = ResizeObserver.prototype.observe;
    ResizeObserver.prototype.observe = function (element, options) {
      if (window.noTrack === true && element.getAttribute("aria-label") === "Depth track")
        throw new Error("the depth track broke");
      watch.call(this, element, options);
    };
    const write = Number.prototype.toFixed;
    Number.prototype.toFixed = function (digits) {
      if (window.noDigits === true) throw new Error("the digits broke");
      return write.call(this, digits);
    };
  });
}

test("a view that cannot be drawn says so; the other views and the document live", async ({
  page,
  allow,
}) => {
  allow(/the depth track broke/);
  await breakable(page);
  await open(page, "float", true);
  await page.evaluate(() => (window.noTrack = true));
  const views = page.getByRole("navigation", { name: "Views" });
  await views.getByRole("link", { name: "Swim" }).click();
  const failed = page.getByRole("main").getByRole("alert");
  await expect(failed).toContainText("The view ‘Swim’ cannot be shown");
  await expect(failed).toContainText("the depth track broke");
  await expectAccessible(page, "main");

  await views.getByRole("link", { name: "Float" }).click();
  await expect(net(page)).toBeVisible();
  await views.getByRole("link", { name: "Swim" }).click();
  await expect(failed).toBeVisible();
  await page.evaluate(() => (window.noTrack = false));
  await failed.getByRole("button", { name: "Try again" }).click();
  await expect(page.getByRole("figure", { name: "Depth track" })).toBeVisible();
  await expect(failed).toHaveCount(0);
});

test("an edit that breaks a view is undone from where the view says so, and all comes back @long", async ({
  page,
  allow,
}) => {
  allow(/the digits broke/);
  // Svelte's remark on a part that it has just taken away: it looked once more whether the part needs drawing.
  allow(/derived_inert/);
  await breakable(page);
  await open(page, "float", true);
  const before = await net(page).innerText();
  const section = await unfold(page, "Ballast");
  const field = section.getByRole("textbox", { name: "Mass", exact: true }).first();
  await field.fill("4");
  await page.evaluate(() => (window.noDigits = true));
  await field.press("Enter");
  const failed = page.getByRole("main").getByRole("alert");
  await expect(failed).toContainText("The view ‘Float’ cannot be shown");
  await page.evaluate(() => (window.noDigits = false));
  await failed.getByRole("button", { name: /^Undo/ }).click();
  await expect(net(page)).toHaveText(before, { useInnerText: true });
  await expect(page.getByRole("alert")).toHaveCount(0);
  await type(await unfold(page, "Ballast"), "Mass", "6");
  await expect(net(page)).toBeVisible();
});

test("a view that does not load says so, and loads on asking again @long", async ({ page, allow }) => {
  allow(/Failed to load resource|Failed to fetch dynamically imported module/);
  await open(page, "float", true);
  await page.route(/\.js$/, (route) => route.abort());
  const views = page.getByRole("navigation", { name: "Views" });
  await views.getByRole("link", { name: "Reach" }).click();
  const failed = page.getByRole("main").getByRole("alert");
  await expect(failed).toContainText("The view ‘Reach’ cannot be shown");
  await views.getByRole("link", { name: "Float" }).click();
  await expect(net(page)).toBeVisible();
  await views.getByRole("link", { name: "Reach" }).click();
  await expect(failed).toBeVisible();
  await page.unroute(/\.js$/);
  await failed.getByRole("button", { name: "Try again" }).click();
  await expect(
    page
      .getByRole("img", { name: /^Map/ })
      .or(page.getByRole("heading", { name: /depth/i }))
      .first(),
  ).toBeVisible();
});

test("workers that end without a word are not waited for: the next change starts others @long", async ({
  page,
}) => {
  await open(page, "swim", true);
  await recorded(page);
  const before = new Set(page.workers());
  expect(before.size).toBeGreaterThan(0);
  for (const worker of before) await worker.evaluate(() => self.close());
  await type(await unfold(page, "Ballast"), "Mass", "3");
  await expect.poll(() => page.workers().filter((worker) => !before.has(worker)).length).toBe(2);
  await recorded(page);
  await expect(page.getByText(/95 % of baits made so/)).toBeVisible();
  await expect(page.getByRole("alert")).toHaveCount(0);
});
