import { expect, test } from "./fixture";
import { board, chosen, figure, fingers, job, openBoard, pointAt, saved, undoAll } from "./board";
import { expectAccessible, expectAccessibleInDark, expectNoWider, press, redo } from "./page";

/** A bait drawn on the board: by mouse, by keys, by finger; what is refused; parts of every kind; back to the first byte. */

test("a body from a form, shaped by mouse: a drag is one step, Escape takes it back, and undo gives the same file", async ({
  page,
}) => {
  await openBoard(page);
  const first = await saved(page);
  await job(page, "Whole bait");
  const volume = await figure(page, "Volume");
  await page.getByRole("button", { name: "Stout", exact: true }).click();
  await expect.poll(() => figure(page, "Volume")).toBeGreaterThan(volume);
  await page.getByRole("textbox", { name: "Greatest height" }).fill("26");
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: "Take this body" }).click();

  await job(page, "Outline");
  const { x, y } = await pointAt(page, 5);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x, y - 12, { steps: 4 });
  const before = await chosen(page).innerText();
  await page.keyboard.press("Escape");
  await expect(chosen(page)).not.toHaveText(before);
  await page.mouse.up();

  const bare = await figure(page, "Volume");
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x, y - 20, { steps: 6 });
  await page.mouse.up();
  await expect.poll(() => figure(page, "Volume")).toBeGreaterThan(bare);
  // A double press on the curve puts a point there.
  const points = page.locator("line.point.own");
  const count = await points.count();
  const [a, b] = [await pointAt(page, 7), await pointAt(page, 8)];
  await page.mouse.dblclick((a.x + b.x) / 2, (a.y + b.y) / 2);
  await expect(points).toHaveCount(count + 1);
  // Dragged far below the belly: refused where it is wrong; the figures are the last good ones.
  const low = await pointAt(page, 5);
  const good = await figure(page, "Volume");
  await page.mouse.move(low.x, low.y);
  await page.mouse.down();
  await page.mouse.move(low.x, low.y + 320, { steps: 2 });
  await expect(board(page).getByRole("alert")).toContainText("top at or above bottom");
  await page.mouse.up();
  await expect(page.getByText("The figures are those of the last drawing that could be made.")).toBeVisible();
  expect(await figure(page, "Volume")).toBe(good);
  await page.getByRole("button", { name: "Take the change back" }).click();
  await expect(board(page).getByRole("alert")).toBeHidden();

  const drawn = await saved(page);
  // The form, the drag, the point.
  expect(await undoAll(page)).toBe(3);
  expect(await saved(page)).toBe(first);
  for (let i = 0; i < 3; i++) await redo(page);
  expect(await saved(page)).toBe(drawn);
  await expectAccessible(page);
  await expectAccessibleInDark(page);
});

test("the same by keys and numbers alone, with a part of every kind @long", async ({ page }) => {
  await openBoard(page);
  const first = await saved(page);
  await board(page).focus();
  await page.keyboard.press("PageDown");
  await page.keyboard.press("PageDown");
  await expect(chosen(page)).toContainText("Top edge, point 2 of 5: station 14.0");
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("Shift+ArrowUp");
  await page.keyboard.press("ArrowLeft");
  await expect(chosen(page)).toContainText("station 14.1 mm, height 6.3 mm");
  await page.keyboard.press("Insert");
  await expect(chosen(page)).toContainText("point 3 of 6");
  await page.keyboard.press("Delete");
  await expect(chosen(page)).toContainText("of 5");
  const side = page.getByRole("complementary", { name: "Inputs" });
  await side.getByRole("textbox", { name: "Height of point 4" }).fill("6");
  await page.keyboard.press("Enter");
  await side.getByRole("textbox", { name: "Station of point 5" }).fill("92");
  await page.keyboard.press("Enter");
  await side.getByRole("combobox", { name: "Curve" }).selectOption("Bottom edge");
  await expect(side.getByRole("textbox", { name: "Station of point 5" })).toHaveValue("92.0");

  await job(page, "Section");
  await side.getByRole("textbox", { name: "Roundness above" }).fill("3");
  await page.keyboard.press("Enter");
  await side.getByRole("button", { name: "Type readings" }).press("Enter");
  await expect(side.getByRole("textbox", { name: "Height of reading 1" })).toBeFocused();
  await job(page, "Parts");
  const parts = side.getByRole("listitem");
  const count = await parts.count();
  const kinds = side.getByRole("combobox", { name: "New part" });
  const add = side.getByRole("button", { name: "Add", exact: true });
  await side.getByRole("button", { name: /^Bib/ }).click();
  // A press by key that takes its own button away leaves the keys with what stands in its place.
  await side.getByRole("button", { name: "Remove Bib" }).press("Enter");
  await expect(parts).toHaveCount(count - 1);
  await expect(side.getByRole("button", { name: "belly Hook with ring" })).toBeFocused();
  for (const label of await kinds.locator("option").allInnerTexts()) {
    await kinds.selectOption(label);
    await add.click();
  }
  await expect(parts).toHaveCount(count + 6);
  // The coat, added last, has no place on the drawing: what is chosen is said all the same.
  await expect(chosen(page)).toHaveText(/coat: set by its numbers alone$/);
  // The weight finds a place above its usual one, where it would overlap another; a third hook finds none, and this is said.
  await expect(side.getByText(/"weight.*overlap/)).toHaveCount(0);
  await expect(side.getByText(/^No free place was found for it/).last()).toBeVisible();
  await expect(side.getByText(/can reach each other/).first()).toBeVisible();
  // An optional key is switched on, typed, and the weight follows; the part is moved by keys on the board.
  await side.getByRole("button", { name: /^weight/ }).click();
  await side.getByRole("textbox", { name: "Mass", exact: true }).fill("1.5");
  await page.keyboard.press("Enter");
  await side.getByRole("checkbox", { name: /^Hole/ }).check();
  await side.getByRole("textbox", { name: "Hole", exact: true }).fill("0.3");
  await page.keyboard.press("Enter");
  await board(page).focus();
  await page.keyboard.press("ArrowUp");
  await expect(chosen(page)).toContainText("weight, the weight: station 36.8 mm, height 4.");
  await expectAccessible(page);
  await expectAccessibleInDark(page);

  const drawn = await saved(page);
  const steps = await undoAll(page);
  expect(await saved(page)).toBe(first);
  for (let i = 0; i < steps; i++) await redo(page);
  expect(await saved(page)).toBe(drawn);
});

test("a finger drags a point and a part at 360 px, one view at a time @phone-only", async ({ page }) => {
  await openBoard(page);
  await expectNoWider(page);
  const drag = (from: { x: number; y: number }, by: { x: number; y: number }): Promise<void> =>
    fingers(page, [from], [{ x: from.x + by.x, y: from.y + by.y }]);
  const volume = await figure(page, "Volume");
  // The finger comes down beside the point: within 22 px it is taken, and nothing jumps.
  const { x, y } = await pointAt(page, 2);
  await drag({ x: x + 9, y: y - 9 }, { x: 0, y: -15 });
  await expect(chosen(page)).toContainText("point 3 of 5");
  await expect.poll(() => figure(page, "Volume")).toBeGreaterThan(volume);
  const moved = await pointAt(page, 2);
  expect(Math.abs(moved.x - x)).toBeLessThan(4);
  await press(page, page.getByRole("button", { name: "From above" }));
  const wide = await pointAt(page, 2);
  await drag(wide, { x: 0, y: -12 });
  await expect(chosen(page)).toContainText("Half-breadth, point 3");
  await job(page, "Parts");
  await press(page, page.getByRole("button", { name: "Side", exact: true }));
  // Where two parts have a grip at one place, the one that is chosen in the list is taken.
  await press(page, page.getByRole("button", { name: /^Tie eye/ }));
  await page.evaluate(() => scrollTo(0, 0));
  const place = await chosen(page).innerText();
  const eye = await page.locator("line.grip").last().boundingBox();
  if (eye === null) throw new Error("the tie eye has no grip");
  await drag({ x: eye.x + 5, y: eye.y + 5 }, { x: -6, y: -30 });
  await expect(chosen(page)).not.toHaveText(place);
  await expect(chosen(page)).toContainText("Tie eye: station");
  expect(await undoAll(page)).toBe(3);
  await expectNoWider(page);
  await expectAccessible(page);
});
