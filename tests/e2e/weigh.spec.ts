import { expect, test } from "./fixture";
import {
  enter,
  expectAccessible,
  expectAccessibleInDark,
  expectNet,
  expectNoWider,
  job,
  net,
  netGrams,
  numberIn,
  open,
  press,
  undo,
} from "./page";

/** The jobs of the bench and the heading that each shows. */
const JOBS = [
  ["Target", "Target"],
  ["Lay out", "Lay out"],
  ["Account", "Account by stage"],
  ["Under water", "Weigh it under water"],
  ["Blank on the scale", "On the scale"],
  ["Ballast plan", "Ballast plan"],
  ["Own box", "Own box"],
  ["What changes what", "What changes what"],
  ["How sure", "How sure"],
] as const;

test("the account adds up, and says what the other side of the skin would do", async ({ page }) => {
  await open(page, "weigh", true);
  await job(page, "Account");
  const before = await netGrams(page);
  const rows = page.getByRole("main").getByRole("row");
  const sums = rows.filter({ has: page.getByRole("rowheader", { name: "so far", exact: true }) });
  await expect(sums).toHaveCount(7);
  // Dressed, it is the finished bait.
  expect(numberIn(await sums.nth(6).getByRole("button").innerText())).toBe(before);

  const seat = page.getByRole("group", { name: "front belly ballast: inside or outside" });
  const said = numberIn(
    await seat
      .locator("xpath=following-sibling::span")
      .innerText()
      .then((text) => text.replace(/^\D*would be/, "")),
  );
  await press(page, seat.getByRole("button", { name: "outside" }));
  // Outside it displaces its own volume, 1.61 g of tungsten less what the hole's wood weighed: it must get lighter.
  expect(said).toBeGreaterThan(0);
  await expect.poll(async () => Math.abs((await netGrams(page)) - before - said)).toBeLessThan(0.011);
  await undo(page);
  await expectNet(page, before);
});

test("the bench story: target, displacement, blank, plan, weighings", async ({ page }) => {
  await open(page, "weigh", true);
  await press(page, page.getByRole("main").getByRole("button", { name: "Set a target" }));
  await press(page, page.getByRole("button", { name: "suspends", exact: true }));

  // Under water: three readings about 7.96 g in tap water of 20 °C (998.207 kg/m³, Tanaka 2001) make 7.974 mL.
  await job(page, "Under water");
  for (const text of ["7.95", "7.97", "7.96"]) await enter(page, /^Rise of the scale/, text);
  const volume = page.getByRole("button", { name: /^Volume:/ });
  await expect(volume).toContainText("7.974");
  // Two pins of 1 mm, 20 mm deep, take 2 · π/4 · 1 · 20 = 31.4 mm³ of it.
  await enter(page, "Pins of the pusher", "2");
  await expect(volume).toContainText("7.943");
  await expect(page.getByText("The surface can pull on what passes through it")).toBeVisible();
  await expect(page.getByText(/Not ticked yet/)).toBeVisible();
  for (const box of await page.getByRole("main").locator("ol").getByRole("checkbox").all()) {
    if (!(await box.isChecked())) await box.check();
  }
  await page.getByLabel("correct for the air that carries what is on the scale").uncheck();
  await expect(page.getByText(/Not ticked yet/)).toHaveCount(0);
  await press(page, page.getByRole("button", { name: "Take it into the account" }));

  // The blank: 3.41 g over 7.943 mL is 0.429 g/mL.
  await job(page, "Blank on the scale");
  await enter(page, "Reading", "3.41");
  await press(page, page.getByRole("button", { name: "Take it into the account" }));
  await expect(page.getByRole("button", { name: /^Density of the body/ })).toContainText("0.429");

  // The plan, from weights of usual sizes.
  await job(page, "Own box");
  await press(page, page.getByRole("button", { name: "Add weights of usual sizes" }));
  await expect(page.getByText("not weighed").first()).toBeVisible();
  await job(page, "Ballast plan");
  await enter(page, "Wall to the skin", "1");
  await press(
    page,
    page.getByRole("group", { name: "Places for weights, at most" }).getByRole("button", { name: "3" }),
  );
  await press(page, page.getByRole("button", { name: "Find plans" }));
  const take = page.getByRole("button", { name: "Take this plan" });
  await expect(take).toBeVisible();
  const wanted = numberIn(await page.getByText(/^For .* net after all coats/).innerText());
  const before = await netGrams(page);
  await press(page, take);
  await expect.poll(async () => Math.abs((await netGrams(page)) - wanted)).toBeLessThanOrEqual(0.06);
  // Taken, it says calmly what is on the bait now, and asks for no other plan.
  await expect(page.getByRole("heading", { name: /^On the bait: / })).toBeVisible();
  await expect(page.getByText(/find plans again|before the last change/)).toHaveCount(0);
  // Another of the plans is still to be had, in its place.
  const second = page.getByRole("button", { name: /^2\. / });
  const [, name = ""] = /^2\. (.+?)(?:\n|[+\u2212]\d|$)/.exec(await second.innerText()) ?? [];
  await press(page, second);
  await press(page, page.getByRole("button", { name: "Take this plan instead" }));
  await expect(page.getByRole("heading", { name: `On the bait: ${name.trim()}`, exact: true })).toBeVisible();
  await expect.poll(async () => Math.abs((await netGrams(page)) - wanted)).toBeLessThanOrEqual(0.06);
  await undo(page);
  await undo(page);
  await expectNet(page, before);
  await press(page, page.getByRole("button", { name: /^Redo/ }));
  await expect(page.getByText("On target")).toBeVisible();

  // The finished bait on the scale narrows the band, and its remainder is said.
  await job(page, "Blank on the scale");
  await press(page, page.getByRole("button", { name: "everything" }));
  await enter(page, "Reading", "9.30");
  await press(page, page.getByRole("button", { name: "Take it into the account" }));
  const readings = page.getByRole("region", { name: "Readings in the document" }).getByRole("listitem");
  await expect(readings).toHaveCount(3);
  await expect(readings.nth(2)).toContainText("left over");
});

test("a stage and a weighed hook are set in the account, each undone by itself @long", async ({ page }) => {
  await open(page, "weigh", true);
  await job(page, "Account");
  const main = page.getByRole("main");
  await main.getByRole("checkbox", { name: /^change when things come on/ }).check();
  const weighed = main.getByRole("checkbox", { name: "belly hook: weighed" });
  await weighed.check();
  const when = main.getByRole("combobox", { name: "belly hook: comes on when" });
  await when.selectOption("painted");
  await expect(when).toHaveValue("painted");
  await expect(weighed).toBeChecked();
  await undo(page);
  await expect(when).toHaveValue("");
  await expect(weighed).toBeChecked();
  await undo(page);
  await expect(weighed).not.toBeChecked();
  await expectAccessible(page);
  await expectNoWider(page);
});

test("a reading that is far from the drawing is warned about @long", async ({ page }) => {
  await open(page, "weigh", true);
  await job(page, "Under water");
  await enter(page, "Rise of the scale", "9.0");
  await expect(page.getByRole("alert").filter({ hasText: "look for a bubble" })).toBeVisible();
});

test("a sinking bait on a thread, and a piece of the wood @long", async ({ page }) => {
  await open(page, "weigh", true);
  await job(page, "Under water");
  await press(page, page.getByRole("button", { name: "It sinks" }));
  await press(page, page.getByRole("button", { name: "everything" }));
  await enter(page, "Weight in air", "9.50");
  await expect(page.getByText("Still missing: Weight under water.")).toBeVisible();
  await enter(page, "Weight under water", "0.30");
  // It loses 9.20 g in tap water of 998.207 kg/m³: 9.2165 mL.
  await expect(page.getByRole("button", { name: /^Volume:/ })).toContainText("9.217");
  await press(page, page.getByRole("button", { name: "Take it into the account" }));
  // In the document's water of 8 °C, 999.85 kg/m³, that volume carries 9.2152 g of the 9.50 g.
  await expectNet(page, -0.28);

  await press(page, page.getByRole("button", { name: "A piece of the wood" }));
  await enter(page, "Weight in air", "4.00");
  await enter(page, "Rise of the scale", "10.00");
  // 4 g over 10.018 mL.
  await expect(page.getByText("0.399\u202fg/mL", { exact: true })).toBeVisible();
});

test("the box is weighed many at a time, and is there after a reload", async ({ page }) => {
  await open(page, "weigh", true);
  await job(page, "Own box");
  await press(page, page.getByRole("button", { name: "Add a thing" }));
  await page.getByRole("textbox", { name: "Name", exact: true }).fill("belly treble");
  // Straight from the field to the button: what the number changes must not move the button away from under the press.
  await page.getByRole("textbox", { name: "Together they weigh", exact: true }).fill("5.2");
  // Ten together, 5.2 g: 0.52 g each.
  await press(page, page.getByRole("button", { name: "Put it into the box" }));
  await expect(page.getByText("0.520\u202fg each")).toBeVisible();
  await page.reload();
  await expect(net(page)).toBeVisible();
  await job(page, "Own box");
  await expect(page.getByText("0.520\u202fg each")).toBeVisible();
});

test("what changes what, and how sure, come from the worker @long", async ({ page }) => {
  await open(page, "weigh", true);
  await job(page, "What changes what");
  // 0.1 g more of a steel hook (7.82 g/mL) in fresh water: −0.1 · (1 − 1/7.82) = −0.087 g.
  const row = page.getByRole("row").filter({ has: page.getByRole("rowheader", { name: "belly hook" }) });
  await expect(row.first()).toContainText("0.087");
  await job(page, "How sure");
  await expect(page.getByRole("button", { name: /^Band of the rise/ })).toContainText("mm/s");
  await expect(page.getByText("The net hangs most on")).toBeVisible();
});

test("axe finds nothing and nothing is too wide: Weigh", { tag: "@phone-long" }, async ({ page }) => {
  await open(page, "weigh", true);
  await press(page, page.getByRole("main").getByRole("button", { name: "Set a target" }));
  await press(page, page.getByRole("button", { name: "suspends", exact: true }));
  await expectAccessible(page);
  for (const [name, title] of JOBS) {
    await job(page, name);
    await expect(page.getByRole("heading", { name: title, level: 2 })).toBeVisible();
    await page.mouse.move(0, 0);
    await expectNoWider(page);
    // The account stands under every step: it is looked at once.
    const part = name === "Account" ? "main" : "[data-bench-step]";
    await expectAccessible(page, part);
    await expectAccessibleInDark(page, part);
  }
});
