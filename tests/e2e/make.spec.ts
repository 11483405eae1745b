import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "@playwright/test";
import { expect, test } from "./fixture";
import { expectAccessible, expectAccessibleInDark, expectNoWider, unfold } from "./page";

/** A file that a press of a button gives. */
async function saved(page: Page, button: string): Promise<{ name: string; bytes: Buffer }> {
  const press = page.getByRole("button", { name: button, exact: true });
  await expect(press).toBeEnabled();
  const [download] = await Promise.all([page.waitForEvent("download"), press.click()]);
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
}

test("sheets are chosen, looked at and saved", { tag: "@phone" }, async ({ page }) => {
  await page.goto("./#make");
  const picture = page.getByRole("img", { name: /^Page \d+ of \d+: / });
  await expect(picture).toHaveAccessibleName(/^Page 1 of \d+: Build sheet/);
  const ratio = async (): Promise<number> => {
    const box = await picture.boundingBox();
    return box === null ? NaN : Number((box.height / box.width).toFixed(2));
  };
  await expect.poll(ratio).toBe(1.41);
  await page.getByRole("button", { name: "Letter", exact: true }).click();
  await expect.poll(ratio).toBe(1.29);

  const what = await unfold(page, "What to print");
  await what.getByRole("checkbox", { name: /^Build sheet/ }).uncheck();
  await expect(picture).toHaveAccessibleName(/^Page 1 of \d+: Side outline/);
  await expect(picture.getByText("Scale 1 : 1", { exact: false })).toBeVisible();

  const stations = what.getByRole("textbox", { name: /^Stations/ });
  await stations.fill("20 2000");
  await expect(what.getByRole("alert")).toContainText("lies off the body");
  await stations.fill("20 40");
  await expect(what.getByRole("alert")).toBeHidden();

  const svg = await saved(page, "Side outline as SVG");
  expect(svg.name).toMatch(/^coldwater-suspender-90-[0-9a-f]{12}-side\.svg$/);
  expect(svg.bytes.toString()).toContain("Scale 1 : 1, unit mm");
  await expectNoWider(page);
  await expectAccessible(page);
  await expectAccessibleInDark(page);
});

test("the page's files are those of the command, byte for byte @long", async ({ page }) => {
  await page.goto("./#make");
  await expect(page.getByRole("img", { name: /^Page 1 of \d+: / })).toBeVisible();
  const pdf = await saved(page, "Save as PDF");
  const dxf = await saved(page, "Bib as DXF");
  const folder = mkdtempSync(join(tmpdir(), "trimwright-sheets-"));
  try {
    const command = ["tools/answer.mjs", "scenarios/suspender-90.json", "--sheets", folder];
    const { status, stderr } = spawnSync(process.execPath, command, { encoding: "utf8" });
    expect(status, stderr).toBe(0);
    for (const { name, bytes } of [pdf, dxf])
      expect(Buffer.compare(readFileSync(join(folder, name)), bytes)).toBe(0);
  } finally {
    rmSync(folder, { recursive: true });
  }
});
