import type { Page } from "@playwright/test";
import { expect, test } from "./fixture";
import { recorded, unfoldAll } from "./page";

/** From now on no worker hears anything: what still follows a hand follows it on the page's own thread. */
const deafen = (page: Page): Promise<void> =>
  page.evaluate(() => {
    Worker.prototype.postMessage = () => undefined;
  });

/** Turns a slider of the inputs by some steps, and reads what a number says before, and in the frame that follows. */
const turned = (page: Page, label: string, by: number, number: string): Promise<[string, string]> =>
  page.evaluate(
    async ([name, steps, place]) => {
      const slider = document.querySelector<HTMLInputElement>(
        `input[type=range][aria-label="${name}, slider"]`,
      );
      const shown = document.querySelector(place);
      if (slider === null || shown === null) throw new Error(`no slider ${name} or no number ${place}`);
      const before = shown.textContent;
      slider.value = String(slider.valueAsNumber + steps * Number(slider.step));
      slider.dispatchEvent(new Event("input", { bubbles: true }));
      await new Promise((frame) => requestAnimationFrame(frame));
      return [before, document.querySelector(place)?.textContent ?? ""] as [string, string];
    },
    [label, by, number] as const,
  );

const STEADY = "button[aria-label^='Steady tow']";

test("how long one watches a release is on the clock with the next frame, with what is recorded of it", async ({
  page,
}) => {
  await page.goto("./#float");
  await recorded(page);
  await deafen(page);
  const [before, shorter] = await turned(page, "Watch for", -4, "output.time");
  expect(before).toContain("12.00 s");
  expect(shorter).toContain("8.00 s");
  await expect(page.locator(".buffered")).toHaveAttribute("style", /width: 100%/);
  const [, longer] = await turned(page, "Watch for", 8, "output.time");
  expect(longer).toContain("16.00 s");
  await expect(page.locator(".buffered")).toHaveAttribute("style", /width: 50%/);
});

test("a release watched longer is recorded to its end", async ({ page }) => {
  await page.goto("./#float");
  await recorded(page);
  await turned(page, "Watch for", 3, "output.time");
  await expect(page.locator(".buffered")).toHaveAttribute("style", /width: 100%/);
  await recorded(page);
});

test("the running depth of the reach follows speed, line and bait with the next frame", async ({ page }) => {
  await page.goto("./#reach");
  const depth = "main button.big";
  await expect(page.locator(depth)).toBeVisible();
  await unfoldAll(page);
  await deafen(page);
  for (const label of ["Tow speed", "Line out", "Body density"]) {
    const [before, after] = await turned(page, label, 6, depth);
    expect(after, label).not.toBe(before);
  }
});

test("the depth of the steady tow follows the reel with the next frame, from the second turn on", async ({
  page,
}) => {
  await page.goto("./#swim");
  await recorded(page);
  await expect(page.locator(STEADY)).toBeVisible();
  const former = page.getByRole("heading", { name: "Still the run before" });
  await expect(former).toHaveCount(0);
  await deafen(page);
  const [found] = await turned(page, "Retrieve speed", 4, STEADY);
  // The other numbers wait for the run.
  await expect(former).toBeVisible();
  await expect(page.locator(STEADY)).not.toHaveText(found);
  const [before, after] = await turned(page, "Retrieve speed", 4, STEADY);
  expect(after).not.toBe(before);
});
