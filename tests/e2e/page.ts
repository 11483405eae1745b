import { AxeBuilder } from "@axe-core/playwright";
import type { Locator, Page } from "@playwright/test";
import { expect } from "./fixture";

/** The words and places by which a person finds their way; tests speak of the page through these. */

export async function open(
  page: Page,
  view: "weigh" | "float" | "swim" = "float",
  still = false,
): Promise<void> {
  if (still) await page.emulateMedia({ reducedMotion: "reduce" });
  await page.goto(`./#${view}`);
  await expect(net(page)).toBeVisible();
}

export const isPhone = (page: Page): boolean => (page.viewportSize()?.width ?? 0) < 900;

/** The big number of the verdict. */
export const net = (page: Page): Locator => page.getByRole("button", { name: /^Net buoyancy/ });

/** Grams on the big number. */
export async function netGrams(page: Page): Promise<number> {
  const text = (await net(page).innerText()).replace("\u2212", "-");
  const found = /[-+]?\d+\.\d+/.exec(text);
  if (found === null) throw new Error(`no number in ‘${text}’`);
  return Number(found[0]);
}

/** Opens all that is folded, from the outside in. */
export async function unfoldAll(page: Page): Promise<void> {
  const folded = page.locator("details:not([open]) > summary");
  while ((await folded.count()) > 0) await folded.first().click();
}

/** Waits until something has stood still for some frames: what loads above it, or brings it into sight, is done. */
export const still = (what: Locator): Promise<void> =>
  what.evaluate(
    (one) =>
      new Promise((then) => {
        let before = "";
        let same = 0;
        const look = (): void => {
          const { x, y, width, height } = one.getBoundingClientRect();
          const now = [x, y, width, height].join(" ");
          same = now === before ? same + 1 : 0;
          before = now;
          if (same < 6) requestAnimationFrame(look);
          else then();
        };
        look();
      }),
  );

/** Waits for the big number to be this many grams. */
export async function expectNet(page: Page, grams: number): Promise<void> {
  await expect.poll(() => netGrams(page)).toBe(grams);
}

/** Opens a folded section of the inputs, which a phone starts with folded. */
export async function unfold(page: Page, title: string): Promise<Locator> {
  const section = page
    .getByRole("complementary", { name: "Inputs" })
    .locator("details")
    .filter({ has: page.getByRole("heading", { name: title, exact: true }) });
  if ((await section.getAttribute("open")) === null) await section.locator("summary").first().click();
  await expect(section).toHaveAttribute("open", "");
  return section;
}

/** Types into a number field and takes it. */
export async function type(section: Locator, label: string, text: string): Promise<void> {
  const field = section.getByRole("textbox", { name: label, exact: true }).first();
  await field.fill(text);
  await field.press("Enter");
}

export async function undo(page: Page): Promise<void> {
  await page.getByRole("button", { name: /^Undo/ }).click();
}

export async function redo(page: Page): Promise<void> {
  await page.getByRole("button", { name: /^Redo/ }).click();
}

/** Presses a button of the header, or of its menu on a phone. */
export async function fromMenu(page: Page, wide: string, narrow: string): Promise<void> {
  if (isPhone(page)) {
    await page.getByRole("button", { name: "Menu", exact: true }).click();
    await page.getByRole("button", { name: narrow, exact: true }).click();
  } else await page.getByRole("button", { name: wide, exact: true }).click();
}

/** Seconds on the clock. */
export async function clock(page: Page): Promise<number> {
  const text = await page.getByRole("status", { name: "Time" }).innerText();
  return Number.parseFloat(text);
}

/** Waits until the whole run has been recorded: then it can be saved as CSV. */
export async function recorded(page: Page): Promise<void> {
  await expect(page.getByRole("button", { name: "CSV" })).toBeEnabled();
}

/** A touch on a phone, a click on a desk. */
export async function press(page: Page, what: Locator): Promise<void> {
  if (isPhone(page)) await what.tap();
  else await what.click();
}

/** Says that something is to be gone for good: a press that comes before the question can have been read is none. */
export async function forgetForEver(dialog: Locator, what: Locator): Promise<void> {
  const button = dialog.getByRole("button", { name: "Forget for ever" });
  await expect(async () => {
    if (await button.isVisible()) await button.click({ timeout: 2000 });
    await expect(what).toHaveCount(0, { timeout: 2000 });
  }).toPass();
}

/** Turns to a step of the bench, or to what is looked at at any time. */
export async function job(page: Page, name: string): Promise<void> {
  const steps = page.getByRole("navigation", { name: "Steps of the bench" });
  await press(page, steps.getByRole("button", { name: new RegExp(`^${name}(, done|, next)?$`) }));
}

/** A bait of one's own, by the usual answers. */
export async function newBait(page: Page): Promise<void> {
  await fromMenu(page, "New bait", "New bait");
  await press(page, page.getByRole("button", { name: "Make this bait" }));
  // Its first ballast is planned before it opens.
  await expect(page.getByRole("dialog")).toHaveCount(0);
}

/** Types into a number field of the main part and takes it. */
export async function enter(page: Page, label: string | RegExp, text: string): Promise<void> {
  const field = page.getByRole("main").getByRole("textbox", { name: label, exact: true }).first();
  await field.fill(text);
  await field.press("Enter");
}

/** The first number of the page's text, with its real minus sign. */
export function numberIn(text: string): number {
  const found = /[-+]?\d+(\.\d+)?/.exec(text.replaceAll("\u2212", "-"));
  if (found === null) throw new Error(`no number in ‘${text}’`);
  return Number(found[0]);
}

const RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

/** Axe in the page itself, which has no frames, and telling only what is wrong: it takes half the time. */
const axeOn = (page: Page): AxeBuilder =>
  new AxeBuilder({ page }).setLegacyMode().options({ resultTypes: ["violations"] });

/** Axe finds nothing in the page, or in a part of it, as it stands. Colours are weighed on a desk: a phone has the same. */
export async function expectAccessible(page: Page, part?: string): Promise<void> {
  const axe = axeOn(page).withTags(RULES);
  if (isPhone(page)) axe.disableRules(["color-contrast"]);
  expectNothing(await (part === undefined ? axe : axe.include(part)).analyze());
}

/** The same page, or a part of it, on dark paper: only its colours have changed. On a phone they are those of the desk. */
export async function expectAccessibleInDark(page: Page, part?: string): Promise<void> {
  if (isPhone(page)) return;
  await page.emulateMedia({ colorScheme: "dark" });
  await expect(page.locator("html")).toHaveAttribute("data-theme", "dark");
  const axe = axeOn(page).withRules(["color-contrast"]);
  expectNothing(await (part === undefined ? axe : axe.include(part)).analyze());
  await page.emulateMedia({ colorScheme: "light" });
  await expect(page.locator("html")).toHaveAttribute("data-theme", "light");
}

type Found = Awaited<ReturnType<AxeBuilder["analyze"]>>;

function expectNothing({ violations }: Found): void {
  expect(violations.map(({ id, nodes }) => ({ id, nodes: nodes.map(({ html }) => html) }))).toEqual([]);
}

/** Nothing makes the page wider than its window. */
export async function expectNoWider(page: Page): Promise<void> {
  const { scroll, client } = await page.evaluate(() => ({
    scroll: document.documentElement.scrollWidth,
    client: document.documentElement.clientWidth,
  }));
  expect(scroll).toBeLessThanOrEqual(client);
}

/** The field with the name of what is open. */
export const name = (page: Page): Locator => page.getByLabel("Name of this document");

/** All that was edited is written down. */
export const kept = (page: Page): Promise<void> => expect(page.locator("[data-kept=yes]")).toHaveCount(1);
