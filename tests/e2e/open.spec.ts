import { expect, test } from "./fixture";
import { clock, net, open, type, unfold } from "./page";

test("opens on the demo scenario and runs at once", { tag: "@phone" }, async ({ page }) => {
  await page.goto("./");
  await expect(net(page)).toBeVisible();
  await expect(page.getByLabel("Name of this document")).not.toHaveValue("");
  await expect(page).toHaveTitle(/– Trimwright$/);
  await expect.poll(() => clock(page)).toBeGreaterThan(0.3);
  const picture = page.getByRole("img", { name: /Coldwater suspender/ });
  await expect(picture).toBeVisible();
  await expect(picture).toHaveAttribute("data-renderer", "canvas");
  // The door to it shows the bait from where it moves: in this file it lies still for two seconds.
  await page.getByRole("slider", { name: "Time" }).fill("0.5");
  await page.getByRole("button", { name: "See a ready bait swim" }).click();
  await expect(page.getByRole("region", { name: "Welcome" })).toHaveCount(0);
  await expect.poll(() => clock(page)).toBeGreaterThan(2);
  await expect(page.getByTitle("Pause (space)")).toBeVisible();
});

test(
  "both views show a run of their own, and the address follows @long",
  { tag: "@phone-only" },
  async ({ page }) => {
    await open(page, "float");
    await expect(page.getByRole("link", { name: "Float" })).toHaveAttribute("aria-current", "page");
    await page.getByRole("link", { name: "Swim" }).click();
    await expect(page).toHaveURL(/#swim$/);
    await expect(page.getByRole("tab", { name: "Depth track" })).toBeVisible();
    await expect(page.getByRole("button", { name: /Push under/ })).toHaveCount(0);
    await page.goBack();
    await expect(page).toHaveURL(/#float$/);
    await expect(page.getByRole("tab", { name: "Depth track" })).toHaveCount(0);
    await expect(page.getByRole("button", { name: /Push under/ })).toBeVisible();
  },
);

test("a view that was left follows the document when it is opened again @long", async ({ page }) => {
  await open(page, "float", true);
  const picture = page.getByRole("img", { name: /^Still water/ });
  await expect(picture).toHaveAccessibleName(/afloat, at rest/);
  await page.getByRole("link", { name: "Swim" }).click();
  await type(await unfold(page, "Body"), "Body density", "0.9");
  await page.getByRole("link", { name: "Float" }).click();
  await expect(picture).toHaveAccessibleName(/sinks when let go/);
});

test("nothing moves by itself for those who asked for that", async ({ page }) => {
  await open(page, "float", true);
  await expect(page.getByRole("button", { name: "CSV" })).toBeEnabled();
  expect(await clock(page)).toBe(0);
  await page.getByRole("button", { name: "Play", exact: true }).click();
  await expect.poll(() => clock(page)).toBeGreaterThan(0.2);
});

test("without any canvas the numbers and a drawing of the bait still show", async ({ page }) => {
  await page.addInitScript(() => {
    HTMLCanvasElement.prototype.getContext = () => null;
    Object.defineProperty(window, "OffscreenCanvas", { value: undefined });
  });
  await open(page, "swim");
  await expect(net(page)).toContainText("g");
  const picture = page.getByRole("img", { name: /Coldwater suspender/ });
  await expect(picture).toHaveAttribute("data-renderer", "drawing");
  await expect(picture.locator("svg path, svg polygon").first()).toBeVisible();
  await expect.poll(() => clock(page)).toBeGreaterThan(0.2);
});

test("a worker that stops is said plainly, with what to do, and the statics stay @long", async ({
  page,
  allow,
}) => {
  allow(/worker|ERR_FAILED|Failed to load/i);
  await page.route(/worker-.*\.js$/, (route) => route.abort());
  await open(page, "swim");
  await expect(page.getByRole("alert").first()).toContainText("This run stopped.");
  await expect(page.getByRole("button", { name: "run it again" })).toBeVisible();
  await expect(net(page)).toContainText("g");
  await page.unroute(/worker-.*\.js$/);
  await page.getByRole("button", { name: "run it again" }).click();
  await expect(page.getByText("This run stopped.")).toHaveCount(0);
  await expect.poll(() => clock(page)).toBeGreaterThan(0.2);
});
