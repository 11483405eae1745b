import type { Page } from "@playwright/test";
import { expect, test } from "./fixture";
import { expectAccessible, expectNoWider, isPhone, net, open, recorded, still, unfoldAll } from "./page";

/** The frame of the page: what holds for every view alike. */

const VIEWS = ["draw", "weigh", "float", "swim", "reach", "make", "teach"] as const;

async function show(page: Page, view: (typeof VIEWS)[number]): Promise<void> {
  await page.goto(`./#${view}`);
  const main = page.getByRole("main", { name: new RegExp(`^${view}$`, "i") });
  await expect(main.getByRole("button").first()).toBeVisible();
}

test("a storage that throws when it is read or written costs the preferences and nothing else", async ({
  page,
}) => {
  await page.addInitScript(() => {
    const refuse = (): never => {
      throw new DOMException("The operation is insecure.", "SecurityError");
    };
    for (const name of ["getItem", "setItem", "removeItem"] as const) Storage.prototype[name] = refuse;
  });
  await open(page, "float", true);
  await page.getByRole("button", { name: "Dark paper" }).click();
  await expect(page.locator("html")).toHaveAttribute("data-theme", "dark");
  await expect(net(page)).toBeVisible();
});

test("nothing but the page lies below any view @phone", async ({ page }) => {
  await page.emulateMedia({ reducedMotion: "reduce" });
  for (const view of VIEWS) {
    await show(page, view);
    const left = await page.evaluate(() => {
      const ends = [...document.querySelectorAll("main *, aside *, aside")]
        .filter((one) => one.checkVisibility() && !one.classList.contains("unseen"))
        .map((one) => one.getBoundingClientRect().bottom + scrollY);
      const last = Math.max(innerHeight, ...(innerWidth >= 900 ? [] : ends));
      return document.documentElement.scrollHeight - last;
    });
    expect(left, view).toBeLessThanOrEqual(1);
  }
});

test("with a system's own colours what is pressed, selected and current is told from the rest @long", async ({
  page,
}) => {
  await page.emulateMedia({ forcedColors: "active", reducedMotion: "reduce" });
  await show(page, "swim");
  const background = (selector: string): Promise<string> =>
    page
      .locator(selector)
      .first()
      .evaluate((one) => getComputedStyle(one).backgroundColor);
  for (const [on, off] of [
    ["header nav a[aria-current=page]", "header nav a:not([aria-current])"],
    ["[role=tab][aria-selected=true]", "[role=tab][aria-selected=false]"],
    ["main button[aria-pressed=true]", "main button[aria-pressed=false]"],
  ] as const)
    expect(await background(on), on).not.toBe(await background(off));
  await show(page, "weigh");
  const outline = (selector: string): Promise<string> =>
    page
      .locator(selector)
      .first()
      .evaluate((one) => {
        const { backgroundColor, borderBottomColor, color } = getComputedStyle(one);
        return [backgroundColor, borderBottomColor, color].join();
      });
  expect(await outline("main nav button[aria-current=step]")).not.toBe(
    await outline("main nav button:not([aria-current])"),
  );
});

test("two presses of Tab and Enter lead to the clock, and few stops lie before it @long", async ({
  page,
}) => {
  await open(page, "swim", true);
  await recorded(page);
  const play = page.getByRole("group", { name: "Playback" }).getByRole("button", { name: "Play" });
  await page.evaluate(() => {
    (document.activeElement as HTMLElement | null)?.blur();
  });
  await page.keyboard.press("Tab");
  await expect(page.getByRole("button", { name: "Skip to the view" })).toBeFocused();
  await expectAccessible(page, "nav[aria-label='Skip to']");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await expect(play).toBeFocused();

  await page.reload();
  await recorded(page);
  let stops = 0;
  for (; stops < 60; stops++) {
    await page.keyboard.press("Tab");
    if (await play.evaluate((one) => one === document.activeElement)) break;
  }
  // Seven of them are the views, five the greeting of a first visit.
  expect(stops).toBeLessThanOrEqual(34);
});

test("‘Skip to the inputs’ and ‘Skip to the view’ move the focus there @long", async ({ page }) => {
  await open(page, "float", true);
  for (const [name, where] of [
    ["Skip to the inputs", "aside"],
    ["Skip to the view", "main"],
  ] as const) {
    const skip = page.getByRole("button", { name });
    await skip.focus();
    await skip.press("Enter");
    await page.keyboard.press("Tab");
    expect(await page.evaluate((part) => document.activeElement?.closest(part) !== null, where)).toBe(true);
  }
});

test("seven views and the whole name stand in the bar at any width @phone", async ({ page }) => {
  await open(page, "float", true);
  const views = page.getByRole("navigation", { name: "Views" });
  // The views that exist, and as many more as the bar has to bear.
  await views.evaluate((nav) => {
    for (const word of ["Make", "Teach"].slice(nav.children.length - 5)) {
      const more = nav.querySelector("a:not([aria-current])")?.cloneNode(true);
      if (!(more instanceof HTMLElement)) throw new Error("no view to copy");
      more.textContent = word;
      nav.append(more);
    }
  });
  for (const width of isPhone(page) ? [320, 360, 412] : [900, 1024, 1399, 1400, 1440, 1920]) {
    await page.setViewportSize({ width, height: 800 });
    await expectNoWider(page);
    expect(await sticking(page), `${width} px`).toEqual([]);
    const clipped = await page.locator("header").evaluate((bar) => {
      const shown = bar.querySelectorAll(innerWidth < 360 ? "nav a" : "nav a, input");
      return [...shown]
        .filter((one) => one.scrollWidth > one.clientWidth)
        .map((one) => `${one.tagName} ${one.textContent} ${one.scrollWidth} in ${one.clientWidth}`);
    });
    expect(clipped, `${width} px`).toEqual([]);
    await expect(views.getByRole("link")).toHaveCount(7);
  }
  if (isPhone(page)) return;
  // Letters twice as large: the commands get a row of their own, and Draw's figures stand clear of each other.
  await page.setViewportSize({ width: 1440, height: 800 });
  await show(page, "draw");
  await page.locator("html").evaluate((html) => (html.style.fontSize = "32px"));
  await expectNoWider(page);
  const figures = page.getByRole("region", { name: "Figures of the drawing" }).getByRole("button");
  const boxes = await figures.evaluateAll((all) =>
    all.map((one) => {
      const { left, right, top, bottom } = one.getBoundingClientRect();
      return { left, right, top, bottom };
    }),
  );
  expect(boxes).toHaveLength(6);
  for (const [i, { left, top }] of boxes.entries())
    for (const before of boxes.slice(0, i)) expect(before.right <= left || before.bottom <= top).toBe(true);
});

test("words and figures stand in the page's own typeface, and its licence ships with it @long", async ({
  page,
}) => {
  await open(page, "float", true);
  const face = await page.evaluate(async () => {
    await document.fonts.ready;
    const context = document.createElement("canvas").getContext("2d");
    if (context === null) throw new Error("no canvas");
    const width = (text: string, family: string): number => {
      context.font = `100px ${family}`;
      return context.measureText(text).width;
    };
    const { fontFamily } = getComputedStyle(document.body);
    const figures = "0 1 2 3 4 5 6 7 8 9 − +".split(" ").map((one) => width(one, fontFamily).toFixed(2));
    return {
      first: fontFamily.split(",")[0],
      loaded: [...document.fonts]
        .filter((one) => one.status === "loaded")
        .map((one) => one.family.replaceAll('"', "")),
      breadths: new Set(figures).size,
      // The face that stands in until then is as broad: nothing jumps.
      standsIn:
        width("It floats, hangs and runs.", '"Stand-in"') / width("It floats, hangs and runs.", fontFamily),
    };
  });
  expect(face.first).toBe('"Source Sans 3"');
  expect(face.loaded).toContain("Source Sans 3");
  expect(face.breadths).toBe(1);
  expect(Math.abs(face.standsIn - 1)).toBeLessThan(0.05);
  const licence = await page.request.get("./source-sans-3-licence.txt");
  expect(await licence.text()).toContain("SIL OPEN FONT LICENSE Version 1.1");
});

/** Controls that stick out of the window and cannot be scrolled to within a part of the page. */
const sticking = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll("button, a, input, select")]
      .filter((one) => one.checkVisibility() && one.closest("nav[aria-label='Skip to'], .unseen") === null)
      .filter((one) => {
        for (let up = one.parentElement; up !== null; up = up.parentElement)
          if (/auto|scroll/.test(getComputedStyle(up).overflowX)) return false;
        const { left, right } = one.getBoundingClientRect();
        return left < -0.5 || right > innerWidth + 0.5;
      })
      .map((one) => `${one.tagName} ${one.textContent.trim()} ${one.getAttribute("aria-label") ?? ""}`),
  );

test("at 320 px nothing sticks out of any view", { tag: "@phone-only" }, async ({ page }) => {
  test.skip(!isPhone(page));
  await page.setViewportSize({ width: 320, height: 640 });
  for (const view of VIEWS) {
    await show(page, view);
    await unfoldAll(page);
    const parts = page.getByRole("main").locator("nav button, [role=tab]");
    for (let i = 0; i < Math.max(1, await parts.count()); i++) {
      if ((await parts.count()) > 0) {
        // Steps at the tub lead to Float, which has its own turn.
        if (/tub test|swaps/i.test((await parts.nth(i).getAttribute("aria-label")) ?? "")) continue;
        await parts.nth(i).tap();
      }
      await still(page.getByRole("main"));
      await unfoldAll(page);
      await still(page.getByRole("main"));
      await expectNoWider(page);
      expect(await sticking(page), `${view} ${i}`).toEqual([]);
    }
  }
});
