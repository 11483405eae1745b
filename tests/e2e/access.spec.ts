import { expect, test } from "./fixture";
import { expectAccessible, expectAccessibleInDark, expectNoWider, open, recorded, unfoldAll } from "./page";

for (const view of ["float", "swim"] as const) {
  test(
    `axe finds nothing, and nothing is wider than the page: ${view}${view === "float" ? " @long" : ""}`,
    { tag: "@phone" },
    async ({ page }) => {
      await open(page, view, true);
      await recorded(page);
      await expectNoWider(page);
      await page.getByRole("button", { name: "Pin this variant" }).click();
      await page.getByRole("button", { name: "Forces" }).click();
      await unfoldAll(page);
      await expectNoWider(page);
      await expectAccessible(page);
      await expectAccessibleInDark(page);
      await page.getByRole("button", { name: /^Net buoyancy/ }).click();
      await expect(page.getByRole("dialog")).toBeVisible();
      await expectAccessible(page, "[role=dialog]");
    },
  );
}

test("axe finds nothing in any view in a system's own colours @long", async ({ page }) => {
  await page.emulateMedia({ forcedColors: "active", reducedMotion: "reduce" });
  await page.goto("./#weigh");
  const views = page.getByRole("navigation", { name: "Views" }).getByRole("link");
  await expect(views.first()).toBeVisible();
  for (let i = 0; i < (await views.count()); i++) {
    await views.nth(i).click();
    await expect(views.nth(i)).toHaveAttribute("aria-current", "page");
    await expect(page.getByRole("main").getByRole("button").first()).toBeVisible();
    // A view that is still being fetched has no heading yet.
    await expect(page.getByRole("heading", { level: 1 }).first()).toBeAttached();
    await expectAccessible(page);
  }
});

test("dialogs pass axe too @long", async ({ page }) => {
  await open(page, "float", true);
  await page
    .locator("input[type=file]")
    .setInputFiles({ name: "bad.json", mimeType: "application/json", buffer: Buffer.from("{}") });
  await expect(page.getByRole("dialog")).toBeVisible();
  await expectAccessible(page);
});

test(
  "on a phone the stage stays in sight, and what is touched is large enough",
  { tag: "@phone-only" },
  async ({ page }) => {
    await open(page, "float", true);
    await recorded(page);
    await unfoldAll(page);
    const small = await page.evaluate(() => {
      const least = 24;
      const all = document.querySelectorAll<HTMLElement>("a[href], button, input, select, summary");
      return [...all]
        .filter(
          (one) => one.checkVisibility({ visibilityProperty: true }) && !one.classList.contains("unseen"),
        )
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
  },
);
