import type { Locator, Page } from "@playwright/test";
import { expect, test } from "./fixture";
import {
  board,
  chosen,
  figure,
  fingers,
  inputs,
  job,
  middleOf,
  openBoard,
  pointAt,
  saved,
  undoAll,
} from "./board";
import type { Place } from "./board";
import {
  expectAccessible,
  expectAccessibleInDark,
  expectNoWider,
  fromMenu,
  isPhone,
  newBait,
  press,
  redo,
} from "./page";

/** A whole bait from nothing in one way of working alone: by mouse, by keys, by finger. Undo goes back to the first byte. */

/** From the last drawing back to the first file and forward again; as many steps as moves were made. */
async function thereAndBack(page: Page, first: string, moves: number): Promise<void> {
  const drawn = await saved(page);
  expect(drawn).not.toBe(first);
  expect(await undoAll(page)).toBe(moves);
  expect(await saved(page)).toBe(first);
  for (let i = 0; i < moves; i++) await redo(page);
  expect(await saved(page)).toBe(drawn);
}

async function mouse(page: Page, from: Place, by: Place): Promise<void> {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x + by.x, from.y + by.y, { steps: 5 });
  await page.mouse.up();
}

const grip = (page: Page, index: number): Promise<Place> => middleOf(page.locator("line.grip").nth(index));

test("a whole bait from nothing by mouse, back to the first byte and forward again @long", async ({
  page,
}) => {
  await openBoard(page);
  await newBait(page);
  const first = await saved(page);
  const volume = await figure(page, "Volume");
  await mouse(page, await pointAt(page, 3), { x: 0, y: -14 });
  await expect.poll(() => figure(page, "Volume")).toBeGreaterThan(volume);
  const [a, b] = [await pointAt(page, 2), await pointAt(page, 3)];
  await page.mouse.dblclick((a.x + b.x) / 2, (a.y + b.y) / 2);
  await expect(chosen(page)).toContainText("point 4 of");
  const curves = page.getByRole("group", { name: "Curve" });
  await curves.getByRole("button", { name: "Half-breadth" }).click();
  await mouse(page, await pointAt(page, 3), { x: 0, y: -8 });
  await expect(chosen(page)).toContainText("Half-breadth, point 4");
  await job(page, "Section");
  await mouse(page, await grip(page, 0), { x: 9, y: -9 });
  await expect(chosen(page)).toContainText("Roundness above");

  await job(page, "Parts");
  const kinds = inputs(page).getByRole("combobox", { name: "New part" });
  for (const kind of await kinds.locator("option").allInnerTexts()) {
    await kinds.selectOption(kind);
    const add = inputs(page).getByRole("button", { name: "Add", exact: true });
    if (await add.isEnabled()) await add.click();
  }
  await inputs(page)
    .getByRole("button", { name: /^chamber/ })
    .click();
  const place = await chosen(page).innerText();
  await mouse(page, await middleOf(page.locator("line.grip.chosen").first()), { x: -14, y: 0 });
  await expect(chosen(page)).not.toHaveText(place);
  await inputs(page)
    .getByRole("button", { name: /^eyes 2/ })
    .click();
  await inputs(page).getByRole("button", { name: "Remove eyes 2" }).click();
  await job(page, "Whole bait");
  await inputs(page).getByRole("button", { name: "Make it so" }).click();
  await inputs(page).getByRole("button", { name: "Reverse it" }).click();
  await expectAccessible(page);
  await expectAccessibleInDark(page);
  await thereAndBack(page, first, 14);
});

/** Tab by Tab to a control, as somebody without a mouse goes there. */
async function reach(page: Page, target: Locator): Promise<void> {
  await expect(target).toBeVisible();
  for (let i = 0; i < 400; i++) {
    if (await target.evaluate((one) => one === document.activeElement)) return;
    await page.keyboard.press("Tab");
  }
  throw new Error("Tab does not come to it");
}

test("a whole bait from nothing by keys alone @phone @long", async ({ page }) => {
  await openBoard(page);
  const enter = async (target: Locator): Promise<void> => {
    await reach(page, target);
    await page.keyboard.press("Enter");
  };
  const named = (name: string | RegExp): Locator => page.getByRole("button", { name, exact: true });
  if (isPhone(page)) await enter(named("Menu"));
  await enter(named("New bait"));
  const dialog = page.getByRole("dialog", { name: "A new bait" });
  await reach(page, dialog.getByRole("radio").first());
  await page.keyboard.press("ArrowDown");
  await expect(dialog.getByRole("radio").nth(1)).toBeChecked();
  await reach(page, dialog.getByRole("textbox", { name: "Length" }));
  await page.keyboard.press("Control+a");
  await page.keyboard.type("80");
  await page.keyboard.press("Tab");
  await enter(dialog.getByRole("button", { name: "floats", exact: true }));
  await enter(dialog.getByRole("button", { name: "Make this bait" }));
  await expect(dialog).toHaveCount(0);
  const first = await saved(page);
  expect(JSON.parse(first)).toMatchObject({ bait: { length_mm: 80 }, target: { behaves: "floats" } });

  await reach(page, board(page));
  for (const key of ["PageDown", "PageDown", "PageDown", "ArrowUp", "Shift+ArrowUp", "ArrowLeft"])
    await page.keyboard.press(key);
  await expect(chosen(page)).toContainText("Top edge, point 3");
  await page.keyboard.press("Insert");
  await expect(chosen(page)).toContainText("point 4 of");
  const jobs = page.getByRole("group", { name: "What the hand works on" });
  await enter(jobs.getByRole("button", { name: "Section" }));
  await reach(page, board(page));
  await page.keyboard.press("PageDown");
  await page.keyboard.press("ArrowUp");
  await expect(chosen(page)).toContainText("Roundness above");
  await enter(jobs.getByRole("button", { name: "Parts" }));
  await reach(page, inputs(page).getByRole("combobox", { name: "New part" }));
  await page.keyboard.press("Home");
  await enter(inputs(page).getByRole("button", { name: "Add", exact: true }));
  const place = await chosen(page).innerText();
  await reach(page, board(page));
  await page.keyboard.press("Shift+ArrowRight");
  await expect(chosen(page)).not.toHaveText(place);
  await enter(jobs.getByRole("button", { name: "Whole bait" }));
  await reach(page, inputs(page).getByRole("textbox", { name: /^Up/ }));
  for (const key of ["ArrowUp", "ArrowUp", "ArrowDown"]) await page.keyboard.press(key);
  await expect(inputs(page).getByText(/^0\.1.mm up: Net/)).toBeVisible();
  await enter(inputs(page).getByRole("button", { name: "Shift it" }));
  await expect(page.getByRole("button", { name: "Undo: shift the outline" })).toBeVisible();
  await enter(inputs(page).getByRole("button", { name: "Reverse it" }));
  await expectNoWider(page);
  await expectAccessible(page);
  await expectAccessibleInDark(page);
  await thereAndBack(page, first, 7);
});

/** How a hand goes from a place of the board by a way. */
type Hand = (from: Place, by: Place) => Promise<void>;

/** A whole bait by a hand that drags: outline, breadth, section, a part, the whole. */
async function byHand(page: Page, hand: Hand): Promise<void> {
  await openBoard(page);
  await fromMenu(page, "New bait", "New bait");
  await press(page, page.getByRole("button", { name: "suspends", exact: true }));
  await press(page, page.getByRole("button", { name: "Make this bait" }));
  await expect(page.getByRole("dialog")).toHaveCount(0);
  const first = await saved(page);
  const top = (): Promise<void> => page.evaluate(() => scrollTo(0, 0));
  await top();
  const volume = await figure(page, "Volume");
  await hand(await pointAt(page, 3), { x: 0, y: -9 });
  await expect.poll(() => figure(page, "Volume")).toBeGreaterThan(volume);
  await press(page, page.getByRole("button", { name: isPhone(page) ? "From above" : "Half-breadth" }));
  await hand(await pointAt(page, 3), { x: 0, y: -7 });
  await expect(chosen(page)).toContainText("Half-breadth, point 4");
  await job(page, "Section");
  await hand(await grip(page, 0), { x: 12, y: -12 });
  await expect(chosen(page)).toContainText("Roundness above");
  await job(page, "Parts");
  await inputs(page).getByRole("combobox", { name: "New part" }).selectOption({ index: 0 });
  await press(page, inputs(page).getByRole("button", { name: "Add", exact: true }));
  await top();
  const place = await chosen(page).innerText();
  await hand(await middleOf(page.locator("line.grip.chosen").first()), { x: -12, y: 0 });
  await expect(chosen(page)).not.toHaveText(place);
  await job(page, "Whole bait");
  await press(page, inputs(page).getByRole("button", { name: "Make it so" }));
  await expectNoWider(page);
  await expectAccessible(page);
  await expectAccessibleInDark(page);
  await top();
  await thereAndBack(page, first, 6);
}

for (const [where, size] of [
  ["at 360 px", { width: 360, height: 740 }],
  ["on a large screen", { width: 1440, height: 900 }],
] as const)
  test(`a whole bait from nothing by finger ${where} @phone-only @long`, async ({ page }) => {
    await page.setViewportSize(size);
    await byHand(page, (from, by) => fingers(page, [from], [{ x: from.x + by.x, y: from.y + by.y }]));
  });

test("a whole bait from nothing by mouse in a window of 360 px @phone-only @long", async ({ page }) => {
  await byHand(page, (from, by) => mouse(page, from, by));
});
