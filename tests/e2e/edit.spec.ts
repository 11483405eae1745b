import { expect, test } from "./fixture";
import { expectNet, isPhone, net, netGrams, open, redo, still, type, undo, unfold, unfoldAll } from "./page";

test("a gram more inside is a gram less lift, and the word follows", async ({ page }) => {
  await open(page, "float");
  const before = await netGrams(page);
  await expect(page.getByText(/^suspends$/i).first()).toBeVisible();
  const ballast = await unfold(page, "Ballast");
  const field = ballast.getByRole("textbox", { name: "Mass", exact: true }).first();
  const mass = Number(await field.inputValue());
  await type(ballast, "Mass", (mass + 1).toFixed(2));
  await expect(page.getByText(/^sinks$/i).first()).toBeVisible();
  // The slug lies inside: it counts in full, but for the wood that its larger hole takes away.
  const after = await netGrams(page);
  expect(after).toBeLessThan(before - 0.9);
  expect(after).toBeGreaterThanOrEqual(before - 1.01);
});

test(
  "typing something impossible says so and leaves the document as it was",
  { tag: "@phone-only" },
  async ({ page }) => {
    await open(page, "float");
    const before = await net(page).innerText();
    const body = await unfold(page, "Body");
    for (const [label, text, said] of [
      ["Length", "abc", /not a number/],
      ["Length", "-4", /more than/],
      ["Length", "99999", /at most/],
      ["Width", "0.3", /Not taken/],
      ["Body density", "", /number is needed/],
    ] as const) {
      await type(body, label, text);
      const field = body.getByRole("textbox", { name: label, exact: true });
      await expect(body.getByRole("alert")).toContainText(said);
      await expect(field).toHaveAttribute("aria-invalid", "true");
      expect(await net(page).innerText()).toBe(before);
      await field.press("Escape");
      await expect(body.getByRole("alert")).toHaveCount(0);
    }
    await expect(page.getByRole("button", { name: "Undo", exact: true })).toBeDisabled();
  },
);

test("undo and redo by button, each edit one step @long", async ({ page }) => {
  await open(page, "float");
  const values = [await netGrams(page)];
  const water = await unfold(page, "Water");
  await type(water, "Salinity", "35");
  values.push(await netGrams(page));
  await type(water, "Water temperature", "25");
  values.push(await netGrams(page));
  expect(new Set(values).size).toBe(3);
  await undo(page);
  await expectNet(page, values[1] ?? NaN);
  await undo(page);
  await expectNet(page, values[0] ?? NaN);
  await expect(page.getByRole("button", { name: "Undo", exact: true })).toBeDisabled();
  await redo(page);
  await redo(page);
  await expectNet(page, values[2] ?? NaN);
});

test("a drag of a slider is one step, whatever it passes on the way", async ({ page }) => {
  await open(page, "float");
  const before = await netGrams(page);
  const water = await unfold(page, "Water");
  const slider = water.getByRole("slider", { name: "Salinity, slider" });
  await slider.scrollIntoViewIfNeeded();
  await still(slider);
  const box = await slider.boundingBox();
  if (box === null) throw new Error("the slider has no box");
  const y = box.y + box.height / 2;
  await page.mouse.move(box.x + 4, y);
  await page.mouse.down();
  for (let i = 1; i <= 12; i++) await page.mouse.move(box.x + 4 + (i * (box.width - 8)) / 12, y);
  await page.mouse.up();
  await expect(water.getByRole("textbox", { name: "Salinity", exact: true })).toHaveValue("40.0");
  expect(await netGrams(page)).not.toBe(before);
  await undo(page);
  await expectNet(page, before);
  await expect(page.getByRole("button", { name: "Undo", exact: true })).toBeDisabled();
});

test("a bib's angle is drawn with its complement @long", async ({ page }) => {
  await open(page, "float");
  const bib = await unfold(page, "Bib and tie eye");
  await type(bib, "Bib angle", "55");
  await expect(bib.getByText("55.0° from the datum line")).toBeVisible();
  await expect(bib.getByText("35.0° from the vertical")).toBeVisible();
});

test(
  "the unit is the person's: inches and ounces on the screen, the document stays",
  { tag: "@phone-only" },
  async ({ page }) => {
    await open(page, "float");
    await page.getByRole("button", { name: isPhone(page) ? "Menu" : /^Units/ }).click();
    await page.getByRole("radio", { name: "oz" }).check();
    await page.getByRole("radio", { name: "in", exact: true }).check();
    await page.keyboard.press("Escape");
    await expect(net(page)).toContainText("oz");
    const body = await unfold(page, "Body");
    await type(body, "Length", "4");
    await expect(body.getByRole("textbox", { name: "Length", exact: true })).toHaveValue(/^4\.0+$/);
    await page.getByRole("button", { name: isPhone(page) ? "Menu" : /^Units/ }).click();
    await page.getByRole("radio", { name: "mm" }).check();
    await page.keyboard.press("Escape");
    // An inch is 25.4 mm.
    await expect(body.getByRole("textbox", { name: "Length", exact: true })).toHaveValue("101.6");
  },
);

test("where inches are chosen no view tells a length in millimetres or metres @long", async ({ page }) => {
  await open(page, "weigh");
  await page.getByRole("button", { name: /^Units/ }).click();
  await page.getByRole("radio", { name: "in", exact: true }).check();
  await page.keyboard.press("Escape");
  // With a reading in the account, which the file keeps in words.
  await page.goto("./#float");
  const tub = await unfold(page, "Tub reading");
  await tub.getByLabel("or type it, s").fill("9");
  await tub.getByLabel("or type it, s").press("Enter");
  await tub.getByRole("button", { name: "Correct the account by this" }).click();
  await expect(tub.getByRole("list", { name: "Corrections in the account" })).toBeVisible();
  for (const view of ["weigh", "float", "swim", "reach"]) {
    await page.goto(`./#${view}`);
    await expect(page.getByRole("main").getByTitle("Why this number?").first()).toBeVisible();
    await unfoldAll(page);
    const main = page.locator("body");
    await expect(main).toContainText(/\d\s(in|ft)\b/);
    const text = await main.innerText();
    const found = text.match(/.{0,40}\d[\s\u202f](mm|cm|m|mm\/s|m\/s)(?![\wµ·²³⁴/]).{0,20}/g) ?? [];
    expect(found, `in ${view}`).toEqual([]);
  }
});

test("a caution stands where its step happens, and stays away once put away @long", async ({ page }) => {
  await open(page, "float");
  const coats = await unfold(page, "Coats");
  const caution = coats.getByRole("note", { name: /^Caution/ });
  await expect(caution).toBeVisible();
  await caution.getByRole("button", { name: /^Put away/ }).click();
  await expect(caution).toHaveCount(0);
  await page.reload();
  await expect(net(page)).toBeVisible();
  await unfold(page, "Coats");
  await expect(coats.getByRole("note", { name: /^Caution/ })).toHaveCount(0);
});
