import type { Page } from "@playwright/test";
import { expect, test } from "./fixture";
import { clock, isPhone, open, recorded, unfold } from "./page";

const picture = (page: Page) => page.getByRole("img", { name: /^Still water/ });

/** A point on the bait as it lies: its middle stands in the middle of the picture's width. */
async function onBait(page: Page): Promise<{ x: number; y: number }> {
  const box = await picture(page).boundingBox();
  if (box === null) throw new Error("the stage is not in sight");
  // A little under the surface; the camera frames bait and hooks, so the body lies over the middle.
  return { x: box.x + box.width * 0.56, y: box.y + box.height * 0.35 };
}

test("lies afloat by statics, goes its way when let go, and lies again", async ({ page }) => {
  await open(page, "float");
  await expect(picture(page)).toHaveAccessibleName(/afloat, at rest/);
  await recorded(page);
  expect(await clock(page)).toBe(0);
  await page.keyboard.press("u");
  await expect(picture(page)).toHaveAccessibleName(/let go under water/);
  await expect.poll(() => clock(page)).toBeGreaterThan(0.3);
  await page.getByRole("button", { name: "Let it lie" }).click();
  await expect(picture(page)).toHaveAccessibleName(/afloat, at rest/);
  expect(await clock(page)).toBe(0);
});

test("dragged down it is in the hand; let go there, it rises from there", async ({ page }) => {
  await open(page, "float");
  await recorded(page);
  const at = await onBait(page);
  const down = isPhone(page) ? 110 : 300;
  if (isPhone(page)) {
    const cdp = await page.context().newCDPSession(page);
    const touch = (type: string, y: number) =>
      cdp.send("Input.dispatchTouchEvent", {
        type: type as "touchStart",
        touchPoints: type === "touchEnd" ? [] : [{ x: at.x, y }],
      });
    await touch("touchStart", at.y);
    for (let i = 1; i <= 11; i++) await touch("touchMove", at.y + (i * down) / 11);
    await expect(picture(page)).toHaveAccessibleName(/in the hand, tie eye 0\.\d\d\s?m deep/);
    expect(await page.evaluate(() => scrollY)).toBe(0);
    await touch("touchEnd", 0);
  } else {
    await page.mouse.move(at.x, at.y);
    await page.mouse.down();
    await page.mouse.move(at.x, at.y + down, { steps: 8 });
    await expect(picture(page)).toHaveAccessibleName(/in the hand, tie eye 0\.\d\d\s?m deep/);
    await page.mouse.up();
  }
  await expect(picture(page)).toHaveAccessibleName(/let go under water/);
  await expect.poll(() => clock(page)).toBeGreaterThan(0.2);
  const side = await unfold(page, "Let go");
  const depth = Number(
    await side.getByRole("textbox", { name: "Depth of the tie eye", exact: true }).inputValue(),
  );
  expect(depth).toBeGreaterThan(0.04);
  expect(depth).toBeLessThan(0.2);
});

test("righting curves stand under it, and are read by keys", async ({ page }) => {
  await open(page, "float", true);
  const trim = page.getByRole("slider", { name: "Righting moment, trim, reading at" });
  await trim.focus();
  await page.keyboard.press("ArrowRight");
  await expect(trim).toHaveAttribute("aria-valuetext", /°: under water .*afloat .*g·mm$/);
  await expect(
    page.getByRole("figure", { name: "Righting lever, heel" }).locator("path[data-label='under water']"),
  ).toHaveAttribute("d", /^M.*L/);
});

test("an earlier stage has figures of its own", async ({ page }) => {
  await open(page, "float", true);
  const side = await unfold(page, "Let go");
  const choice = side.getByLabel("In the tub, as");
  await choice.selectOption("blank");
  const early = page.getByRole("group", { name: "At the stage ‘blank’" });
  // Bare basswood floats by more than half of what it displaces.
  await expect(early.getByRole("button", { name: /^Net buoyancy: \+[45]\.\d\d/ })).toBeVisible();
  await expect(picture(page)).toHaveAccessibleName(/Floats by/);
  await choice.selectOption("dressed");
  await expect(early).toHaveCount(0);
});
