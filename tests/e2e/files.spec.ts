import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { parseScenario } from "../../src/document";
import { record } from "../../src/model/motion";
import { recordingCsv } from "../../src/runner/csv";
import { swimSetup } from "../../src/runner/jobs";
import { expect, test } from "./fixture";
import { expectNet, fromMenu, netGrams, newBait, open, recorded, type, undo, unfold } from "./page";

const folder = fileURLToPath(new URL("../../scenarios/", import.meta.url));
const scenarios = readdirSync(folder)
  .filter((name) => name.endsWith(".json"))
  .map((name) => ({ name, text: readFileSync(folder + name, "utf8") }));

const nameIn = (text: string): string => (JSON.parse(text) as { name: string }).name;

test("the chooser opens every scenario, and each runs in both views @long", async ({ page }) => {
  expect(scenarios.length).toBeGreaterThanOrEqual(6);
  await open(page, "float", true);
  for (const { text } of scenarios) {
    const name = nameIn(text);
    await fromMenu(page, "Scenarios", "Scenarios");
    await page
      .getByRole("dialog")
      .getByRole("button", { name: new RegExp(`^${name}`) })
      .click();
    await expect(page.getByLabel("Name of this document")).toHaveValue(name);
    for (const view of ["Swim", "Float"]) {
      await page.getByRole("link", { name: view }).click();
      await recorded(page);
      // Swim opens on its depth track; the curves are behind it.
      if (view === "Swim") await page.getByRole("tab", { name: "Curves" }).click();
      await expect(
        page.getByRole("figure", { name: "Depth" }).locator("path[data-label='now']"),
      ).toHaveAttribute("d", /^M.*L/);
    }
    await expect(page.getByText("This run stopped.")).toHaveCount(0);
    await expect(page.getByRole("button", { name: /^(Rises|Sinks) at: \d/ })).toBeVisible();
  }
});

test("what is saved opens again as the same document", { tag: "@phone-only" }, async ({ page }) => {
  await open(page, "float", true);
  const body = await unfold(page, "Body");
  await type(body, "Body density", "0.437");
  const verdict = await netGrams(page);
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    fromMenu(page, "Save", "Save to a file"),
  ]);
  expect(download.suggestedFilename()).toMatch(/\.json$/);
  const path = await download.path();
  const text = readFileSync(path, "utf8");
  expect((JSON.parse(text) as { bait: { body: { density_g_ml: number } } }).bait.body.density_g_ml).toBe(
    0.437,
  );
  await expect(page.getByText("changed, not saved")).toHaveCount(0);

  // Another density in its place: what the file brings back is then the file's.
  await type(body, "Body density", "0.300");
  expect(await netGrams(page)).not.toBe(verdict);
  await page.locator("input[type=file]").setInputFiles(path);
  await expectNet(page, verdict);
  await unfold(page, "Body");
  await expect(body.getByRole("textbox", { name: "Body density", exact: true })).toHaveValue("0.437");
});

const [first] = scenarios;
const spoiled: readonly {
  readonly what: string;
  readonly text: string | Uint8Array;
  readonly path: RegExp;
}[] = [
  { what: "no JSON", text: "{ not json", path: /The file as a whole/ },
  { what: "an empty file", text: "", path: /The file as a whole/ },
  { what: "another format", text: '{"format":"other","version":1}', path: /format/ },
  { what: "a newer version", text: '{"format":"trimwright/scenario","version":99}', path: /version/ },
  {
    what: "a wrong type",
    text: (first?.text ?? "").replace(/"length_mm":\s*[\d.]+/, '"length_mm": "long"'),
    path: /bait\.length_mm/,
  },
  {
    what: "an unknown key",
    text: (first?.text ?? "").replace('"water":', '"watter": {}, "water":'),
    path: /watter/,
  },
  {
    what: "another encoding, which a browser could read",
    text: Buffer.from(`\uFEFF${first?.text ?? ""}`, "utf16le"),
    path: /^The file as a whole\s*$/,
  },
];

test("bad files are explained and change nothing", async ({ page }) => {
  await open(page, "float", true);
  const verdict = await netGrams(page);
  const name = await page.getByLabel("Name of this document").inputValue();
  for (const { what, text, path } of spoiled)
    await test.step(what, async () => {
      await page
        .locator("input[type=file]")
        .setInputFiles({ name: "bad.json", mimeType: "application/json", buffer: Buffer.from(text) });
      const dialog = page.getByRole("dialog", { name: /bad\.json could not be opened/ });
      await expect(dialog).toBeVisible();
      await expect(dialog.locator(".path").first()).toHaveText(path);
      for (const word of ["found", "allowed", "remedy"])
        await expect(dialog.getByText(word, { exact: true }).first()).toBeVisible();
      await dialog.getByRole("button", { name: "Back to the open document" }).click();
      await expect(dialog).toHaveCount(0);
      expect(await netGrams(page)).toBe(verdict);
      expect(await page.getByLabel("Name of this document").inputValue()).toBe(name);
      await expect(page.getByRole("button", { name: "Undo", exact: true })).toBeDisabled();
    });
});

test("another file opens at once, and the bait that was open stays under ‘My baits’ @long", async ({
  page,
}) => {
  await open(page, "float", true);
  const name = page.getByLabel("Name of this document");
  const first = await name.inputValue();
  const body = await unfold(page, "Body");
  await type(body, "Body density", "0.437");
  const verdict = await netGrams(page);
  const other = scenarios.find(({ name }) => name.startsWith("ellipsoid"));
  if (other === undefined) throw new Error("no ellipsoid among the scenarios");
  await page.locator("input[type=file]").setInputFiles(folder + other.name);
  await expect(name).toHaveValue(nameIn(other.text));
  await expect(page.getByRole("button", { name: "Undo", exact: true })).toBeDisabled();
  await fromMenu(page, "My baits", "My baits");
  await page.getByRole("dialog").getByRole("button", { name: first, exact: true }).click();
  await expect(name).toHaveValue(first);
  await expectNet(page, verdict);
  await undo(page);
  await expect(page.getByText("changed, not saved")).toHaveCount(0);
});

test("a new bait is one's own from its first moment, and none of the scenarios @long", async ({ page }) => {
  await open(page, "float", true);
  const name = page.getByLabel("Name of this document");
  await newBait(page);
  await expect(name).toHaveValue("New bait");
  await expect(page.getByText("changed, not saved")).toHaveCount(0);
  expect(await netGrams(page)).toBeGreaterThan(0.3);
  await fromMenu(page, "My baits", "My baits");
  await expect(page.getByRole("dialog").getByRole("button", { name: "New bait", exact: true })).toBeVisible();
  await page.getByRole("button", { name: "Close", exact: true }).click();
  await fromMenu(page, "Scenarios", "Scenarios");
  const chooser = page.getByRole("dialog", { name: "Scenarios" });
  await expect(chooser.getByRole("button").first()).toBeVisible();
  await expect(chooser.getByRole("button", { name: /^New bait/ })).toHaveCount(0);
});

test("a file dropped on the page opens", async ({ page }) => {
  await open(page, "float", true);
  const other = scenarios.find(({ name }) => name.startsWith("ellipsoid"));
  if (other === undefined) throw new Error("no ellipsoid among the scenarios");
  const transfer = await page.evaluateHandle((text) => {
    const data = new DataTransfer();
    data.items.add(new File([text], "dropped.json", { type: "application/json" }));
    return data;
  }, other.text);
  await page.dispatchEvent("body", "dragover", { dataTransfer: transfer });
  await expect(page.getByText("Drop a scenario file to open it")).toBeVisible();
  await page.dispatchEvent("body", "drop", { dataTransfer: transfer });
  await expect(page.getByLabel("Name of this document")).toHaveValue(nameIn(other.text));
});

test("the curves save as CSV with units, SVG and PNG @long", async ({ page }) => {
  await open(page, "swim", true);
  await recorded(page);
  const [csv] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "CSV" }).click(),
  ]);
  // The headless command writes the same table, to the last digit.
  const demo = parseScenario(readFileSync(`${folder}suspender-90.json`, "utf8"));
  if (!demo.ok) throw new Error("the demo is refused");
  expect(readFileSync(await csv.path(), "utf8")).toBe(recordingCsv(record(swimSetup(demo.compiled))));
  await page.getByRole("tab", { name: "Curves" }).click();
  // The stage saves itself as SVG too, beside the run's table.
  const curves = page.getByRole("group", { name: "Curves to show" });
  const [svg] = await Promise.all([
    page.waitForEvent("download"),
    curves.getByRole("button", { name: "SVG" }).click(),
  ]);
  expect(readFileSync(await svg.path(), "utf8")).toMatch(/^<\?xml[\s\S]*<svg/);
  const [png] = await Promise.all([
    page.waitForEvent("download"),
    curves.getByRole("button", { name: "PNG" }).click(),
  ]);
  // The eight bytes that every PNG file starts with (ISO/IEC 15948).
  expect([...readFileSync(await png.path()).subarray(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
});
