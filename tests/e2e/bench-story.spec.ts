import type { Page } from "@playwright/test";
import { expect, test } from "./fixture";
import {
  enter,
  expectNet,
  expectNoWider,
  fromMenu,
  job,
  netGrams,
  numberIn,
  open,
  press,
  type,
  unfold,
} from "./page";

/** Densities in kg/m³: tap water of 20 °C after Tanaka 2001; fresh and sea water (35 g/kg) of 15 °C after EOS-80. */
const TAP_20 = 998.207;
const FRESH_15 = 999.1;
const SEA_15 = 1025.97;
const TIN = 7310; // NIST
/** Digits for toBeCloseTo: within 0.016 g, three numbers rounded to 0.01 g against each other. */
const ROUNDED = 1.5;

/** A row of the account: its numbers from left to right. */
async function row(page: Page, name: string): Promise<readonly number[]> {
  const cells = page
    .getByRole("main")
    .getByRole("row")
    .filter({ has: page.getByRole("rowheader", { name, exact: true }) })
    .first()
    .getByRole("cell");
  return (await cells.allInnerTexts()).map(numberIn);
}

test(
  "the whole bench story, by touch: from a new bait to the same bait in the sea",
  { tag: "@phone-only" },
  async ({ page }) => {
    test.setTimeout(60_000);
    await open(page, "weigh", true);
    const main = page.getByRole("main");
    const takeIt = main.getByRole("button", { name: "Take it into the account" });

    // A bait of one's own. What was being read of the one before is not of this one.
    await job(page, "On the scale");
    await enter(page, "Reading", "1.11");
    await expect(takeIt).toBeEnabled();
    await fromMenu(page, "New bait", "New bait");
    await expect(page.getByLabel("Name of this document")).toHaveValue("New bait");

    // The blank on the scale, before anything is cut into it.
    await expect(takeIt).toBeDisabled();
    await enter(page, "Reading", "3.95");
    await press(page, takeIt);
    await expectNoWider(page);

    // Under water: what it pushes aside.
    await job(page, "Under water");
    for (const text of ["9.59", "9.61", "9.60"]) await enter(page, /^Rise of the scale/, text);
    for (const box of await main.locator("ol").getByRole("checkbox").all())
      if (!(await box.isChecked())) await box.tap();
    await page.getByLabel("correct for the air that carries what is on the scale").uncheck();
    const volume = 9.6 / (TAP_20 / 1e3);
    await expect(page.getByRole("button", { name: /^Volume:/ })).toContainText(volume.toFixed(3));
    await press(page, takeIt);
    await expectNoWider(page);

    // Now the wood is known: what it weighs over what it pushes aside.
    await job(page, "On the scale");
    await expect(page.getByRole("button", { name: /^Density of the body/ })).toContainText(
      (3.95 / volume).toFixed(3),
    );
    await job(page, "Account");
    const [, , blank] = await row(page, "so far");
    expect(blank).toBeCloseTo((FRESH_15 / 1e3) * volume - 3.95, 2);

    // A target, and weights of usual sizes for it.
    await press(page, main.getByRole("button", { name: "Set a target" }));
    const target = await unfold(page, "Target");
    await type(target, "Net buoyancy wanted", "0.50");
    await press(page, target.getByRole("checkbox", { name: "a certain rest trim too" }));
    await type(target, "Rest trim wanted", "0");
    await type(target, "Tolerance of trim", "5");
    await job(page, "Own box");
    await press(page, page.getByRole("button", { name: "Add weights of usual sizes" }));
    await job(page, "Ballast plan");
    await press(page, page.getByRole("button", { name: "Find plans" }));
    const take = page.getByRole("button", { name: "Take this plan" });
    await expect(take).toBeVisible();
    await expectNoWider(page);
    await press(page, take);
    await expect.poll(async () => Math.abs((await netGrams(page)) - 0.5)).toBeLessThanOrEqual(0.051);
    await expect(page.getByText("On target")).toBeVisible();

    // The finished bait weighs 0.04 g more than reckoned. The scale was as good both times: the wood takes half of it.
    const planned = await netGrams(page);
    await job(page, "Account");
    const [reckoned = NaN] = await row(page, "finished");
    await job(page, "On the scale");
    await press(page, page.getByRole("button", { name: "everything" }));
    await enter(page, "Reading", (reckoned + 0.04).toFixed(2));
    await press(page, takeIt);
    await expect.poll(async () => (await netGrams(page)) - planned).toBeCloseTo(-0.02, ROUNDED);
    const readings = page.getByRole("region", { name: "Readings in the document" }).getByRole("listitem");
    await expect(readings).toHaveCount(3);
    await job(page, "Account");
    const [mass = NaN, displaced = NaN] = await row(page, "finished");
    expect(mass).toBeCloseTo(reckoned + 0.02, ROUNDED);
    expect(await netGrams(page)).toBeCloseTo((FRESH_15 / 1e3) * displaced - mass, ROUNDED);

    // In the tub it rises a fifth faster than reckoned; drag goes with the square of the speed: 1.44 of the net.
    await press(page, page.getByRole("link", { name: "Float" }));
    const account = await netGrams(page);
    const rise = numberIn(await page.getByRole("button", { name: /^Rises at: \d/ }).innerText());
    const tub = await unfold(page, "Tub reading");
    await type(tub, "Between the two marks", "400");
    const seconds = 400 / (1.2 * rise);
    for (const more of [-0.02, 0, 0.02]) {
      await tub.getByLabel("or type it, s").fill((seconds + more).toFixed(2));
      await press(page, tub.getByRole("button", { name: "Add", exact: true }));
    }
    const correct = tub.getByRole("button", { name: "Correct the account by this" });
    await expect(correct).toBeEnabled();
    const said = numberIn(await tub.locator("table .why").first().innerText());
    expect(said / account).toBeGreaterThan(1.44 * 0.85);
    expect(said / account).toBeLessThan(1.44 * 1.15);
    await expectNoWider(page);
    await press(page, correct);
    await expectNet(page, said);
    // Lighter by what the net is greater.
    const entry = tub.getByRole("list", { name: "Corrections in the account" }).getByRole("listitem");
    await expect(entry).toContainText(/rises 400 mm in .* s \(3 timed\)/);
    const took = numberIn((await entry.innerText()).replace(/^[^:]*:/, ""));
    expect(took).toBeCloseTo(account - said, ROUNDED);

    // For the sea: what the heavier water lifts has to be hung on, with hooks and rings of other weights.
    const swaps = await unfold(page, "Swaps");
    await press(page, swaps.getByRole("button", { name: "Sea", exact: true }));
    await press(page, swaps.getByRole("button", { name: "Put round masses into the box" }));
    await press(page, swaps.getByRole("button", { name: /^Look through 13 kinds/ }));
    const lift = ((SEA_15 - FRESH_15) / 1e3) * displaced;
    const before = swaps.getByText(/^Unchanged it would have/);
    await expect(before).toBeVisible();
    expect(numberIn(await before.innerText())).toBeCloseTo(said + lift, ROUNDED);
    const exact = numberIn((await swaps.getByText(/^Or exactly:/).innerText()).replace(/^[^:]*:/, ""));
    expect(exact).toBeCloseTo(lift / (1 - SEA_15 / TIN), ROUNDED);
    const best = swaps.getByRole("listitem").first();
    const promised = numberIn(await best.locator(".why").innerText());
    expect(Math.abs(promised - said)).toBeLessThanOrEqual(0.03);
    await expectNoWider(page);
    await press(page, best.getByRole("button", { name: "Fit it" }));
    await expectNet(page, promised);
    const water = await unfold(page, "Water");
    await expect(water.getByRole("textbox", { name: "Salinity", exact: true })).toHaveValue("35.0");
    await expectNoWider(page);
  },
);
