import { readFileSync } from "node:fs";
import type { Page } from "@playwright/test";
import { expect, test } from "./fixture";
import { clock, expectAccessible, numberIn, open, recorded, type, undo, unfold, unfoldAll } from "./page";

const strip = (page: Page) => page.getByRole("listbox", { name: "Moves of the cadence" });
const move = (page: Page, at: number) => strip(page).getByRole("option").nth(at);
const tab = (page: Page, name: RegExp) => page.getByRole("tab", { name });
const events = (page: Page) => page.getByRole("region", { name: "What happens in this run" });

test("moves by keys: choose, lengthen, put elsewhere, duplicate, delete; each is undone alone", async ({
  page,
}) => {
  await open(page, "swim", true);
  await recorded(page);
  const count = await strip(page).getByRole("option").count();
  const first = await move(page, 0).getAttribute("aria-label");
  await move(page, 0).focus();
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowRight");
  await expect(move(page, 1)).toHaveAttribute("aria-selected", "true");
  await expect(move(page, 1)).toHaveAccessibleName(/reel 0\.90.m\/s, 8\.0.s/);
  await page.keyboard.press("+");
  await expect(move(page, 1)).toHaveAccessibleName(/8\.1.s/);
  await page.keyboard.press("Alt+ArrowLeft");
  await expect(move(page, 0)).toHaveAccessibleName(/reel 0\.90/);
  await page.keyboard.press("Control+d");
  await expect(strip(page).getByRole("option")).toHaveCount(count + 1);
  await page.keyboard.press("Delete");
  await expect(strip(page).getByRole("option")).toHaveCount(count);
  for (let i = 0; i < 4; i++) await undo(page);
  await expect(move(page, 0)).toHaveAccessibleName(first ?? "");
  await expect(move(page, 1)).toHaveAccessibleName(/8\.0.s/);
});

test("a move is dragged longer and to another place, each drag one step of undo @long", async ({ page }) => {
  await open(page, "swim", true);
  await recorded(page);
  const box = await move(page, 1).boundingBox();
  if (box === null) throw new Error("no block");
  await page.mouse.move(box.x + box.width - 3, box.y + 15);
  await page.mouse.down();
  for (let i = 1; i <= 5; i++) await page.mouse.move(box.x + box.width - 3 + 8 * i, box.y + 15);
  await page.mouse.up();
  // 856 px for 20.45 s: 40 px are about 0.95 s.
  await expect(move(page, 1)).toHaveAccessibleName(/(8\.9|9\.0).s/);
  await undo(page);
  await expect(move(page, 1)).toHaveAccessibleName(/8\.0.s/);
  const settle = await move(page, 0).boundingBox();
  if (settle === null) throw new Error("no block");
  await page.mouse.move(settle.x + 20, settle.y + 15);
  await page.mouse.down();
  await page.mouse.move(settle.x + 200, settle.y + 15, { steps: 4 });
  await page.mouse.move(box.x + box.width + 20, box.y + 15, { steps: 4 });
  await page.mouse.up();
  await expect(move(page, 1)).toHaveAccessibleName(/settle/);
  await undo(page);
  await expect(move(page, 0)).toHaveAccessibleName(/settle/);
});

test("a rhythm is one block: its count, its moves and its end by keys, and written out; each is undone alone @long", async ({
  page,
}) => {
  await open(page, "swim", true);
  await recorded(page);
  const options = strip(page).getByRole("option");
  await page.getByLabel("Start from a rhythm").selectOption({ label: "Twitch, twitch, pause" });
  await expect(options).toHaveCount(3);
  await expect(move(page, 2)).toHaveAccessibleName(/until the line is in \(\d+×\) twitch 0\.35/);
  await move(page, 2).focus();
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowRight");
  const often = page.getByLabel("How often the moves are done");
  await expect(often).toHaveValue("line in");
  await often.selectOption("times");
  const count = page.getByRole("textbox", { name: "Times" });
  await count.fill("4");
  await count.press("Enter");
  await expect(move(page, 2)).toHaveAccessibleName(/4× twitch/);
  await move(page, 2).focus();
  await page.keyboard.press("+");
  await expect(move(page, 2)).toHaveAccessibleName(/5× twitch/);
  // Into the block: its third move, half a metre and more a second faster; then one move less.
  await page.keyboard.press("ArrowDown");
  const inner = page.getByRole("listbox", { name: "Moves that are repeated" });
  await expect(inner.getByRole("option").first()).toBeFocused();
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowRight");
  const speed = page
    .getByRole("region", { name: "Cadence", exact: true })
    .getByRole("textbox", { name: "Retrieve speed" });
  await speed.fill("1.2");
  await speed.press("Enter");
  await expect(move(page, 2)).toHaveAccessibleName(/5× twitch .*reel 1\.20/);
  await inner.getByRole("option").nth(2).focus();
  await page.keyboard.press("ArrowLeft");
  await page.keyboard.press("Delete");
  await expect(inner.getByRole("option")).toHaveCount(3);
  await page.keyboard.press("Escape");
  await expect(move(page, 2)).toBeFocused();
  await page.getByRole("button", { name: "Write out as single moves" }).click();
  await expect(options).toHaveCount(2 + 5 * 3);
  for (let i = 0; i < 6; i++) await undo(page);
  await expect(options).toHaveCount(3);
  await expect(move(page, 2)).toHaveAccessibleName(/until the line is in/);
  await expectAccessible(page, "main");
});

test(
  "a rhythm fills the cast, its numbers are typed, and it is saved with the scenario @long",
  { tag: "@phone-only" },
  async ({ page }) => {
    await open(page, "swim", true);
    await recorded(page);
    await page.getByLabel("Start from a rhythm").selectOption({ label: "Stop and go" });
    await expect(move(page, 1)).toHaveAccessibleName(/until the line is in \(\d+×\) reel 0\.80/);
    await move(page, 1).click();
    const inner = page.getByRole("listbox", { name: "Moves that are repeated" });
    await inner.getByRole("option", { name: /reel/ }).click();
    const cast = await unfold(page, "Cast and reel");
    await cast.getByLabel("Speeds in turns of the handle too").check();
    const cadence = page.getByRole("region", { name: "Cadence", exact: true });
    // 5.2 · 0.14 m = 0.728 m a turn: 100 a minute are 1.2133 m/s.
    await type(cadence, "Handle turns / min", "100");
    await expect(cadence.getByRole("textbox", { name: "Retrieve speed" })).toHaveValue("1.2133");
    // In a field that is typed in, the key belongs to the field.
    await move(page, 1).focus();
    const saving = page.waitForEvent("download");
    await page.keyboard.press("Control+s");
    const download = await saving;
    const saved = JSON.parse(readFileSync(await download.path(), "utf8")) as {
      cadence: unknown[];
      tackle: { reel?: unknown };
    };
    expect(saved.cadence[1]).toEqual({
      do: "repeat",
      until: "line in",
      moves: [
        { do: "reel", speed_m_s: 1.2133, for_s: 3 },
        { do: "pause", for_s: 2 },
      ],
    });
    expect(saved.tackle.reel).toEqual({ ratio: 5.2, spool_mm: 140 });
  },
);

test("events are listed and lead there; the strike zone tells its time; weed and floor are found", async ({
  page,
}) => {
  await open(page, "swim", true);
  await recorded(page);
  const runs = events(page).getByRole("button", { name: /runs/ }).first();
  await runs.click();
  await expect.poll(() => clock(page)).toBeGreaterThan(2);
  await expect(runs).toHaveAttribute("aria-current", "true");
  const marks = await unfold(page, "Current and marks");
  await marks.getByLabel("Strike zone", { exact: true }).check();
  await type(marks, "Strike zone from", "0.5");
  await type(marks, "Strike zone to", "1.2");
  await expect(page.getByRole("button", { name: /^In the strike zone: \d/ })).toBeVisible();
  // One truth: the cast is not yet at the depth that Reach tells, and how far it still has to be reeled is said.
  await expect(page.getByRole("button", { name: /^Steady tow: 1\.52/ })).toBeVisible();
  await expect(page.getByText(/not yet at depth: reel \d+\.\d.m more/)).toBeVisible();
  await expect(page.getByRole("figure", { name: "Depth track" })).toContainText("steady tow: 1.52");
  // Figures are of a whole retrieve: none is told of a run that is half recorded, and nothing moves under a hand meanwhile.
  const beats = page.getByRole("button", { name: /^Beats a second/ });
  const places = await beats.evaluateHandle((button) => {
    const seen = new Set<string>();
    const look = (): void => {
      const list = button.closest("section")?.innerText ?? "";
      seen.add(
        `${Math.round(button.getBoundingClientRect().top)}${/no pause/.test(list) ? " no pause" : ""}`,
      );
      requestAnimationFrame(look);
    };
    look();
    return seen;
  });
  await marks.getByLabel("Weed", { exact: true }).check();
  await type(marks, "Weed tops", "0.6");
  await recorded(page);
  await expect(
    events(page)
      .getByRole("button", { name: /in the weed/ })
      .first(),
  ).toBeVisible();
  await expect(page.getByText(/not yet at depth: reel \d+\.\d.m more/)).toBeVisible();
  expect(await places.evaluate((seen) => [...seen])).toHaveLength(1);
  await beats.click();
  await expect(page.getByRole("dialog", { name: /Beats a second/ })).toContainText("does not simulate");
});

test("variants go through the same cadence: in curves and track by letter and dashes, in a table @long", async ({
  page,
}) => {
  await open(page, "swim", true);
  await recorded(page);
  await page.getByRole("button", { name: "Pin this variant" }).click();
  const bib = await unfold(page, "Bib and tie eye");
  await type(bib, "Bib angle", "25");
  await page.getByRole("button", { name: "Pin this variant" }).click();
  await type(bib, "Bib angle", "55");
  await recorded(page);
  const track = page.getByRole("figure", { name: "Depth track" });
  for (const letter of ["A", "B"]) {
    await expect(track.locator(`path[data-letter='${letter}']`)).toHaveAttribute("d", /^M/);
    await expect(track.locator(`path[data-letter='${letter}']`)).toHaveAttribute("stroke-dasharray", /\d/);
  }
  await tab(page, /Compare/).click();
  const table = page.getByRole("region", { name: "Variants side by side" }).getByRole("table");
  // Name, now, A and B.
  await expect(table.getByRole("row", { name: /^Deepest/ }).getByRole("button")).toHaveCount(3);
  await expect(table.getByRole("row", { name: /^Rise in the pause/ }).getByRole("button")).toHaveCount(3);
  // What was changed, by name and by how much; and a name of one's own.
  await expect(table.getByRole("row", { name: /^Changed since/ })).toContainText("bib angle 25 → 55° (+30°)");
  await table.getByRole("textbox", { name: "Name of variant B" }).fill("flat bib");
  await table.getByRole("textbox", { name: "Name of variant B" }).press("Enter");
  await tab(page, /Curves/).click();
  await tab(page, /Compare/).click();
  await expect(table.getByRole("textbox", { name: "Name of variant B" })).toHaveValue("flat bib");
  await tab(page, /Curves/).click();
  const depth = page.getByRole("figure", { name: "Depth", exact: true });
  await expect(depth.locator("path[data-label='A']")).toHaveAttribute("stroke-dasharray", /\d/);
  await expect(depth.locator("path[data-label='B']")).toHaveAttribute("d", /^M/);
  // Another cadence: all go through it anew.
  const old = await depth.locator("path[data-label='A']").getAttribute("d");
  await page.getByLabel("Start from a rhythm").selectOption({ label: "Steady" });
  await recorded(page);
  await expect(depth.locator("path[data-label='A']")).not.toHaveAttribute("d", old ?? "");
  await page.getByRole("button", { name: "Unpin A" }).first().click();
  await expect(depth.locator("path[data-label='A']")).toHaveCount(0);
  await expect(depth.locator("path[data-label='B']")).toHaveCount(1);
});

test("forces are shown without shrinking the stage, listed with their sum, and added up head to tail @long", async ({
  page,
}) => {
  await open(page, "swim", true);
  await recorded(page);
  const stage = page.getByRole("img", { name: /^On the line/ });
  const before = await stage.boundingBox();
  const shows = page.getByRole("group", { name: "What the drawing shows" });
  await shows.getByRole("button", { name: "Forces" }).click();
  await page.getByRole("slider", { name: "Time" }).fill("6");
  const list = page.getByRole("list", { name: "Forces at this moment" });
  await expect(list.getByRole("button", { name: /^T, Line: \d/ })).toBeVisible();
  // In a steady tow nothing is left over.
  const left = await list.getByRole("button", { name: /^R, Sum of all forces/ }).innerText();
  expect(left).toMatch(/mN/);
  expect(numberIn(left.replace(/^R/, ""))).toBeLessThan(2);
  await expect(page.getByLabel("Length of the arrows")).toHaveValue("linear");
  await page.getByLabel("Length of the arrows").selectOption("log");
  await shows.getByRole("button", { name: "Sum", exact: true }).click();
  // What is added up is drawn to one linear scale.
  await expect(page.getByLabel("Length of the arrows")).toHaveValue("linear");
  await expect(page.getByLabel("Length of the arrows")).toBeDisabled();
  expect(await stage.boundingBox()).toEqual(before);
  // No button lies over the picture.
  const bar = await shows.boundingBox();
  expect((bar?.y ?? Infinity) + (bar?.height ?? 0)).toBeLessThanOrEqual(before?.y ?? 0);
});

test("strip and curves zoom together about the playhead, by keys and wheel, down to one twitch @long", async ({
  page,
}) => {
  await open(page, "swim", true);
  await recorded(page);
  await page.getByRole("slider", { name: "Time in the recording" }).fill("14.2");
  await tab(page, /Curves/).click();
  const depth = page.getByRole("figure", { name: "Depth", exact: true });
  const ticks = async (): Promise<number[]> =>
    (await depth.locator(".grid text[text-anchor='middle']").allTextContents())
      .map((text) => Number.parseFloat(text))
      .filter(Number.isFinite);
  const wide = (at: number): Promise<number> => move(page, at).evaluate((block) => block.clientWidth);
  const twitch = await wide(3);
  await page.getByRole("heading", { name: "This retrieve" }).click();
  for (let i = 0; i < 3; i++) await page.keyboard.press("z");
  await expect.poll(() => wide(3)).toBeGreaterThan(6 * twitch);
  // The playhead is in sight on the strip, and the curves show its seconds alone.
  await expect(move(page, 3)).toBeInViewport();
  await expect(depth.locator(".cursor")).toBeAttached();
  const seconds = await ticks();
  expect(Math.min(...seconds)).toBeGreaterThan(12);
  expect(Math.max(...seconds)).toBeLessThan(16);
  await page.keyboard.down("Control");
  await depth.getByRole("slider").hover();
  for (let i = 0; i < 12; i++) await page.mouse.wheel(0, -200);
  await page.keyboard.up("Control");
  // Down to 0.4 s: the twitch of 0.45 s is wider than what is in sight.
  await expect
    .poll(() => wide(3))
    .toBeGreaterThan(
      await page.getByRole("region", { name: "The cadence in time" }).evaluate((one) => one.clientWidth),
    );
  await expect(page.getByRole("button", { name: "Fewer seconds" })).toBeDisabled();
  for (let i = 0; i < 7; i++) await page.keyboard.press("Shift+Z");
  await expect.poll(() => wide(3)).toBeLessThan(1.1 * twitch + 2);
  expect(Math.min(...(await ticks()))).toBe(0);
});

test("a picture and a film of the stage", async ({ page }) => {
  await open(page, "swim", true);
  await recorded(page);
  await expect(page.locator("[data-renderer=canvas]").first()).toBeVisible();
  const save = page.getByRole("group", { name: "Save of this run" });
  const picture = page.waitForEvent("download");
  await save.getByRole("button", { name: "Picture" }).click();
  const png = readFileSync(await (await picture).path());
  expect(png.subarray(1, 4).toString("latin1")).toBe("PNG");
  const stage = await page.locator("[data-renderer] canvas").first().boundingBox();
  // Under the stage stands the strip with name, time and scale bar.
  expect(png.readUInt32BE(16)).toBe(Math.round(stage?.width ?? 0));
  expect(png.readUInt32BE(20)).toBe(Math.round(stage?.height ?? 0) + 40);
  const vector = page.waitForEvent("download");
  await save.getByRole("button", { name: "SVG" }).click();
  const svg = readFileSync(await (await vector).path(), "utf8");
  expect(svg).toMatch(/^<svg [^>]*aria-label="Coldwater suspender 90, \d+\.\d\d\u202fs"/);
  expect(svg).toMatch(/>\d+\u202fmm<\/text>/);
  expect(svg).not.toMatch(/NaN|undefined|<script|href/);
  await save.getByRole("button", { name: "Film" }).click();
  const form = page.getByRole("dialog", { name: "A film of this run" });
  await type(form, "From", "1");
  await type(form, "To", "0.5");
  await expect(form.getByText("‘To’ has to be later than ‘From’.")).toBeVisible();
  await expect(form.getByRole("button", { name: "Make the film" })).toBeDisabled();
  await type(form, "To", "1.4");
  await form.getByLabel("Speed of the film").selectOption("half as fast");
  await expect(form).toContainText(/24 pictures\. The film lasts 0\.8\u202fs\./);
  const film = page.waitForEvent("download");
  await form.getByRole("button", { name: "Make the film" }).click();
  const file = await film;
  expect(file.suggestedFilename()).toMatch(/-1\.0-1\.4s\.(mp4|webm)$/);
  await expect(form).toHaveCount(0);
  // The browser's own player finds its length, its pictures, and that the bait moves in it.
  const data = readFileSync(await file.path()).toString("base64");
  const kind = file.suggestedFilename().endsWith("mp4") ? "video/mp4" : "video/webm";
  // On a page of its own: this one's policy lets no film play.
  const player = await page.context().newPage();
  const seen = await player.evaluate(
    async ([data, type]) => {
      const video = document.createElement("video");
      const load = new Promise((done, failed) => {
        video.onloadeddata = done;
        video.onerror = () => failed(new Error(video.error?.message ?? "no film"));
      });
      video.src = `data:${type};base64,${data}`;
      await load;
      const canvas = document.createElement("canvas");
      [canvas.width, canvas.height] = [video.videoWidth, video.videoHeight];
      const context = canvas.getContext("2d");
      const shown = async (time: number): Promise<string> => {
        const there = new Promise((done) => (video.onseeked = done));
        video.currentTime = time;
        await there;
        context?.drawImage(video, 0, 0);
        return canvas.toDataURL();
      };
      const [first, last] = [await shown(0.01), await shown(0.75)];
      return {
        length: video.duration,
        width: video.videoWidth,
        height: video.videoHeight,
        moves: first !== last,
      };
    },
    [data, kind] as const,
  );
  expect(seen.length).toBeCloseTo(0.8, 1);
  expect(seen.width).toBe(2 * Math.floor(png.readUInt32BE(16) / 2));
  expect(seen.height).toBe(2 * Math.floor(png.readUInt32BE(20) / 2));
  expect(seen.moves).toBe(true);
});

test("axe finds nothing in curves, comparison and the numbers of a move @long", async ({ page }) => {
  await open(page, "swim", true);
  await recorded(page);
  await page.getByRole("button", { name: "Pin this variant" }).click();
  await move(page, 1).click();
  await unfoldAll(page);
  for (const name of [/Curves/, /Compare/, /Depth track/]) {
    await tab(page, name).click();
    await expect(tab(page, name)).toHaveAttribute("aria-selected", "true");
    await page.waitForTimeout(300);
    await expectAccessible(page, "main");
  }
});
