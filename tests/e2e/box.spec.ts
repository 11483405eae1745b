import type { Locator, Page } from "@playwright/test";
import { expect, test } from "./fixture";
import { expectAccessible, expectNet, expectNoWider, job, netGrams, open, press } from "./page";

/** Water of 15 °C, kg/m³, after EOS-80. */
const FRESH_15 = 999.1;

const thing = (page: Page, name: string): Locator =>
  page.getByRole("main").getByRole("listitem").filter({ hasText: name });

test(
  "the own box and the bait are one: a weighed hook goes onto its hanger in three presses, is counted, and comes off again",
  { tag: "@phone-long" },
  async ({ page }) => {
    await open(page, "weigh", true);
    await job(page, "Own box");
    await press(page, page.getByRole("button", { name: "Add a thing" }));
    const form = page.getByRole("form", { name: "A new thing" });
    await form.getByRole("textbox", { name: "Name" }).fill("fine treble");
    await form.getByRole("textbox", { name: "Together they weigh" }).fill("7.40");
    // The number is still being typed when the button is pressed: it must not move away from under the finger.
    const into = form.getByRole("button", { name: "Put it into the box" });
    await into.scrollIntoViewIfNeeded();
    const box = await into.boundingBox();
    if (box === null) throw new Error("the button is not seen");
    await page.mouse.move(box.x + box.width / 2, box.y + 4);
    await page.mouse.down();
    await page.mouse.up();
    const hook = thing(page, "fine treble");
    await expect(hook).toContainText("10 at hand");

    const before = await netGrams(page);
    await press(page, hook.getByRole("button", { name: /^Put it on the bait/ }));
    await expectAccessible(page, "main");
    await expectNoWider(page);
    const belly = hook.getByRole("button", { name: /^belly/ });
    const off = Number(/([\d.]+)\s*g comes off/.exec(await belly.innerText())?.[1]);
    await press(page, belly);
    await expect(hook).toContainText("1 on this bait, 9 left");
    // In water a hook of carbon steel (7820 kg/m³) counts by what it exceeds the water it displaces.
    const more = (0.74 - off) * (1 - FRESH_15 / 7820);
    await expect.poll(async () => before - (await netGrams(page))).toBeCloseTo(more, 1.5);
    const on = await netGrams(page);
    await press(page, hook.getByRole("button", { name: /^Take it off the bait/ }));
    await expect(hook).not.toContainText("on this bait");
    await press(page, page.getByRole("button", { name: /^Undo:/ }));
    await expectNet(page, on);
    await expect(hook).toContainText("1 on this bait, 9 left");

    // In a long list, too, a place that cannot be is told where it was asked for.
    await press(page, page.getByRole("button", { name: "Add weights of usual sizes" }));
    const rod = thing(page, "brass rod 5 mm, 5 mm long");
    await press(page, rod.getByRole("button", { name: /^Put it on the bait/ }));
    await rod.getByRole("textbox", { name: "Station of its middle" }).fill("200");
    await press(page, rod.getByRole("button", { name: "Put it there" }));
    await expect(rod.getByRole("alert")).toContainText('choose "outside" for it');
    await expect(rod.getByRole("alert")).toBeInViewport();
  },
);

test(
  "by hand: sealer, weight and hook come on at their stages by plain buttons; a sealed blank is weighed as what it is @long",
  { tag: "@phone" },
  async ({ page }) => {
    await open(page, "weigh", true);
    await job(page, "Account");
    const main = page.getByRole("main");
    const before = await netGrams(page);
    const add = (name: string) => press(page, main.getByRole("button", { name: `+ ${name}`, exact: true }));
    await add("sealer");
    await expect(main.getByRole("rowheader", { name: "sealer coat" })).toBeVisible();
    const sealed = await netGrams(page);
    // 0.03 mm of a film a little denser than water: it hardly counts in the water.
    expect(Math.abs(sealed - before)).toBeLessThan(0.05);
    await add("weight");
    // A tin ball of 5 mm, 7310 kg/m³ (NIST), in place of as much wood.
    const volume = (Math.PI / 6) * 0.5 ** 3;
    await expect.poll(async () => sealed - (await netGrams(page))).toBeGreaterThan(volume * (7.31 - 1));
    await add("hook");
    await expect(main.getByRole("rowheader", { name: /^hanger hook/ })).toBeVisible();
    await expectNoWider(page);
    await expectAccessible(page, "main");
    await press(page, main.getByLabel(/^change when things come on/));
    await press(page, main.getByRole("button", { name: /^Take off.*hanger hook/ }));
    await press(page, main.getByRole("button", { name: /^Take off.*weight ballast/ }));
    await expect.poll(() => netGrams(page)).toBe(sealed);

    await job(page, "Blank on the scale");
    await press(page, main.getByRole("button", { name: "sealed blank" }));
    const chips = main.getByRole("group", { name: "On the scale" });
    await expect(chips.getByRole("button", { pressed: true })).toHaveText(
      ["body", "sealer"].map((one) => new RegExp(one)),
    );
    await job(page, "Under water");
    await press(page, main.getByRole("button", { name: "sealed blank" }));
    await expect(
      main.getByRole("group", { name: "What goes under" }).getByRole("button", { pressed: true }),
    ).toHaveCount(2);
  },
);
