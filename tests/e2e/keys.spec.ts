import { expect, test } from "./fixture";
import { clock, net, netGrams, open, recorded, unfold } from "./page";

test("the run by keys alone", async ({ page }) => {
  await open(page, "swim", true);
  await recorded(page);
  await page.keyboard.press("Space");
  await expect.poll(() => clock(page)).toBeGreaterThan(0.3);
  await page.keyboard.press("Space");
  const paused = await clock(page);
  await page.keyboard.press(".");
  await expect.poll(() => clock(page)).toBeGreaterThanOrEqual(paused);
  await page.keyboard.press("ArrowRight");
  await expect.poll(() => clock(page)).toBeGreaterThan(paused + 0.4);
  await page.keyboard.press("End");
  const end = await clock(page);
  expect(end).toBeGreaterThan(5);
  await page.keyboard.press("ArrowLeft");
  await expect.poll(() => clock(page)).toBeLessThan(end);
  await page.keyboard.press("Home");
  await expect.poll(() => clock(page)).toBe(0);
  await page.keyboard.press("[");
  await expect(page.getByRole("button", { name: "Half speed" })).toHaveAttribute("aria-pressed", "true");
  await page.keyboard.press("]");
  await expect(page.getByRole("button", { name: "Full speed" })).toHaveAttribute("aria-pressed", "true");
  await page.keyboard.press("3");
  await expect(page).toHaveURL(/#float$/);
});

test("the list of keys opens and closes by key @long", async ({ page }) => {
  await open(page, "float", true);
  await page.keyboard.press("?");
  const list = page.getByRole("dialog", { name: "Keys" });
  await expect(list).toBeVisible();
  await expect(list.getByText("play or pause")).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(list).toHaveCount(0);
});

test("a new bait by key @long", async ({ page }) => {
  await open(page, "float", true);
  const name = page.getByLabel("Name of this document");
  await page.keyboard.press("n");
  await page.getByRole("textbox", { name: "Name", exact: true }).press("Enter");
  await expect(name).toHaveValue("New bait");
});

test("a field being typed in keeps its keys", async ({ page }) => {
  await open(page, "float", true);
  await recorded(page);
  const name = page.getByLabel("Name of this document");
  await name.fill("");
  await name.pressSequentially("a b, p? 1.");
  await expect(name).toHaveValue("a b, p? 1.");
  await expect(page).toHaveURL(/#float$/);
  expect(await clock(page)).toBe(0);
  await expect(page.getByRole("button", { name: "Unpin" })).toHaveCount(0);
});

test("a slider and its field by keys: a run of presses is one step of undo", async ({ page }) => {
  await open(page, "float", true);
  const before = await netGrams(page);
  const water = await unfold(page, "Water");
  // A run ends when the keys rest, or the field is left. On a busy machine a test's presses may come as slowly as a rest.
  await page.evaluate(() => {
    const own = window.setTimeout.bind(window);
    Object.assign(window, { setTimeout: (run: () => void, ms = 0) => own(run, ms > 200 ? 60 * ms : ms) });
  });
  const slider = water.getByRole("slider", { name: "Salinity, slider" });
  await slider.focus();
  for (let i = 0; i < 5; i++) await page.keyboard.press("ArrowRight");
  const field = water.getByRole("textbox", { name: "Salinity", exact: true });
  await expect(field).toHaveValue("2.5");
  await field.focus();
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("Shift+ArrowUp");
  await expect(field).toHaveValue("8.0");
  expect(await netGrams(page)).toBeGreaterThan(before);
  // Out of the field, the page's own keys hold.
  await slider.focus();
  await page.keyboard.press("Control+z");
  await expect(field).toHaveValue("2.5");
  await page.keyboard.press("Control+z");
  await expect(field).toHaveValue("0.0");
  await page.keyboard.press("Control+Shift+z");
  await expect(field).toHaveValue("2.5");
  await expect(net(page)).toBeVisible();
});

test("a walk with Tab alone reaches every control, and each shows its focus @long", async ({ page }) => {
  await open(page, "float", true);
  await recorded(page);
  const wanted = await page.evaluate(() => {
    const all = document.querySelectorAll<HTMLElement>(
      "a[href], button:not(:disabled), input:not([tabindex='-1']), select, summary, [tabindex='0']",
    );
    return [...all].filter((one) => one.checkVisibility({ visibilityProperty: true })).length;
  });
  const seen = new Set<string>();
  let unmarked = 0;
  await page.evaluate(() => {
    (document.activeElement as HTMLElement | null)?.blur();
  });
  for (let i = 0; i < wanted + 15; i++) {
    await page.keyboard.press("Tab");
    const now = await page.evaluate(() => {
      const element = document.activeElement;
      if (element === null || element === document.body) return null;
      const all = [...document.querySelectorAll("*")];
      const style = getComputedStyle(element);
      return {
        place: all.indexOf(element),
        marked: style.outlineStyle !== "none" && parseFloat(style.outlineWidth) > 0,
      };
    });
    if (now === null) continue;
    seen.add(String(now.place));
    if (!now.marked) unmarked++;
  }
  expect(unmarked).toBe(0);
  // Radio buttons of one group share one stop: at most the groups' other buttons are left out.
  const radios = await page.getByRole("radio").count();
  expect(seen.size).toBeGreaterThanOrEqual(wanted - radios);
});
