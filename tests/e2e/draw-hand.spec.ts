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
import { expectAccessible, expectNoWider, fromMenu, numberIn, press } from "./page";

/** Looking closer, several points at once, snapping, and the handles of a section. */

test("wheel and keys look closer where the pointer is, in all three views at one scale; a frame takes several points along @long", async ({
  page,
}) => {
  await openBoard(page);
  const first = await saved(page);
  const at = await pointAt(page, 2);
  await page.mouse.move(at.x, at.y);
  await page.mouse.wheel(0, -600);
  await expect(page.getByTitle("The whole bait (0)")).toBeVisible();
  // The same place is still under the pointer, and the other views went along: the station's mark is at one x in both.
  await expect.poll(async () => Math.round((await pointAt(page, 2)).x - at.x)).toBe(0);
  const marks = page.locator("path.sign.station");
  const [side, above] = [await middleOf(marks.nth(0)), await middleOf(marks.nth(1))];
  expect(Math.abs(side.x - above.x)).toBeLessThan(0.5);
  await page.keyboard.press("0");
  await expect(page.getByTitle("The whole bait (0)")).toBeHidden();
  await expect(page.locator("line.point.own")).toHaveCount(5);

  // A frame round the middle of the bait: one point of either edge; they move together, by keys and by hand.
  const [a, b] = [await pointAt(page, 2), await pointAt(page, 3)];
  await page.mouse.move((a.x + b.x) / 2, a.y - 30);
  await page.mouse.down();
  await page.mouse.move(a.x + 40, a.y + 250, { steps: 4 });
  await page.mouse.up();
  await expect(chosen(page)).toHaveText("2 points are chosen: 1 of top edge, 1 of bottom edge");
  await expect(inputs(page).getByText("Chosen too: point 3 of bottom edge.")).toBeVisible();
  const height = inputs(page).getByRole("textbox", { name: "Height of point 3" });
  const before = Number(await height.inputValue());
  await page.keyboard.press("Shift+ArrowUp");
  await page.keyboard.press("ArrowUp");
  await expect(height).toHaveValue((before + 1.1).toFixed(1));
  await page.keyboard.press("Control+a");
  await expect(chosen(page)).toHaveText("5 points are chosen: 5 of top edge");
  await page.keyboard.press("Escape");

  // Near the datum line a drag keeps to it, and says so by a line; Alt suspends it.
  const tail = await pointAt(page, 4);
  const zero = await middleOf(page.locator("path.sign.length"));
  await page.mouse.move(tail.x, tail.y);
  await page.mouse.down();
  await page.mouse.move(tail.x, zero.y - 2, { steps: 3 });
  await expect(page.locator("line.snap.datum")).toHaveCount(1);
  await expect(inputs(page).getByRole("textbox", { name: "Height of point 5" })).toHaveValue("0.0");
  await page.keyboard.down("Alt");
  await page.mouse.move(tail.x, zero.y - 3, { steps: 2 });
  await expect(page.locator("line.snap")).toHaveCount(0);
  await page.keyboard.up("Alt");
  await page.keyboard.press("Escape");
  await page.mouse.up();

  // The section's roundness by its handle; the number stands beside it.
  await job(page, "Section");
  const round = inputs(page).getByRole("textbox", { name: "Roundness above" });
  await expect(round).toHaveValue(/^2/);
  const corner = await middleOf(page.locator("line.grip").first());
  await page.mouse.move(corner.x, corner.y);
  await page.mouse.down();
  await page.mouse.move(corner.x + 12, corner.y - 12, { steps: 4 });
  await page.mouse.up();
  await expect.poll(async () => numberIn(await round.inputValue())).toBeGreaterThan(2.5);
  await expect(chosen(page)).toContainText("Roundness above at station");
  await board(page).focus();
  await page.keyboard.press("ArrowDown");
  // The station that is dragged is what the hand has from then on: in the words, and to the arrows.
  const mark = await middleOf(page.locator("path.sign.station").first());
  await page.mouse.move(mark.x, mark.y);
  await page.mouse.down();
  await page.mouse.move(mark.x + 30, mark.y, { steps: 3 });
  await page.mouse.up();
  await expect(chosen(page)).toHaveText(/^Section at station/);
  await page.keyboard.press("Shift+ArrowRight");
  await expectAccessible(page);
  expect(await undoAll(page)).toBe(3);
  expect(await saved(page)).toBe(first);
});

test("two fingers look closer without a jump, and one moves the drawing; several points by finger @phone-only @long", async ({
  page,
}) => {
  await openBoard(page);
  const volume = await figure(page, "Volume");
  const at = await pointAt(page, 2);
  // The fingers spread round the point: it stays between them.
  await fingers(
    page,
    [
      { x: at.x - 30, y: at.y + 12 },
      { x: at.x + 30, y: at.y - 12 },
    ],
    [
      { x: at.x - 75, y: at.y + 30 },
      { x: at.x + 75, y: at.y - 30 },
    ],
  );
  await expect(page.getByTitle("The whole bait (0)")).toBeVisible();
  const near = page.locator("line.point.own");
  await expect
    .poll(async () => {
      const places = await Promise.all((await near.all()).map((one) => middleOf(one)));
      return Math.min(...places.map((p) => Math.hypot(p.x - at.x, p.y - at.y)));
    })
    .toBeLessThan(2);
  // Nothing was dragged on the way.
  expect(await figure(page, "Volume")).toBe(volume);
  await press(page, page.getByTitle("The whole bait (0)"));
  await press(page, page.getByRole("button", { name: "Several" }));
  for (const index of [1, 2]) {
    const p = await pointAt(page, index);
    await page.touchscreen.tap(p.x, p.y);
  }
  await expect(chosen(page)).toHaveText("2 points are chosen: 2 of top edge");
  await expectNoWider(page);
});

test("a new bait begins on the board as it shall float; its own board; a refused drawing outlives a reload", async ({
  page,
}) => {
  await openBoard(page);
  await fromMenu(page, "New bait", "New bait");
  const dialog = page.getByRole("dialog", { name: "A new bait" });
  await dialog.getByRole("button", { name: "floats", exact: true }).click();
  await dialog.getByRole("button", { name: "level", exact: true }).click();
  await dialog.getByRole("button", { name: "Make this bait" }).click();
  await expect(dialog).toBeHidden();
  // It floats and rests level from the first picture on.
  await expect.poll(() => figure(page, "Net buoyancy")).toBeGreaterThan(0.05);
  await expect.poll(async () => Math.abs(await figure(page, "At rest under water"))).toBeLessThan(3);
  await expect(page.getByRole("link", { name: "On to ‘Weigh’" })).toBeVisible();

  // The board that it is cut from is drawn, kept in the file, and said with the figure where it is too small.
  await job(page, "Whole bait");
  await inputs(page).getByRole("button", { name: "Give a board" }).click();
  await expect(inputs(page).getByText("The body fits it.")).toBeVisible();
  const thick = inputs(page).getByRole("textbox", { name: "Thickness of the board" });
  const had = Number(await thick.inputValue());
  await thick.fill(String(had - 5));
  await page.keyboard.press("Enter");
  await expect(
    inputs(page).getByText(/The body is .* broad, the board .* thick: .* of it stand over/),
  ).toBeVisible();
  expect(JSON.parse(await saved(page))).toMatchObject({ stock: { pieces: "one", thickness_mm: had - 5 } });

  // A drawing that cannot be made: kept with the bait, and mended after a reload.
  await job(page, "Outline");
  const height = inputs(page).getByRole("textbox", { name: "Height of point 6" });
  await height.fill("-30");
  await page.keyboard.press("Enter");
  const note = page.getByText("The figures are those of the last drawing that could be made.");
  await expect(note).toBeVisible();
  await expect(page.locator("[data-kept=yes]")).toHaveCount(1);
  await page.reload();
  await expect(note).toBeVisible();
  await expect(height).toHaveValue("\u221230.0");
  await height.fill("8");
  await page.keyboard.press("Enter");
  await expect(note).toBeHidden();
  await expectAccessible(page);
});

test("caliper readings belong to their station, and come back with the page @long", async ({ page }) => {
  await openBoard(page);
  await job(page, "Section");
  const side = inputs(page);
  const box = (name: string) => side.getByRole("textbox", { name, exact: true });
  const readAt = async (station: string, more: number): Promise<string> => {
    await box("Station of the section").fill(station);
    await page.keyboard.press("Enter");
    await side.getByRole("button", { name: "Type readings" }).click();
    const thick = box("Thickness of reading 3");
    const value = (Number(await thick.inputValue()) + more).toFixed(1);
    await thick.fill(value);
    await page.keyboard.press("Enter");
    await side.getByRole("button", { name: "Take this section" }).click();
    await expect(side.getByText("This section is drawn here.")).toBeVisible();
    await expect(side.getByRole("button", { name: "Take this section" })).toBeDisabled();
    return value;
  };
  const fore = await readAt("25", 0.4);
  const aft = await readAt("60", -0.3);
  expect(aft).not.toBe(fore);
  // Another station has none: what was read elsewhere is not taken there.
  await box("Station of the section").fill("40");
  await page.keyboard.press("Enter");
  await expect(side.getByRole("button", { name: "Type readings" })).toBeVisible();
  await expect(page.locator("[data-kept=yes]")).toHaveCount(1);
  await page.reload();
  await job(page, "Section");
  const others = side.getByRole("group", { name: "Readings stand at" });
  await others.getByRole("button", { name: "25.0" }).click();
  await expect(box("Thickness of reading 3")).toHaveValue(fore);
  await others.getByRole("button", { name: "60.0" }).click();
  await expect(box("Thickness of reading 3")).toHaveValue(aft);
  await expectAccessible(page);
});
