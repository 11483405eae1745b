import { expect, test } from "./fixture";
import { net, open, recorded, type, unfold } from "./page";

test("a pinned variant stays beside the present one until it is unpinned", async ({ page }) => {
  await open(page, "float", true);
  await recorded(page);
  await page.getByRole("button", { name: "Pin this variant" }).click();
  const water = await unfold(page, "Water");
  await type(water, "Salinity", "35");
  // Sea water carries about 2.7 % more: some quarter of a gram on this bait.
  await expect(page.getByText(/^\+0\.\d\d\sg vs pinned$/)).toBeVisible();
  await recorded(page);
  const depth = page.getByRole("figure", { name: "Depth" });
  await expect(depth.locator("path[data-label='pinned']")).toHaveAttribute("stroke-dasharray", /\d/);
  await expect(depth.locator("path[data-label='now']")).toHaveCount(1);
  await expect(depth.locator("path[data-label='pinned']")).toHaveAttribute("d", /^M/);
  await page.getByRole("button", { name: "Unpin" }).click();
  await expect(depth.locator("path[data-label='pinned']")).toHaveCount(0);
  await expect(page.getByText(/vs pinned/)).toHaveCount(0);
  await expect(net(page)).toBeVisible();
});

test("pinned in one view, it is there in the other too @long", async ({ page }) => {
  await open(page, "float", true);
  await page.getByRole("button", { name: "Pin this variant" }).click();
  const water = await unfold(page, "Water");
  await type(water, "Salinity", "35");
  await page.getByRole("link", { name: "Swim" }).click();
  await recorded(page);
  await expect(
    page.getByRole("figure", { name: "Depth track" }).locator("path[data-letter='A']"),
  ).toHaveAttribute("d", /^M/);
});
