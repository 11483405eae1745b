import { readFileSync } from "node:fs";
import type { Locator, Page } from "@playwright/test";
import { expect, test } from "./fixture";
import {
  expectAccessible,
  expectAccessibleInDark,
  expectNoWider,
  redo,
  type,
  undo,
  unfold,
  unfoldAll,
} from "./page";

const depth = (page: Page): Locator => page.getByRole("button", { name: /^Runs at: / });
const map = (page: Page): Locator => page.getByRole("slider", { name: /^Mark on the map/ });
const progress = (page: Page): Locator => page.getByRole("progressbar", { name: "Map worked out" });

async function metres(button: Locator): Promise<number> {
  const found = /(\d+\.\d+)/.exec(await button.innerText());
  if (found === null) throw new Error(`no depth in ‘${await button.innerText()}’`);
  return Number(found[1]);
}

async function open(page: Page): Promise<void> {
  await page.goto("./#reach");
  await expect(depth(page).first()).toBeVisible();
}

/** All that is worked out by itself is there: the last curve too. */
async function settled(page: Page): Promise<void> {
  await expect(page.getByRole("img", { name: /^Depth against tie eye height: runs from/ })).toBeAttached();
  await expect(progress(page)).toBeHidden();
}

test("a design is marked with the keys, looked at, and taken in one step of undo", async ({ page }) => {
  await open(page);
  await settled(page);
  const before = await metres(depth(page).first());
  await map(page).focus();
  await expect(map(page)).toHaveAttribute("aria-valuetext", /Bib angle 39\.0°, tow speed .* deep/);
  for (let i = 0; i < 5; i++) await page.keyboard.press("ArrowLeft");
  await expect(map(page)).toHaveAttribute("aria-valuetext", /Bib angle 24\.0°/);
  const marked = page.getByRole("button", { name: /^Runs at, at the mark: / });
  await expect(marked).toBeVisible();
  await expect(page.getByRole("region", { name: "At the mark" })).toHaveAttribute("aria-busy", "false");
  const promised = await metres(marked);
  expect(promised).toBeGreaterThan(before + 0.1);
  expect(await metres(depth(page).first())).toBe(before);

  await page.keyboard.press("Enter");
  await expect(marked).toBeHidden();
  await expect.poll(() => metres(depth(page).first())).toBe(promised);
  const bib = await unfold(page, "Bib and tie eye");
  await expect(bib.getByRole("textbox", { name: "Bib angle", exact: true })).toHaveValue("24.0");
  await undo(page);
  await expect(bib.getByRole("textbox", { name: "Bib angle", exact: true })).toHaveValue("40.0");
  await redo(page);
  await expect(bib.getByRole("textbox", { name: "Bib angle", exact: true })).toHaveValue("24.0");
});

test(
  "a press on the map sets the mark; Escape takes it away @long",
  { tag: "@phone-only" },
  async ({ page }) => {
    await open(page);
    await settled(page);
    await map(page).scrollIntoViewIfNeeded();
    const box = await map(page).boundingBox();
    if (box === null) throw new Error("the map has no place on the page");
    await map(page).click({ position: { x: box.width * 0.3, y: box.height * 0.5 } });
    await expect(page.getByRole("button", { name: "Take this design" })).toBeVisible();
    await map(page).focus();
    await page.keyboard.press("Escape");
    await expect(page.getByRole("button", { name: "Take this design" })).toBeHidden();
  },
);

test("what does not run says why, on the map and at the point @long", async ({ page }) => {
  await open(page);
  await settled(page);
  await map(page).focus();
  await page.keyboard.press("End");
  await expect(map(page)).toHaveAttribute("aria-valuetext", /does not run, bib stalls/);
  await expect(page.getByText("Does not run: bib stalls")).toBeVisible();
  // Where running begins: from below, with the reason on the other side.
  const bib = await unfold(page, "Bib and tie eye");
  await type(bib, "Bib angle", "70");
  await expect(page.getByRole("button", { name: /^Runs from: / })).toBeVisible();
  await expect(page.getByText(/^slower: /)).toBeVisible();
  await type(bib, "Bib angle", "88");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(/does not run: bib stalls/);
});

test("a depth that is wanted is drawn; another pair and another line change the map @long", async ({
  page,
}) => {
  await open(page);
  await settled(page);
  const tow = await unfold(page, "Tow");
  await type(tow, "Depth wanted", "1.2");
  await expect(page.locator("path.wanted").first()).toBeAttached();
  await page.getByLabel("Up:").selectOption({ label: "Line out" });
  await expect(map(page)).toHaveAttribute("aria-valuetext", /line out \d+\.\d\u202fm: .* deep/);
  await page.getByLabel("Up:").selectOption({ label: "Rod tip" });
  await expect(map(page)).toHaveAttribute("aria-valuetext", /rod tip \d\.\d\d\u202fm: .* deep/);
  const before = await metres(depth(page).first());
  await tow.getByLabel("Line material").selectOption("braid");
  await expect.poll(() => metres(depth(page).first())).not.toBe(before);
  await undo(page);
  await expect.poll(() => metres(depth(page).first())).toBe(before);
});

test("depths at the contours are round in feet too @long", async ({ page }) => {
  await open(page);
  await settled(page);
  await page.getByRole("button", { name: /^Units/ }).click();
  await page.getByRole("radio", { name: "in", exact: true }).check();
  await page.keyboard.press("Escape");
  const texts = await page.locator("svg text.level").allTextContents();
  const levels = [...new Set(texts.map(Number))].sort((a, b) => a - b);
  expect(levels.length).toBeGreaterThan(1);
  // Contours too short for a figure have none: the levels that are written are whole multiples of a round step.
  const least = Math.min(...levels.slice(1).map((level, i) => level - (levels[i] ?? 0)));
  const digit = Number(least.toExponential(6).slice(0, 8));
  expect([1, 2, 4, 5]).toContainEqual(Number(digit.toFixed(4)));
  for (const level of levels) expect(Math.abs(level / least - Math.round(level / least))).toBeLessThan(1e-6);
});

test("a measured depth sets the bib's factor, and says so when none fits", async ({ page }) => {
  await open(page);
  await settled(page);
  const section = await unfold(page, "Measured depth");
  await type(section, "Depth measured", "1.30");
  await section.getByRole("button", { name: "Find the bib factor" }).click();
  const factor = section.getByRole("button", { name: /^Bib factor: 0\.\d{3}/ });
  await expect(factor).toBeVisible();
  await section.getByRole("button", { name: "Use it in this document" }).click();
  await expect.poll(() => metres(depth(page).first())).toBe(1.3);
  await expect(section).toContainText(/In use: bib factor 0\.\d{3}, by 1\.30/);
  await expect(page.getByText("bib factor measured: no band")).toBeVisible();
  await undo(page);
  await expect.poll(() => metres(depth(page).first())).toBeGreaterThan(1.4);

  await type(section, "Depth measured", "9");
  await section.getByRole("button", { name: "Find the bib factor" }).click();
  await expect(section).toContainText(/No factor fits: no factor from 0\.5 to 1\.5 gives that depth/);
});

test("a change marks what is old at once; the map can be stopped; the bib angle for a depth; a table", async ({
  page,
}) => {
  // Questions to the workers take their time while the page is told so: the test sees what lies between.
  await page.addInitScript(() => {
    const send = Worker.prototype.postMessage;
    const slow = window as Window & { slow?: number };
    Worker.prototype.postMessage = function (this: Worker, ...message: unknown[]): void {
      setTimeout(() => Reflect.apply(send, this, message) as unknown, slow.slow ?? 0);
    } as typeof send;
  });
  await open(page);
  await settled(page);
  const answer = page.getByLabel("Bib angle for the depth wanted");
  await expect(answer).toContainText(/its bib angle can make it run \d/);
  const tow = await unfold(page, "Tow");
  await type(tow, "Depth wanted", "1.8");
  await expect(answer).toContainText(/1\.80.m at 0\.90.m\/s: a bib angle of \d+° gives it/);
  await type(tow, "Depth wanted", "2.3");
  await expect(answer).toContainText(/no bib angle gives it at 0\.90.m\/s; \d+° comes nearest with 1\.\d+.m/);
  const saving = page.waitForEvent("download");
  await page
    .getByRole("group", { name: "Save of map and curves" })
    .getByRole("button", { name: "CSV" })
    .click();
  const table = readFileSync(await (await saving).path(), "utf8").split("\r\n");
  expect(table[0]).toContain("depth_m,attitude_deg,tension_N");
  expect(table.filter((row) => row.startsWith("map,")).length).toBe(300);
  expect(table.filter((row) => row.startsWith("curve,")).length).toBeGreaterThan(100);

  // Pointing at the map moves nothing below it.
  const charts = page.getByRole("heading", { name: /^Depth against one thing/ });
  const before = await charts.boundingBox();
  await map(page).hover({ position: { x: 200, y: 100 } });
  expect((await charts.boundingBox())?.y).toBe(before?.y);

  await page.evaluate(() => ((window as Window & { slow?: number }).slow = 400));
  await type(tow, "Tow speed", "0.7");
  await expect(page.getByText("Of the bait before the change")).toBeVisible();
  await page.getByLabel("Across:").selectOption({ label: "Bib length" });
  const stop = page.getByRole("button", { name: "Stop", exact: true });
  await stop.click();
  await expect(stop).toBeHidden();
  await page.evaluate(() => ((window as Window & { slow?: number }).slow = 0));
  await page.getByRole("button", { name: "Go on" }).click();
  await settled(page);
  await expect(map(page)).toHaveAttribute("aria-valuetext", /Bib length .* deep/);
});

test("every number of the point answers why @long", async ({ page }) => {
  await open(page);
  await settled(page);
  const numbers = page.getByRole("main").getByTitle("Why this number?");
  const count = await numbers.count();
  expect(count).toBeGreaterThanOrEqual(6);
  const panel = page.getByRole("dialog");
  for (let i = 0; i < count; i++) {
    await numbers.nth(i).focus();
    await page.keyboard.press("Enter");
    await expect(panel).toBeVisible();
    expect(await panel.innerText()).not.toMatch(/NaN|undefined|Infinity|\[object/);
    expect((await panel.locator(".source").innerText()).length).toBeGreaterThan(8);
    await page.keyboard.press("Escape");
    await expect(panel).toBeHidden();
  }
});

test("axe finds nothing, and nothing is wider than the page", { tag: "@phone-long" }, async ({ page }) => {
  await page.emulateMedia({ reducedMotion: "reduce" });
  await open(page);
  await settled(page);
  await map(page).focus();
  await page.keyboard.press("ArrowLeft");
  await expect(page.getByRole("button", { name: "Take this design" })).toBeVisible();
  await unfoldAll(page);
  await expectNoWider(page);
  await expectAccessible(page);
  await expectAccessibleInDark(page);
});
