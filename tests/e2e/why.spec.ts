import { expect, test } from "./fixture";
import { clock, open, recorded, unfold } from "./page";

for (const view of ["float", "swim"] as const) {
  test(
    `every number of the ${view} answers why, and gives the focus back${view === "swim" ? " @long" : ""}`,
    { tag: view === "float" ? "@phone-long" : [] },
    async ({ page }) => {
      await open(page, view, true);
      await recorded(page);
      // All that comes late is there: nothing that is asked below is made anew.
      for (const late of [/^Chance of sinking: \d/, /^(Rises|Sinks) at: \d/])
        await expect(page.getByRole("button", { name: late })).toBeVisible();
      for (const folded of ["More numbers"]) {
        const details = page.locator("details").filter({ hasText: folded });
        if ((await details.getAttribute("open")) === null) await details.locator("summary").click();
      }
      await page.getByRole("button", { name: "Forces" }).click();
      if (view === "float") {
        // At rest it has no moment: let go and stopped, it has one.
        await page.keyboard.press("u");
        await expect.poll(() => clock(page)).toBeGreaterThan(0.2);
        await page.getByRole("button", { name: "Pause", exact: true }).click();
      }
      const numbers = page.getByTitle(/^Why this (number|force)\?$/);
      const count = await numbers.count();
      expect(count).toBeGreaterThan(18);
      const panel = page.getByRole("dialog");
      const titles = new Set<string>();
      for (let i = 0; i < count; i++) {
        const number = numbers.nth(i);
        if (!(await number.isVisible())) continue;
        // A screen reader hears which figure it is: its name, then the number.
        await expect(number).toHaveAccessibleName(/^[A-Z].*\p{L}.*(: .*)?\. Why\?$/u);
        // The button itself: numbers that come late may stand before it in the row.
        const button = await number.elementHandle();
        await button.focus();
        await page.keyboard.press("Enter");
        await expect(panel).toBeVisible();
        const title = await panel.getByRole("heading", { level: 2 }).innerText();
        titles.add(title);
        await expect(panel.getByRole("heading", { name: "Source" })).toBeVisible();
        const text = await panel.innerText();
        expect(text, title).not.toMatch(/NaN|undefined|Infinity|\[object/);
        const [formula, source] = [panel.locator(".formula"), panel.locator(".source")];
        expect((await formula.innerText()).length, title).toBeGreaterThan(5);
        expect((await source.innerText()).length, title).toBeGreaterThan(8);
        await page.keyboard.press("Escape");
        await expect(panel).toBeHidden();
        await expect.poll(() => button.evaluate((one) => one === document.activeElement)).toBe(true);
      }
      for (const title of [
        "Net buoyancy",
        "Attitude at rest under water",
        "Steady rise or sink",
        "Density of the water",
      ]) {
        expect(titles).toContain(title);
      }
    },
  );
}

test("a press elsewhere puts the answer away and keeps the focus it went to @long", async ({ page }) => {
  await open(page, "float", true);
  const panel = page.getByRole("dialog");
  const field = (await unfold(page, "Water")).getByRole("textbox").first();
  await field.scrollIntoViewIfNeeded();
  await page.getByRole("button", { name: /^Net buoyancy/ }).click();
  await expect(panel).toBeVisible();
  await expect(panel).toBeFocused();
  await field.click();
  await expect(panel).toBeHidden();
  // The panel has heard by now that it was closed.
  await page.evaluate(() => new Promise((done) => setTimeout(done, 50)));
  await expect(field).toBeFocused();

  await page.getByRole("button", { name: /^Net buoyancy/ }).click();
  await panel.getByRole("button", { name: "Close" }).click();
  await expect(panel).toBeHidden();
  await expect(page.getByRole("button", { name: /^Net buoyancy/ })).toBeFocused();
});

test("the account's rows stand behind the net buoyancy @long", async ({ page }) => {
  await open(page, "float", true);
  await page.getByRole("button", { name: /^Net buoyancy/ }).click();
  const rows = page.getByRole("dialog").locator("tbody tr");
  // The answer comes with its texts.
  await expect(rows.first()).toBeVisible();
  expect(await rows.count()).toBeGreaterThan(6);
  await expect(page.getByRole("dialog").locator("tfoot")).toContainText("together");
});
