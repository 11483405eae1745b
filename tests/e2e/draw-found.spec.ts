import { expect, test } from "./fixture";
import { board, chosen, inputs, job, middleOf, openBoard, pointAt, saved, undoAll } from "./board";
import { expectAccessible, expectAccessibleInDark, expectNoWider, press } from "./page";

/** What the board says by itself: odd places of the drawing whatever the hand works on, and a bib's angle counted both ways. */

test("an edge that leaves no wall is said while it is drawn, at the part, and leads to the part @phone", async ({
  page,
}) => {
  await openBoard(page);
  const found = page.locator(".found");
  await expect(found.getByRole("listitem")).toHaveCount(0);
  await press(page, inputs(page).getByRole("combobox", { name: "Curve" }));
  await inputs(page).getByRole("combobox", { name: "Curve" }).selectOption("Bottom edge");
  await page.evaluate(() => scrollTo(0, 0));
  const belly = await pointAt(page, 2);
  await page.mouse.move(belly.x, belly.y);
  await page.mouse.down();
  await page.mouse.move(belly.x, belly.y - 14, { steps: 4 });
  // The hand holds still, and has not let go.
  await expect(found.getByRole("status")).toHaveText("2 things to look at on this drawing:");
  await expect(page.locator("g.odd")).toHaveCount(2);
  await page.mouse.up();
  await expect(found.getByRole("listitem").first()).toContainText(/front belly.* (skin|wall)/s);
  await expectNoWider(page);
  await expectAccessible(page);
  await expectAccessibleInDark(page);
  await press(page, found.getByRole("button", { name: "front belly" }));
  await expect(inputs(page).getByRole("button", { name: /^front belly/ })).toBeFocused();
  await expect(inputs(page).getByRole("textbox", { name: "Mass", exact: true })).toBeVisible();
  expect(await undoAll(page)).toBe(1);
  await expect(found.getByRole("listitem")).toHaveCount(0);
  await expect(page.locator("g.odd")).toHaveCount(0);
});

test("the chosen bib shows its angle from the datum line and from the vertical, and says both @phone", async ({
  page,
}) => {
  await openBoard(page);
  await job(page, "Parts");
  const side = inputs(page);
  await press(page, side.getByRole("button", { name: /^Bib/ }));
  await expect(page.locator(".board .angle text")).toHaveText([/^40\.0/, /^50\.0/]);
  await expect(chosen(page)).toContainText(
    /40\.0.*from the datum line, 50\.0.*from the vertical, 15\.0.*long/,
  );
  const angle = side.getByRole("textbox", { name: "Bib angle" });
  await angle.fill("70");
  await page.keyboard.press("Enter");
  await expect(page.locator(".board .angle text")).toHaveText([/^70\.0/, /^20\.0/]);
  await expect(side.getByText(/^20\.0.*from the vertical/)).toBeVisible();
  await press(page, side.getByRole("button", { name: /^Tie eye/ }));
  await expect(page.locator(".board .angle")).toHaveCount(0);
});

test("while a hand holds a point, keys choose and remove nothing else, and what is looked at closer stays under the hand", async ({
  page,
}) => {
  await openBoard(page);
  const first = await saved(page);
  const at = await pointAt(page, 2);
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  await page.mouse.move(at.x, at.y - 20, { steps: 4 });
  const held = await chosen(page).innerText();
  for (const key of ["Delete", "PageDown", "ArrowUp", "Insert", "Control+a"]) await page.keyboard.press(key);
  await expect(chosen(page)).toHaveText(held);
  await page.mouse.move(at.x, at.y - 22, { steps: 2 });
  await expect(page.locator("line.point.own")).toHaveCount(5);
  await expect(chosen(page)).toContainText("point 3 of 5");
  // Closer by wheel and by key: the point stays where the pointer is.
  await page.keyboard.down("Alt");
  await page.mouse.wheel(0, -300);
  await page.keyboard.press("+");
  await expect(page.getByTitle("The whole bait (0)")).toBeVisible();
  await page.mouse.move(at.x + 5, at.y - 30, { steps: 3 });
  await expect
    .poll(async () => {
      const point = await middleOf(page.locator("line.point.chosen"));
      return Math.hypot(point.x - at.x - 5, point.y - at.y + 30);
    })
    .toBeLessThan(2);
  await page.keyboard.up("Alt");
  await page.mouse.up();
  await board(page).press("0");
  expect(await undoAll(page)).toBe(1);
  expect(await saved(page)).toBe(first);
});

test("a drawing that leaves no room for a part is refused at that part @long", async ({ page }) => {
  await openBoard(page);
  await job(page, "Parts");
  await inputs(page).getByRole("combobox", { name: "New part" }).selectOption({ index: 0 });
  await inputs(page).getByRole("button", { name: "Add", exact: true }).click();
  await expect(chosen(page)).toContainText("chamber, the chamber");
  const chamber = await middleOf(page.locator("line.grip.chosen").first());
  await job(page, "Outline");
  const back = await pointAt(page, 2);
  await page.mouse.move(back.x, back.y);
  await page.mouse.down();
  await page.mouse.move(back.x, back.y + 52, { steps: 4 });
  const reason = board(page).getByRole("alert");
  await expect(reason).toContainText("its roof is at");
  const where = await middleOf(reason);
  expect(Math.abs(where.x - chamber.x)).toBeLessThan(30);
  expect(Math.abs(where.y - chamber.y)).toBeLessThan(80);
  await page.mouse.up();
});

test("the change beside the figures is that of the last move, and goes with an undo", async ({ page }) => {
  await openBoard(page);
  const changes = page.getByRole("region", { name: "Figures of the drawing" }).locator(".change");
  const shown = async (): Promise<string> => (await changes.allInnerTexts()).join("").trim();
  await board(page).focus();
  for (const key of ["PageDown", "PageDown", "Shift+ArrowUp", "PageDown", "Shift+ArrowUp"])
    await page.keyboard.press(key);
  await expect.poll(shown).not.toBe("");
  expect(await undoAll(page)).toBe(2);
  await expect.poll(shown).toBe("");
});
