import { expect, test } from "./fixture";
import {
  enter,
  expectNoWider,
  fromMenu,
  job,
  kept,
  newBait,
  numberIn,
  open,
  press,
  type,
  unfold,
} from "./page";

/** A press as a hand does it: what it leaves has time to move what is pressed. */
const HELD = { delay: 80 };

test(
  "a number that still stands in its field counts with the press that leaves it",
  { tag: "@phone" },
  async ({ page }) => {
    await open(page, "weigh", true);
    await newBait(page);
    // What says that it is open lies over the page for a while, and takes no press.
    const notice = page.getByRole("status").filter({ hasText: /is open/ });
    await expect(notice).toBeVisible();
    expect(
      await notice.evaluate((one) => {
        const { left, top, width, height } = one.getBoundingClientRect();
        return one.contains(document.elementFromPoint(left + width / 2, top + height / 2));
      }),
    ).toBe(false);
    await press(page, page.getByRole("link", { name: "Weigh", exact: true }));
    const main = page.getByRole("main");
    await job(page, "Blank on the scale");
    await main.getByRole("textbox", { name: "Reading", exact: true }).fill("3,95");
    // It counts also where the page has come back with it, and no hand has been in the field since.
    await kept(page);
    await page.reload();
    // A wet finger: the second press comes with the first, and is none for what lies there in the next step.
    await page.evaluate(() => {
      const { dataset } = document.documentElement;
      document.addEventListener("click", ({ target }) => {
        const text = target instanceof Element ? target.textContent : "";
        dataset["heard"] = `${dataset["heard"] ?? ""}${text};`;
      });
    });
    await main.getByRole("button", { name: "Take it, and on to ‘Under water’" }).dblclick(HELD);
    await expect(main.getByRole("heading", { name: "Weigh it under water" })).toBeVisible();
    await expect(page.locator("html")).toHaveAttribute("data-heard", "Take it, and on to ‘Under water’;");
    for (const text of ["9.59", "9.61"]) await enter(page, /^Rise of the scale/, text);
    await main.getByRole("textbox", { name: /^Rise of the scale/ }).fill("9.63");
    await main.getByRole("button", { name: "Take it into the account" }).click(HELD);
    await expect(main.getByText("✓ 1 reading is in the account.")).toBeVisible();
    await job(page, "Blank on the scale");
    await expect(main.getByText(/^9\.61\sg$/)).toBeVisible();

    await press(page, page.getByRole("link", { name: "Float", exact: true }));
    const tub = await unfold(page, "Tub reading");
    // A wet finger: the second press comes with the first, and the watch goes on.
    await tub.getByRole("button", { name: "First mark: start" }).dblclick();
    await page.waitForTimeout(400);
    await tub.getByRole("button", { name: /Second mark: stop/ }).click();
    await tub.getByRole("button", { name: /^Drop/ }).click();
    for (const seconds of ["6.1", "5.8"]) {
      await tub.getByLabel("or type it, s").fill(seconds);
      await tub.getByLabel("or type it, s").press("Enter");
    }
    const correct = tub.getByRole("button", { name: "Correct the account by this" });
    await expect(correct).toBeEnabled();
    await tub.getByLabel("or type it, s").fill("6.0");
    await kept(page);
    await page.reload();
    await expect(correct).toBeEnabled();
    await correct.click(HELD);
    await expect(tub.getByRole("list", { name: "Corrections in the account" })).toContainText(
      /5\.97 s \(3 timed\)/,
    );
    await expect(tub.getByText("The account agrees with this reading.")).toBeVisible();
    await expectNoWider(page);
  },
);

test("a form with a number that was refused is not sent, and leads to it", async ({ page }) => {
  await open(page, "weigh", true);
  await fromMenu(page, "New bait", "New bait");
  const dialog = page.getByRole("dialog", { name: "A new bait" });
  const length = dialog.getByRole("textbox", { name: "Length" });
  for (const wrong of ["0", "-5", "long", "99999"]) {
    await length.fill(wrong);
    await dialog.getByRole("button", { name: "Make this bait" }).click(HELD);
    await expect(length).toBeFocused();
    await expect(dialog.getByRole("alert")).toBeVisible();
  }
  await page.keyboard.press("Escape");
  await page.keyboard.press("Escape");
  await expect(dialog).toHaveCount(0);
  await job(page, "Own box");
  const main = page.getByRole("main");
  await press(page, main.getByRole("button", { name: "Add a thing" }));
  await main.getByRole("textbox", { name: "Name", exact: true }).fill("treble 8");
  await main.getByLabel("Together they weigh").fill("4.2");
  await main.getByLabel("Pieces on the scale").fill("0");
  const put = main.getByRole("button", { name: "Put it into the box" });
  await put.click(HELD);
  await expect(main.getByLabel("Pieces on the scale")).toBeFocused();
  await main.getByLabel("Pieces on the scale").fill("7");
  await put.click(HELD);
  await expect(main.getByText("0.600 g each")).toBeVisible();
});

test("Weigh measures the attitude against the target too, and the plan is for the grams of its head", async ({
  page,
}) => {
  await open(page, "weigh", true);
  await newBait(page);
  await press(page, page.getByRole("link", { name: "Weigh", exact: true }));
  const main = page.getByRole("main");
  await press(page, main.getByRole("button", { name: "floats", exact: true }));
  await press(page, main.getByRole("button", { name: "nose-down", exact: true }));
  await enter(page, "Nose down by", "25");
  const head = main.getByRole("region", { name: "The finished bait" });
  await expect(
    head.getByText(/^→ Rests \d+\.\d° more tail-down than wanted: −25\.0° ± 3\.0°$/),
  ).toBeVisible();
  await press(page, main.getByRole("button", { name: "level", exact: true }));
  // The blank turns out otherwise than drawn: the same rise needs other grams.
  const inputs = page.getByRole("complementary", { name: "Inputs" });
  const before = numberIn((await head.getByText(/^in water, to/).innerText()).replace(/^\D*/, ""));
  await type(inputs, "Length", "140");
  const wanted = head.getByText(/^in water, to/);
  await expect
    .poll(async () => numberIn((await wanted.innerText()).replace(/^\D*/, "")))
    .toBeGreaterThan(before + 0.02);
  await job(page, "Ballast plan");
  const now = numberIn((await wanted.innerText()).replace(/^\D*/, ""));
  await expect(main.getByText(/^For \+/)).toContainText(`For +${now.toFixed(2)}`);
});
