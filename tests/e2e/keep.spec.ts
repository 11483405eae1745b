import { readFileSync } from "node:fs";
import type { Page } from "@playwright/test";
import { openLibrary, readLibraryBait } from "../../src/document";
import { fileOf, inventedBaits } from "../bench/lib/many-baits";
import { expect, test } from "./fixture";
import {
  expectAccessible,
  expectAccessibleInDark,
  expectNet,
  expectNoWider,
  forgetForEver,
  fromMenu,
  isPhone,
  kept,
  name,
  netGrams,
  open,
  press,
  type,
  undo,
  unfold,
} from "./page";

/** From this year's bait to next year's: what was set down, versions, another build, files, links, the list. */

async function recipe(page: Page): Promise<void> {
  if (isPhone(page)) await page.getByRole("button", { name: "Menu", exact: true }).click();
  else await page.getByRole("button", { name: /^Units/ }).click();
  await page.getByRole("button", { name: "Recipe and versions" }).click();
  await expect(page.getByRole("dialog", { name: /^Recipe of/ })).toBeVisible();
}

/** How much of a picture has been drawn on, as a share of it. */
async function inked(picture: Element): Promise<number> {
  if (!(picture instanceof HTMLImageElement)) return NaN;
  await picture.decode();
  const canvas = Object.assign(document.createElement("canvas"), { width: 60, height: 30 });
  const pen = canvas.getContext("2d");
  pen?.drawImage(picture, 0, 0, 60, 30);
  const dots = pen?.getImageData(0, 0, 60, 30).data ?? new Uint8ClampedArray();
  let drawn = 0;
  for (let i = 3; i < dots.length; i += 4) if ((dots[i] ?? 0) > 128) drawn++;
  return drawn / (60 * 30);
}

const part = (page: Page, title: string) =>
  press(page, page.getByRole("dialog").locator("summary", { hasText: title }).first());

test("a bait's design stays while the bait changes; versions come back; another build; the whole list as one file @phone-long", async ({
  page,
}) => {
  await open(page, "float", true);
  await name(page).fill("Mine");
  await name(page).press("Enter");
  const design = await netGrams(page);

  await recipe(page);
  const dialog = page.getByRole("dialog");
  await dialog.getByRole("button", { name: "Set down now" }).first().dblclick();
  await expect(dialog.getByText(/^Set down on/)).toHaveCount(1);
  await expect(dialog.getByRole("button", { name: "Set down anew: Design" })).toBeVisible();
  await part(page, "Versions");
  await dialog.getByLabel(/^Name, such as/).fill("before paint");
  await dialog.getByRole("button", { name: "Keep this state" }).click();
  await expect(dialog.getByText("As the bait is now.")).toBeVisible();
  // A double press keeps one state; and it does not forget one, though the button that does comes under the hand.
  const states = dialog.getByRole("button", { name: /^Go back to/ });
  await dialog.getByLabel(/^Name, such as/).fill("too early");
  await dialog.getByRole("button", { name: "Keep this state" }).dblclick();
  await expect(states).toHaveCount(2);
  await dialog.getByRole("button", { name: "Forget too early" }).dblclick();
  // As long as it may take to be gone, and until a press stands by itself again.
  await page.waitForTimeout(600);
  await expect(dialog.getByText("It is then gone for ever.")).toBeVisible();
  await forgetForEver(dialog, dialog.getByRole("button", { name: "Go back to too early" }));
  await expect(states).toHaveCount(1);
  await page.keyboard.press("Escape");

  await type(await unfold(page, "Body"), "Body density", "0.5");
  const changed = await netGrams(page);
  expect(changed).not.toBe(design);

  await recipe(page);
  await part(page, "What is different now");
  const row = dialog.getByRole("row", { name: /^wood/ });
  await expect(row).toBeVisible();
  const grams = Number(/[+−-]\d+\.\d+/.exec((await row.innerText()).replace("−", "-"))?.[0]);
  // Both figures of the page are rounded to a hundredth of a gram.
  expect(Math.abs(grams - (changed - design))).toBeLessThan(0.0101);
  await part(page, "Repeat this bait");
  await dialog.getByRole("checkbox", { name: /^wood/ }).check();
  await expectAccessible(page, "dialog");
  await expectNoWider(page);
  await dialog.getByRole("button", { name: "Start the new build" }).click();
  await expect(name(page)).toHaveValue("Mine, next build");
  await expectNet(page, changed);

  await fromMenu(page, "My baits", "My baits");
  await dialog.getByRole("button", { name: "Tags of Mine, next build" }).click();
  await dialog.getByLabel(/^Tags, with commas/).fill("pond, second run");
  await dialog.getByLabel(/^Tags, with commas/).press("Enter");
  await expect(dialog.getByLabel("Tag", { exact: true })).toBeVisible();
  await dialog.getByLabel("Find").fill("pond");
  await expect(dialog.getByText("1 of 2 baits")).toBeVisible();
  await dialog.getByLabel("Find").fill("");
  await dialog.getByLabel("In order").selectOption("name");
  await expect(dialog.getByRole("listitem").first()).toContainText(/Mine.*floats|Mine.*sinks/s);
  await expectAccessible(page, "dialog");
  await expectAccessibleInDark(page, "dialog");
  await part(page, "Many baits in one file");
  const [file] = await Promise.all([
    page.waitForEvent("download"),
    dialog.getByRole("button", { name: "Save as one file" }).click(),
  ]);
  const path = await file.path();
  expect(JSON.parse(readFileSync(path, "utf8"))).toMatchObject({
    format: "trimwright/baits",
    baits: [{ scenario: {} }, { scenario: {} }],
  });

  // Back to the version of the first bait, as one step of undo.
  await dialog.getByRole("button", { name: "Mine", exact: true }).click();
  await expect(name(page)).toHaveValue("Mine");
  await recipe(page);
  await part(page, "Versions");
  await dialog.getByRole("button", { name: "Go back to before paint" }).click();
  await page.keyboard.press("Escape");
  await expectNet(page, design);
  await undo(page);
  await expectNet(page, changed);
  await kept(page);

  // The file brings back what has gone on here, beside what is here now.
  await type(await unfold(page, "Body"), "Body density", "0.6");
  await page.locator("input[type=file]").first().setInputFiles(path);
  await expect(dialog.getByText(/one bait taken over, 1 was here already/)).toBeVisible();
  await expect(dialog.getByRole("button", { name: "Mine (2)", exact: true })).toBeVisible();
});

test("a file that is no picture is refused as a photo in plain words, and a photo is kept over a reload @long", async ({
  page,
}) => {
  await open(page, "float", true);
  await recipe(page);
  const dialog = page.getByRole("dialog");
  const photo = dialog.locator("input[data-photo=bait]");
  const script = '<svg xmlns="http://www.w3.org/2000/svg"><script>document.title = "ran"</script></svg>';
  for (const [name, mimeType, text] of [
    ["a.jpg", "image/jpeg", "no picture"],
    ["a.svg", "image/svg+xml", script],
  ] as const) {
    await photo.setInputFiles({ name, mimeType, buffer: Buffer.from(text) });
    await expect(
      dialog.getByText(
        "This photo could not be kept: it is no picture that this browser can read. Choose a JPEG or PNG.",
        { exact: true },
      ),
    ).toBeVisible();
    await expect(dialog.locator("img")).toHaveCount(0);
  }
  await expect(page).not.toHaveTitle("ran");
  const dot =
    "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==";
  await photo.setInputFiles({ name: "b.png", mimeType: "image/png", buffer: Buffer.from(dot, "base64") });
  await expect(dialog.locator("img")).toHaveCount(1);
  await page.keyboard.press("Escape");
  await kept(page);
  await page.reload();
  await recipe(page);
  await expect(dialog.locator("img")).toHaveCount(1);
});

test("a file of 200 baits comes in whole, with tags, versions and photos, and a second time it adds nothing @long", async ({
  page,
}) => {
  test.setTimeout(120_000);
  const baits = inventedBaits(200);
  const file = { name: "many.json", mimeType: "application/json", buffer: Buffer.from(fileOf(baits)) };
  await open(page, "float", true);
  await fromMenu(page, "My baits", "My baits");
  const dialog = page.getByRole("dialog");
  await dialog.locator("input[data-take=baits]").setInputFiles(file);
  await expect(dialog.getByText("200 baits taken over.")).toBeVisible({ timeout: 60_000 });
  await expect(dialog.getByText("200 baits", { exact: true })).toBeVisible();
  await dialog.locator("input[data-take=baits]").setInputFiles(file);
  await expect(dialog.getByText("0 baits taken over, 200 were here already.")).toBeVisible({
    timeout: 60_000,
  });

  // All rows are made, those out of sight too, and the last one gets its picture as it comes into sight.
  await dialog.getByLabel("In order").selectOption("name");
  await expect(dialog.getByRole("listitem")).toHaveCount(200);
  const last = dialog.getByRole("listitem").last();
  await expect(last).toContainText("Invented 200");
  await last.scrollIntoViewIfNeeded();
  await expect(last.locator("img")).toHaveCount(1);
  expect(await last.locator("img").evaluate(inked)).toBeGreaterThan(0.05);
  await expect(last).toContainText(/floats|sinks/);

  // Out again: the same baits, and what belongs to each.
  await dialog.getByLabel("with their photos").check();
  const [out] = await Promise.all([
    page.waitForEvent("download"),
    dialog.getByRole("button", { name: "Save as one file" }).click(),
  ]);
  const read = openLibrary(readFileSync(await out.path(), "utf8"));
  if (!read.ok) throw new Error(read.problems[0]?.message);
  const back = new Map(
    read.baits.map((value) => {
      const one = readLibraryBait(value);
      if (!one.ok) throw new Error(one.why);
      return [one.bait.scenario.name, one.bait];
    }),
  );
  for (const [i, scenario] of baits.entries()) {
    const one = back.get(scenario.name);
    expect(one?.scenario).toEqual(scenario);
    expect(one?.versions).toHaveLength(i % 3 === 0 ? 2 : 0);
    expect(Object.keys(one?.photos ?? {})).toHaveLength(i % 10 === 0 ? 1 : 0);
    expect(one?.tags.length).toBeGreaterThan(0);
  }
});

test("any view's pictures and tables are saved with title, scale and units @long", async ({ page }) => {
  await open(page, "weigh", true);
  const saved = async (button: RegExp | string): Promise<string> => {
    const [file] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("dialog").getByRole("button", { name: button }).first().click(),
    ]);
    return readFileSync(await file.path(), "latin1");
  };
  const pictures = async (): Promise<void> => {
    await page.getByRole("button", { name: /^Units/ }).click();
    await page.getByRole("button", { name: "Pictures and tables" }).click();
  };
  const mass = /\d+\.\d+/.exec(
    await page
      .getByRole("main")
      .getByRole("row", { name: /^finished/ })
      .getByRole("cell")
      .first()
      .innerText(),
  )?.[0];
  await pictures();
  const account = (await saved("CSV: Account by stage")).split("\r\n");
  expect(account[0]).toBe("stage,item,in_air_g,displaced_mL,net_g");
  expect(Number(account.at(-2)?.split(",")[2]).toFixed(2)).toBe(mass);
  const svg = await saved(/^SVG: The bait as it is now/);
  expect(svg).toMatch(/<text[^>]*>Coldwater suspender 90, Weigh</);
  expect(svg).toMatch(/<text[^>]*>\d+ mm</);
  expect(svg).not.toMatch(/<script|href="(?!#)/);
  expect((await saved(/^PNG: The bait as it is now/)).slice(1, 4)).toBe("PNG");
  await expectAccessible(page, "dialog");
  await expectNoWider(page);
  await page.keyboard.press("Escape");

  await page.getByRole("link", { name: "Float", exact: true }).click();
  await expect(page.getByRole("figure", { name: /^Righting lever/ })).toBeVisible();
  await pictures();
  expect(await saved(/^CSV: Righting lever/)).toMatch(/^curve,heel [^,]*,"Righting lever[^"]*\(mm\)"\r\n/);
  // The stage's own drawing, not the canvas.
  expect(await saved(/^SVG: /)).toMatch(/^<svg|^<\?xml/);
  const curve = await saved(/^SVG: Righting lever/);
  expect(curve).toMatch(/<text[^>]*>Righting lever[^<]*, mm<\/text>/);
  // Its sheet has room for the title, whatever face it is written in.
  const title = "Coldwater suspender 90, Float";
  expect(Number(/<svg [^>]*width="([\d.]+)"/.exec(curve)?.[1])).toBeGreaterThan(0.6 * 13 * title.length);
  await page.keyboard.press("Escape");

  // A page to be printed is white on a dark page too.
  await page.emulateMedia({ colorScheme: "dark" });
  await page.getByRole("link", { name: "Make", exact: true }).click();
  await expect(page.getByRole("img", { name: /^Page 1 of/ })).toBeVisible();
  await pictures();
  expect(await saved(/^SVG: Page 1 of/)).toMatch(/<rect[^>]*fill="rgb\(255, 255, 255\)"/);
});

test("a link holds the bait and offers it as a new one; a damaged one is refused and nothing is lost @long", async ({
  page,
  context,
}) => {
  await open(page, "float", true);
  await type(await unfold(page, "Body"), "Body density", "0.43");
  const verdict = await netGrams(page);
  await recipe(page);
  await part(page, "Pass it on by a link");
  await page.getByRole("button", { name: "Make a link" }).click();
  const link = await page.getByLabel("The link").inputValue();
  await expect(page.getByText(`${link.length.toLocaleString("en")} characters`)).toBeVisible();
  await page.keyboard.press("Escape");

  const other = await context.newPage();
  await other.goto(link);
  await other.getByRole("button", { name: "Open it as a new bait" }).click();
  await expectNet(other, verdict);
  expect(new URL(other.url()).hash).not.toContain("bait=");
  await kept(other);

  await type(await unfold(other, "Body"), "Body density", "0.5");
  const mine = await netGrams(other);
  await other.goto(link.slice(0, -9));
  await expect(other.getByRole("alert").filter({ hasText: "This link is damaged" })).toBeVisible();
  await other.getByRole("button", { name: "Understood" }).click();
  await expectNet(other, mine);
});

test("saves into the file that was chosen, asks before it writes over another program's edit, and opens it again @long", async ({
  page,
}) => {
  // Files of the browser's own, which are written as those on the disk are; only the dialog that chooses is ours.
  const choosers = () =>
    page.evaluate(() => {
      const folder = navigator.storage.getDirectory();
      const file = () => folder.then((one) => one.getFileHandle("mine.json", { create: true }));
      Object.assign(window, {
        showSaveFilePicker: file,
        showOpenFilePicker: () => file().then((one) => [one]),
      });
    });
  const text = () =>
    page.evaluate(async () => {
      const folder = await navigator.storage.getDirectory();
      const file = await (await folder.getFileHandle("mine.json")).getFile();
      // While it is written, it cannot be read: it is asked for again.
      return file.text().catch(() => "null");
    });
  const density = async () => Number(/"density_g_ml": ([\d.]+)/.exec(await text())?.[1]);
  await open(page, "float", true);
  await choosers();
  const body = await unfold(page, "Body");
  await type(body, "Body density", "0.43");
  await page.keyboard.press("Control+s");
  await expect(page.getByText("Saved in mine.json.")).toBeVisible();
  await expect.poll(density).toBe(0.43);
  await type(body, "Body density", "0.44");
  await page.keyboard.press("Control+s");
  await expect.poll(density).toBe(0.44);
  await expect(page.getByText("changed, not saved")).toHaveCount(0);

  // After a reload the page still knows the file. Another program has written it meanwhile.
  await kept(page);
  await page.evaluate(async () => {
    const folder = await navigator.storage.getDirectory();
    const stream = await (await folder.getFileHandle("mine.json")).createWritable();
    await stream.write("written by another program");
    await stream.close();
  });
  await page.reload();
  await choosers();
  await type(await unfold(page, "Body"), "Body density", "0.45");
  await page.keyboard.press("Control+s");
  await expect(page.getByRole("dialog", { name: /mine.json’ has changed/ })).toBeVisible();
  await expect.poll(text).toBe("written by another program");
  await page.getByRole("button", { name: "Save over it" }).click();
  await expect.poll(density).toBe(0.45);

  await type(await unfold(page, "Body"), "Body density", "0.46");
  await page.getByRole("heading", { name: "Body", exact: true }).click();
  await page.keyboard.press("Control+o");
  await expect(
    (await unfold(page, "Body")).getByRole("textbox", { name: "Body density", exact: true }).first(),
  ).toHaveValue("0.450");
});

test("the solid halves are made by a worker, beside the model's figures, and saved closed; a change makes them old @long", async ({
  page,
}) => {
  await page.goto("./#make");
  const side = page.getByRole("complementary", { name: "Inputs" });
  await unfold(page, "Solid halves");
  await side.getByRole("button", { name: "Make the solid halves" }).click();
  const table = page.getByRole("table", { name: "The solid beside the model" });
  await expect(table).toBeVisible();
  const [solid, model] = (
    await table
      .getByRole("row", { name: /^outline/ })
      .getByRole("cell")
      .allInnerTexts()
  ).map(Number.parseFloat);
  // Both are rounded to 0.01 mL.
  expect(Math.abs((solid ?? NaN) - (model ?? NaN))).toBeLessThan(0.0201);
  await expect(side.getByText(/^Closed: each of the/)).toBeVisible();
  const [file] = await Promise.all([
    page.waitForEvent("download"),
    side.getByRole("button", { name: "Right half, STL" }).click(),
  ]);
  expect(file.suggestedFilename()).toMatch(/-1to1-mm-right-half\.stl$/);
  const bytes = readFileSync(await file.path());
  expect(bytes.length).toBe(84 + 50 * bytes.readUInt32LE(80));
  await expectAccessible(page, "[data-section=make-solid]");
  await name(page).fill("Another");
  await name(page).press("Enter");
  await expect(side.getByText("The bait has changed since they were made.")).toBeVisible();
});
