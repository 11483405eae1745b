import { readFile } from "node:fs/promises";
import type { Page } from "@playwright/test";
import { photograph, TRUTH } from "../unit/trace/photo";
import { expect, test } from "./fixture";
import {
  expectAccessible,
  expectAccessibleInDark,
  expectNoWider,
  fromMenu,
  isPhone,
  numberIn,
  press,
  redo,
  undo,
} from "./page";

/** A photo of a bait becomes its outline: laid under the drawing, scaled, turned, traced, taken, and taken back. */

type Place = { readonly x: number; readonly y: number };

async function saved(page: Page): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    fromMenu(page, "Save", "Save to a file"),
  ]);
  return readFile(await download.path(), "utf8");
}

async function drag(page: Page, from: Place, to: Place): Promise<void> {
  const between = [0, 0.4, 0.8, 1].map((t) => ({
    x: from.x + t * (to.x - from.x),
    y: from.y + t * (to.y - from.y),
  }));
  if (!isPhone(page)) {
    await page.mouse.down();
    for (const { x, y } of between) await page.mouse.move(x, y);
    await page.mouse.up();
    return;
  }
  const client = await page.context().newCDPSession(page);
  for (const [i, at] of between.entries())
    await client.send("Input.dispatchTouchEvent", {
      type: i === 0 ? "touchStart" : "touchMove",
      touchPoints: [at],
    });
  await client.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
}

/** Where a point of the photo lies on the page. */
const onPage = (page: Page, point: { readonly u: number; readonly v: number }): Promise<Place> =>
  page.locator(".board image").evaluate((image: SVGImageElement, { u, v }) => {
    const { x, y } = new DOMPoint(u, v).matrixTransform(image.getScreenCTM() ?? new DOMMatrix());
    return { x, y };
  }, point);

async function markTo(
  page: Page,
  name: string,
  point: { readonly u: number; readonly v: number },
): Promise<void> {
  await page.evaluate(() => scrollTo(0, 0));
  const mark = page.getByRole("button", { name: new RegExp(`^${name}:`) });
  // It stands still, and nothing lies over it.
  if (isPhone(page)) await mark.tap({ trial: true });
  else await mark.hover();
  const box = await mark.boundingBox();
  if (box === null) throw new Error(`${name} has no mark`);
  expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(44);
  const before = await mark.getAttribute("aria-label");
  await drag(page, { x: box.x + box.width / 2, y: box.y + box.height / 2 }, await onPage(page, point));
  await expect(mark).not.toHaveAttribute("aria-label", before ?? "");
}

test("a photo becomes the outline, and undo gives the same file @phone-long", async ({ page }) => {
  await page.emulateMedia({ reducedMotion: "reduce" });
  await page.goto("./#draw");
  await expect(page.getByRole("application", { name: "Drawing board" })).toBeVisible();
  const first = await saved(page);
  const jobs = page.getByRole("group", { name: "What the hand works on" });
  await press(page, jobs.getByRole("button", { name: "Trace", exact: true }));
  const side = page.getByRole("complementary", { name: "Inputs" });
  const picker = side.locator("input[type=file]");
  const box = (name: string) => side.getByRole("textbox", { name, exact: true });

  await picker.setInputFiles({ name: "notes.png", mimeType: "image/png", buffer: Buffer.from("no picture") });
  await expect(side.getByRole("alert")).toContainText("no JPEG, PNG, WebP or GIF picture");
  const photo = photograph(TRUTH, { pxPerMm: 4, turn: 7, quality: 75, seed: 5 });
  await picker.setInputFiles({
    name: "bait.jpg",
    mimeType: "image/jpeg",
    buffer: Buffer.from(photo.jpeg),
  });
  await expect(page.locator(".board image")).toBeVisible();
  await expect(side.getByRole("alert")).toBeHidden();

  // Two points and a length give scale and turn.
  await markTo(page, "Nose", photo.at(0, 0));
  await markTo(page, "Tail", photo.at(TRUTH.length, 0));
  await box("Known length").fill("92");
  await box("Known length").press("Enter");
  await expect.poll(async () => numberIn(await box("Turned by").inputValue())).toBeCloseTo(-7, 0);
  if (!isPhone(page)) {
    // The same by keys and numbers.
    const nose = page.getByRole("button", { name: /^Nose:/ });
    const where = await nose.getAttribute("aria-label");
    await nose.press("ArrowUp");
    await expect(nose).not.toHaveAttribute("aria-label", where ?? "");
    await nose.press("Escape");
    await expect(nose).toHaveAttribute("aria-label", where ?? "");
    await box("Turned by").fill("-7");
    await box("Turned by").press("Enter");
  }

  await press(page, side.getByRole("button", { name: "Propose an outline" }));
  await expect(side.getByText(/points above and .* off the picture’s outline/)).toBeVisible();
  await press(page, side.getByRole("button", { name: "Put N and T on its ends" }));
  await expect(side.getByText(/Length\s+92\.0/)).toBeVisible();
  await expectAccessible(page);
  await expectAccessibleInDark(page);
  await expectNoWider(page);
  await press(page, side.getByRole("button", { name: "Take this outline" }));
  await expect(page.getByRole("button", { name: "Undo: take the traced outline" })).toBeEnabled();

  const drawn = await saved(page);
  const { bait } = JSON.parse(drawn) as {
    readonly bait: { readonly length_mm: number; readonly top: readonly (readonly [number, number])[] };
  };
  expect(bait.length_mm).toBeCloseTo(TRUTH.length, 0);
  expect(Math.max(...bait.top.map(([, height]) => height))).toBeCloseTo(TRUTH.top.depth, 0);
  // The picture is this browser's alone. It comes back where it was, and the outline lies over it.
  expect(drawn).not.toContain("image");
  await page.reload();
  await expect(page.locator(".board image")).toBeVisible();
  await press(page, jobs.getByRole("button", { name: "Outline", exact: true }));
  await expect(page.locator(".board image")).toBeVisible();

  await undo(page);
  await expect(page.getByRole("button", { name: /^Undo/ })).toBeDisabled();
  expect(await saved(page)).toBe(first);
  await redo(page);
  await expect(page.getByRole("button", { name: /^Redo/ })).toBeDisabled();
  expect(await saved(page)).toBe(drawn);

  await press(page, jobs.getByRole("button", { name: "Trace", exact: true }));
  await press(page, side.getByRole("button", { name: "Remove the picture" }));
  await expect(page.locator(".board image")).toHaveCount(0);
  await expect
    .poll(() =>
      page.evaluate(
        () =>
          new Promise<number>((done, fail) => {
            const opening = indexedDB.open("trimwright-kept");
            opening.onerror = () => fail(new Error("no database"));
            opening.onsuccess = () => {
              const count = opening.result.transaction("pictures").objectStore("pictures").count();
              count.onsuccess = () => {
                opening.result.close();
                done(count.result);
              };
            };
          }),
      ),
    )
    .toBe(0);
});

test("nose and tail stand on the ends of a photo's silhouette by themselves, until a hand moves them @long", async ({
  page,
}) => {
  await page.emulateMedia({ reducedMotion: "reduce" });
  await page.goto("./#draw");
  await page
    .getByRole("group", { name: "What the hand works on" })
    .getByRole("button", { name: "Trace", exact: true })
    .click();
  const side = page.getByRole("complementary", { name: "Inputs" });
  const photo = photograph(TRUTH, { pxPerMm: 4, turn: 7, quality: 75, seed: 6 });
  await side
    .locator("input[type=file]")
    .setInputFiles({ name: "bait.jpg", mimeType: "image/jpeg", buffer: Buffer.from(photo.jpeg) });
  await expect(page.locator(".board image")).toBeVisible();
  const box = (name: string) => side.getByRole("textbox", { name, exact: true });
  await box("Known length").fill("92");
  await page.keyboard.press("Enter");
  await side.getByRole("button", { name: "Propose an outline" }).click();
  await expect(side.getByText("N and T were put on its ends.")).toBeVisible();
  await expect(side.getByText(/Length\s+92\.[01]/)).toBeVisible();
  expect(Math.abs(numberIn(await box("Turned by").inputValue()) + 7)).toBeLessThan(0.5);
  await expect(side.getByRole("button", { name: "Put N and T on its ends" })).toHaveCount(0);
  // A hand corrects it: the next look leaves nose and tail where they are.
  await box("Turned by").fill("-7");
  await page.keyboard.press("Enter");
  await expect(side.getByText("N and T were put on its ends.")).toHaveCount(0);
  await box("No farther off than").fill("0.4");
  await page.keyboard.press("Enter");
  await expect(side.getByText(/points above and .* off the picture’s outline/)).toBeVisible();
  expect(numberIn(await box("Turned by").inputValue())).toBe(-7);
});

test("an SVG path becomes the outline, and a drawing from above the half-breadth @long", async ({ page }) => {
  await page.emulateMedia({ reducedMotion: "reduce" });
  await page.goto("./#draw");
  const jobs = page.getByRole("group", { name: "What the hand works on" });
  await jobs.getByRole("button", { name: "Trace", exact: true }).click();
  const side = page.getByRole("complementary", { name: "Inputs" });
  await side.getByText("Outline from the text of a path").click();
  const text = side.getByRole("textbox", { name: "Text of an SVG path or file" });
  await text.fill("M 0 0 L 3 4");
  await side.getByRole("button", { name: "Use this outline" }).click();
  await expect(side.getByRole("alert")).toContainText("No path of the drawing is closed");
  // Drawn turned by 7°: it keeps its own level line until it is turned. Its ends are then those of the datum line.
  await text.fill(
    '<svg xmlns="http://www.w3.org/2000/svg"><g transform="translate(9 9) rotate(7)"><ellipse cx="60" cy="20" rx="48" ry="9"/></g></svg>',
  );
  await side.getByRole("button", { name: "Use this outline" }).click();
  await side.getByRole("button", { name: "Propose an outline" }).click();
  const turn = side.getByRole("button", { name: "Turn it: N and T on its tips" });
  await turn.click();
  await expect(turn).toHaveCount(0);
  const turned = side.getByRole("textbox", { name: "Turned by" });
  await expect.poll(async () => Math.abs(numberIn(await turned.inputValue()) - 7)).toBeLessThan(0.2);
  await expect(side.getByText(/Length\s+90\.0/)).toBeVisible();
  await side.getByRole("button", { name: "Remove the picture" }).click();
  await side.getByText("Outline from the text of a path").click();
  // Two half ellipses: 100 long, 12 above and 9 below.
  await text.fill("M0 12 A50 12 0 0 1 100 12 A50 9 0 0 1 0 12 Z");
  await side.getByRole("button", { name: "Use this outline" }).click();
  await side.getByRole("textbox", { name: "Known length" }).fill("96");
  await page.keyboard.press("Enter");
  await side.getByRole("button", { name: "Propose an outline" }).click();
  await expect(side.getByText(/Length\s+96\.0/)).toBeVisible();
  await expect(turn).toHaveCount(0);
  await side.getByRole("button", { name: "Take this outline" }).click();
  await expect(page.getByRole("button", { name: "Undo: take the traced outline" })).toBeEnabled();

  await side.getByRole("button", { name: "From above" }).click();
  await side.locator("input[type=file]").setInputFiles({
    name: "above.svg",
    mimeType: "image/svg+xml",
    buffer: Buffer.from(
      '<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script><g transform="scale(2)"><ellipse cx="60" cy="20" rx="48" ry="7"/></g></svg>',
    ),
  });
  await expect(page.locator(".board polygon.chosen")).toHaveCount(2);
  await side.getByRole("button", { name: "Propose an outline" }).click();
  await expect(side.getByText(/points, at most/)).toBeVisible();
  await side.getByRole("button", { name: "Take this half-breadth" }).click();
  await expect(page.getByRole("button", { name: "Undo: take the traced half-breadth" })).toBeEnabled();
  const { bait } = JSON.parse(await saved(page)) as {
    readonly bait: Readonly<Record<"top" | "halfBreadth", readonly (readonly [number, number])[]>>;
  };
  // The picture was as long as the bait: 96 mm.
  expect(Math.max(...bait.halfBreadth.map(([, v]) => v))).toBeCloseTo(7, 0);
  expect(Math.max(...bait.top.map(([, v]) => v))).toBeCloseTo(0.96 * 12, 0);
});
