import { AxeBuilder } from "@axe-core/playwright";
import { expect, test } from "./fixture";
import { isPhone, open, recorded, unfoldAll } from "./page";

const RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

for (const scheme of ["light", "dark"] as const) {
  for (const view of ["float", "swim"] as const) {
    test(`axe finds nothing: ${view}, ${scheme}`, async ({ page }) => {
      await page.emulateMedia({ colorScheme: scheme });
      await open(page, view, true);
      await recorded(page);
      await page.getByRole("button", { name: "Pin this variant" }).click();
      await page.getByRole("button", { name: "Forces" }).click();
      await unfoldAll(page);
      const found = await new AxeBuilder({ page }).withTags(RULES).analyze();
      expect(
        found.violations.map(({ id, nodes }) => ({ id, nodes: nodes.map((node) => node.html) })),
      ).toEqual([]);

      await page.getByRole("button", { name: /^Net buoyancy/ }).click();
      await expect(page.getByRole("dialog")).toBeVisible();
      const asked = await new AxeBuilder({ page }).withTags(RULES).include("[role=dialog]").analyze();
      expect(
        asked.violations.map(({ id, nodes }) => ({ id, nodes: nodes.map((node) => node.html) })),
      ).toEqual([]);
    });
  }
}

test("dialogs pass axe too", async ({ page }) => {
  await open(page, "float", true);
  await page
    .locator("input[type=file]")
    .setInputFiles({ name: "bad.json", mimeType: "application/json", buffer: Buffer.from("{}") });
  await expect(page.getByRole("dialog")).toBeVisible();
  const found = await new AxeBuilder({ page }).withTags(RULES).analyze();
  expect(found.violations.map(({ id, nodes }) => ({ id, nodes: nodes.map((node) => node.html) }))).toEqual(
    [],
  );
});

test("nothing is wider than the page, in either view, folded or not", async ({ page }) => {
  for (const view of ["float", "swim"] as const) {
    await open(page, view, true);
    await recorded(page);
    await unfoldAll(page);
    const { scroll, client } = await page.evaluate(() => ({
      scroll: document.documentElement.scrollWidth,
      client: document.documentElement.clientWidth,
    }));
    expect(scroll).toBeLessThanOrEqual(client);
  }
});

test("on a phone the stage stays in sight, and what is touched is large enough", async ({ page }) => {
  test.skip(!isPhone(page), "a phone's page");
  await open(page, "float", true);
  await recorded(page);
  await unfoldAll(page);
  const small = await page.evaluate(() => {
    const least = 24;
    const all = document.querySelectorAll<HTMLElement>("a[href], button, input, select, summary");
    return [...all]
      .filter((one) => one.checkVisibility({ visibilityProperty: true }) && !one.classList.contains("unseen"))
      .map((one) => {
        const target =
          one instanceof HTMLInputElement && one.type === "radio" ? (one.closest("label") ?? one) : one;
        const { width, height } = target.getBoundingClientRect();
        return { html: one.outerHTML.slice(0, 120), width, height };
      })
      .filter(({ width, height }) => width < least || height < least);
  });
  expect(small).toEqual([]);
  await page.getByRole("slider").last().scrollIntoViewIfNeeded();
  await expect(page.getByRole("img", { name: /Coldwater suspender/ })).toBeInViewport({ ratio: 0.9 });
});
