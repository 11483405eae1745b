import type { Page } from "@playwright/test";
import { expect, test } from "./fixture";
import {
  clock,
  expectNet,
  isPhone,
  netGrams,
  newBait,
  open,
  press,
  recorded,
  type,
  undo,
  unfold,
} from "./page";

const picture = (page: Page) => page.getByRole("img", { name: /^Still water/ });

/** A point on the bait as it lies: its middle stands in the middle of the picture's width. */
async function onBait(page: Page): Promise<{ x: number; y: number }> {
  const box = await picture(page).boundingBox();
  if (box === null) throw new Error("the stage is not in sight");
  // A little under the surface; the camera frames bait and hooks, so the body lies over the middle.
  return { x: box.x + box.width * 0.56, y: box.y + box.height * 0.35 };
}

test("lies afloat by statics, goes its way when let go, and lies again @long", async ({ page }) => {
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

test(
  "dragged down it is in the hand; let go there, it rises from there",
  { tag: "@phone-long" },
  async ({ page }) => {
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
  },
);

test("a bait that would lie over says so, and is not shown as if it stood @long", async ({ page }) => {
  await open(page, "float", true);
  await newBait(page);
  await press(page, page.getByRole("link", { name: "Float" }));
  // A new bait stands upright by its first weights. Without them, it lies over.
  await expect(picture(page)).toHaveAccessibleName(/afloat, at rest/);
  const ballast = await unfold(page, "Ballast");
  for (const mass of await ballast.getByRole("textbox", { name: "Mass", exact: true }).all()) {
    await mass.fill("0");
    await mass.press("Enter");
  }
  await expect(picture(page)).toHaveAccessibleName(/held upright: by itself it lies on its side/);
  await expect(page.getByRole("button", { name: /^GM afloat: −0\.\d\d/ })).toBeVisible();
  await expect(page.getByText(/^On its side: GM −0\.\d\d/).first()).toBeVisible();
});

test("righting curves stand under it, and are read by keys @long", async ({ page }) => {
  await open(page, "float", true);
  const trim = page.getByRole("slider", { name: "Righting moment, trim, reading at" });
  await trim.focus();
  await page.keyboard.press("ArrowRight");
  await expect(trim).toHaveAttribute("aria-valuetext", /°: under water .*afloat .*g·mm$/);
  await expect(
    page.getByRole("figure", { name: "Righting lever, heel" }).locator("path[data-label='under water']"),
  ).toHaveAttribute("d", /^M.*L/);
});

test("an earlier stage has figures of its own @long", async ({ page }) => {
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

test("the season's verdict is a chart with its words, and follows its ends @long", async ({ page }) => {
  await open(page, "float", true);
  const chart = page.getByRole("figure", { name: "Net buoyancy over the season" });
  for (const water of ["fresh", "brackish", "sea"])
    await expect(chart.locator(`path[data-label='${water}']`)).toHaveAttribute("d", /^M.*L/);
  await expect(page.getByRole("listitem").filter({ hasText: /^sea: floats throughout/ })).toBeVisible();
  const season = await unfold(page, "Season");
  await type(season, "Warmest water", "3");
  await expect(page.getByText("The season's warmest water has to be warmer than its coldest.")).toBeVisible();
  await type(season, "Warmest water", "30");
  // From 4 to 30 °C fresh water loses 4.3 kg/m³ (EOS-80): 0.04 g of this bait's 9.2 mL.
  await expect(
    page.getByRole("listitem").filter({ hasText: /^fresh: suspends throughout, \+0\.02\sg to −0\.02\sg/ }),
  ).toBeVisible();
});

test(
  "timed rises say the net, correct the account visibly, and can be taken back",
  { tag: "@phone-only" },
  async ({ page }) => {
    await open(page, "float", true);
    const before = await netGrams(page);
    const tub = await unfold(page, "Tub reading");
    // The watch itself: it starts and stops by one button.
    const watch = tub.getByRole("button", { name: "First mark: start" });
    await watch.click();
    await page.waitForTimeout(400);
    await tub.getByRole("button", { name: /Second mark: stop/ }).click();
    const times = tub.getByRole("list", { name: "Times" });
    await expect(times.getByRole("listitem")).toHaveCount(1);
    await tub.getByRole("button", { name: /^Drop/ }).click();
    for (const seconds of ["6.1", "5.8", "6.0"]) {
      await tub.getByLabel("or type it, s").fill(seconds);
      await tub.getByRole("button", { name: "Add", exact: true }).click();
    }
    await expect(times.getByRole("listitem")).toHaveCount(3);
    const correct = tub.getByRole("button", { name: "Correct the account by this" });
    await expect(correct).toBeEnabled();
    const said =
      /[-−+]\d+\.\d+/.exec(
        await tub.locator("table").getByTitle("Why this number?").first().innerText(),
      )?.[0] ?? "";
    const wanted = Number(said.replace("−", "-"));
    // Twice as fast as reckoned: the bait is lighter than the account has it.
    expect(wanted).toBeGreaterThan(before);
    await correct.click();
    await expectNet(page, wanted);
    await expect(tub.getByRole("list", { name: "Corrections in the account" })).toContainText("rises 300 mm");
    await page.getByRole("button", { name: /^Net buoyancy/ }).click();
    await expect(page.getByRole("dialog").locator("tbody")).toContainText("tub correction");
    await page.keyboard.press("Escape");
    await tub.getByRole("button", { name: "Take ‘tub correction’ out" }).click();
    await expectNet(page, before);
    await undo(page);
    await expectNet(page, wanted);
    await undo(page);
    await expectNet(page, before);
  },
);

test("an attitude seen, turned on the drawing or by its field, moves G @long", async ({ page }) => {
  await open(page, "float", true);
  const tub = await unfold(page, "Tub reading");
  await tub.getByRole("button", { name: "Attitude" }).click();
  await expect(tub.getByText(/as long as nothing is moved/)).toBeVisible();
  const sketch = tub.getByRole("img", { name: /at the angle seen/ });
  await sketch.scrollIntoViewIfNeeded();
  const box = await sketch.boundingBox();
  if (box === null) throw new Error("no sketch");
  await page.mouse.move(box.x + 0.85 * box.width, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + 0.82 * box.width, box.y + 0.3 * box.height, { steps: 4 });
  await page.mouse.up();
  const field = tub.getByRole("textbox", { name: "Nose up by", exact: true });
  expect(Number((await field.inputValue()).replace("−", "-"))).toBeGreaterThan(2);
  await type(tub, "Nose up by", "6");
  await expect(tub.locator("table")).toContainText(/mm behind/);
  await tub.getByRole("button", { name: "Correct the account by this" }).click();
  await expect(page.getByRole("button", { name: /^At rest under water: \+6\.0°/ })).toBeVisible();

  // Of a bait that sinks there is no waterline, and nothing to be set.
  await type(await unfold(page, "Body"), "Body density", "0.9");
  await tub.getByRole("button", { name: "Waterline" }).click();
  await expect(tub.getByText(/^By the calculation it sinks or stands on end/)).toBeVisible();
  await expect(tub.getByText(/as long as nothing is moved/)).toHaveCount(0);
});

test("for the sea: a swap from the box, fitted with its water, and taken back", async ({ page }) => {
  await open(page, "float", true);
  const before = await netGrams(page);
  const swaps = await unfold(page, "Swaps");
  await swaps.getByRole("button", { name: "Sea", exact: true }).click();
  // They are looked through by themselves.
  await expect(swaps.getByText("13 kinds of round masses")).toBeVisible();
  const best = swaps.getByRole("listitem").first();
  await expect(best).toContainText(/°/);
  // By hand: 26.1 kg/m³ more (EOS-80) on 9.2 mL is 0.24 g; of tin under water 0.24 / (1 − 1026/7310) = 0.28 g.
  await expect(swaps.getByText(/^Or exactly:/)).toContainText(/0\.28\sg of tin\s+on/);
  const text = (await best.getByTitle("Why this number?").innerText()).replace("−", "-");
  const wanted = Number(/[-+]\d+\.\d+/.exec(text)?.[0]);
  expect(Math.abs(wanted - before)).toBeLessThanOrEqual(0.03);
  await best.getByRole("button", { name: "Fit it" }).click();
  await expectNet(page, wanted);
  // In the sea now, it has what is wanted there without any swap more.
  await expect(swaps.getByText(/^Unchanged it would have/)).toContainText(wanted.toFixed(2));
  await undo(page);
  await expectNet(page, before);
});
