import { readdirSync, readFileSync } from "node:fs";
import type { Page } from "@playwright/test";
import { parseScenario } from "../../src/document";
import { drawn, outcomeOf, parseLesson, variantsOf } from "../../src/lesson";
import type { Lesson } from "../../src/lesson";
import { expect, test } from "./fixture";
import { expectAccessible, expectAccessibleInDark, expectNoWider, isPhone } from "./page";

const lessons = readdirSync("lessons").map((file): Lesson => {
  const read = parseLesson(readFileSync(`lessons/${file}`, "utf8"));
  if (!read.ok) throw new Error(`${file} is refused`);
  return read.lesson;
});

/** The right answer with everybody's numbers, as a hand would type it. */
function rightAnswer(lesson: Lesson): string {
  const name = lesson.scenario.from === "collection" ? lesson.scenario.file : "";
  const read = parseScenario(readFileSync(`scenarios/${name}.json`, "utf8"));
  if (!read.ok) throw new Error(`${name} is refused`);
  const draws = drawn(lesson, null);
  const built = variantsOf(lesson, new Map([[name, read.scenario]]), draws);
  if (!built.ok) throw new Error(`${lesson.id} cannot be built`);
  return outcomeOf(lesson, built.scenarios, draws).hand.toFixed(lesson.exercise.digits + 1);
}

const teach = async (page: Page): Promise<void> => {
  await page.emulateMedia({ reducedMotion: "reduce" });
  await page.goto("./#teach");
  await expect(page.getByRole("button", { name: /^Density and floating/ })).toBeVisible();
};
const part = (page: Page, name: string) =>
  page
    .getByRole("navigation", { name: /^(Parts of Teach|Teile von Lernen)$/ })
    .getByRole("button", { name, exact: true });

test("each lesson by keys: predict, run, answer wrong, answer right @long", async ({ page }) => {
  await teach(page);
  for (const lesson of lessons) {
    await page
      .getByRole("button", { name: new RegExp(`^${lesson.title.en?.replaceAll("?", "\\?") ?? ""}`) })
      .press("Enter");
    await expect(page.getByRole("heading", { level: 1 })).toHaveText(lesson.title.en ?? "");
    const go = page.getByRole("button", { name: "I think so: run it" });
    await expect(go).toBeVisible();
    // The run is not shown before something has been said.
    await expect(page.getByRole("heading", { name: "What happens" })).toHaveCount(0);
    if (lesson.prediction.kind === "choose") await page.getByRole("radio").first().press("Space");
    else if (lesson.prediction.kind === "number")
      await page.getByRole("textbox", { name: "Your number" }).fill("1,5");
    else await page.getByRole("slider", { name: /of the arrow/ }).press("ArrowDown");
    await go.press("Enter");
    await expect(page.getByText(/^(You were right|It came out differently)/)).toBeVisible();
    await expect(page.getByRole("math").first()).toBeVisible();
    const answer = page.getByRole("textbox", { name: "Your answer" });
    await answer.fill("-987");
    await answer.press("Enter");
    await expect(page.getByText(/^Not yet\. Hint: /)).toBeVisible();
    await answer.fill(rightAnswer(lesson));
    await answer.press("Enter");
    await expect(page.getByText("Right.", { exact: true })).toBeVisible();
    if (lesson.id === "balance") {
      // The clock's keys work in a lesson as in every other view that shows a run.
      await page.getByRole("heading", { name: "What happens" }).focus();
      await page.keyboard.press("End");
      const time = page.getByRole("slider", { name: "Time in the recording" });
      const end = await time.getAttribute("max");
      expect(Number(end)).toBeGreaterThan(0);
      await expect(time).toHaveValue(end ?? "");
      await page.keyboard.press("Home");
      await expect(time).toHaveValue("0");
      await expect(page.locator("math")).toHaveCount(2);
      await expectAccessible(page);
      await expectAccessibleInDark(page);
    }
    await page.getByRole("button", { name: /All lessons/ }).press("Enter");
  }
  await expect(page.getByText(`${lessons.length} of ${lessons.length} lessons done`)).toBeVisible();
  // What was done is there after a reload, and the bait in hand is as it was.
  await page.reload();
  await expect(page.getByText(`${lessons.length} of ${lessons.length} lessons done`)).toBeVisible();
});

test("a teacher: numbers of students, a file handed in, the class page, a lesson of one's own @phone-long", async ({
  page,
}) => {
  await teach(page);
  await expectNoWider(page);
  await page.getByLabel("Class code").fill("8b");
  await page.getByLabel("Name or number").fill("Ada");
  await page.getByLabel("Name or number").press("Tab");
  await page.getByRole("button", { name: /^Density and floating/ }).click();
  await expect(page.getByText("These are the numbers of Ada, class 8b.")).toBeVisible();
  await page.getByRole("radio").nth(2).check();
  await page.getByRole("button", { name: "I think so: run it" }).click();
  await expect(page.getByText(/^It came out differently/)).toBeVisible();
  const coming = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save my results as a file" }).click();
  const file = await (await coming).path();

  await part(page, "Class page").click();
  await page.getByLabel("Open files of results").setInputFiles(file);
  await expect(page.getByRole("table", { name: "Predictions and answers" })).toContainText("0 of 1");
  await expect(page.getByRole("rowheader", { name: "Ada" })).toBeVisible();
  await page.getByLabel("Open files of results").setInputFiles({
    name: "bad.json",
    mimeType: "application/json",
    buffer: Buffer.from("{}"),
  });
  await expect(page.getByRole("alert")).toContainText("bad.json");
  await expectNoWider(page);
  await expectAccessible(page, "main");

  await part(page, "For teachers").click();
  await page.getByRole("main").getByLabel("Class code").fill("8b");
  await page.getByLabel(/^Names or numbers/).fill("Ada\nBen");
  await page.getByRole("button", { name: "Make the sheets" }).click();
  await expect(page.getByText("2 sheets and the answers are ready.")).toBeVisible();
  await expect(page.getByRole("rowheader", { name: "Ben" })).toBeVisible();
  for (const [name, file] of [
    ["Worksheets as PDF", "worksheets-density-8b-A4.pdf"],
    ["Answers as PDF", "answers-density-8b-A4.pdf"],
    ["Plan as PDF", "plan-density-A4.pdf"],
  ] as const) {
    const made = page.waitForEvent("download");
    await page.getByRole("button", { name }).click();
    const pdf = await made;
    expect(pdf.suggestedFilename()).toBe(file);
    expect(
      readFileSync(await pdf.path())
        .subarray(0, 5)
        .toString(),
    ).toBe("%PDF-");
  }
  await page.getByRole("button", { name: "Show in large type" }).click();
  const wall = page.getByRole("dialog", { name: "Lesson in large type" });
  await expect(wall.getByText("1 of 5")).toBeVisible();
  await page.keyboard.press("PageDown");
  // It is seen whole under the picture, on a phone too.
  await expect(wall.getByText(/^What happens: /)).toBeInViewport({ ratio: 0.98 });
  await page.keyboard.press("Escape");
  await expect(wall).toHaveCount(0);
  // A long equation is seen whole too.
  await page.getByLabel("Lesson", { exact: true }).selectOption({ label: "Drag and steady speed" });
  await page.getByRole("button", { name: "Show in large type" }).click();
  await expect(wall.getByText("1 of 5")).toBeVisible();
  for (let turned = 0; turned < 4; turned++) await page.keyboard.press("PageDown");
  await expect(wall.locator("math")).toBeInViewport({ ratio: 0.98 });
  await page.keyboard.press("Escape");
  await expect(wall).toHaveCount(0);

  await part(page, "Write a lesson").click();
  await page.getByRole("button", { name: "Copy it" }).click();
  await expect(page.getByText(/^This lesson can be used/)).toBeVisible();
  const hand = page.getByLabel("By hand", { exact: true });
  await hand.fill("100 * roh / rhow");
  await hand.press("Tab");
  await expect(page.getByText("1 thing to mend:")).toBeVisible();
  await hand.fill("100 * rho / rhow");
  await hand.press("Tab");
  await expect(page.getByText(/^This lesson can be used/)).toBeVisible();
  await expectNoWider(page);
});

test("the forces of a moment, one by one, and a point for their moments; then all in German @long", async ({
  page,
}) => {
  await teach(page);
  await part(page, "Forces on the bait").click();
  const table = page.getByRole("table", { name: "Forces and moments" });
  await expect(table.getByRole("rowheader", { name: /Weight$/ })).toBeVisible();
  const cross = page.getByRole("button", { name: /^Point for the moments/ });
  const station = page.getByRole("textbox", { name: "Behind the nose" });
  const before = await station.inputValue();
  await cross.focus();
  await page.keyboard.press("Shift+ArrowLeft");
  await expect(station).toHaveValue((Number(before) + 10).toFixed(1));
  const weight = table.getByRole("row").filter({ hasText: "Weight" });
  // 10 mm behind G the weight turns the nose down.
  await expect(weight).toContainText(/\u2212\d+\.\d+.N·mm/);
  await page.getByRole("button", { name: "One frame on" }).click();
  await expect(table.getByRole("rowheader", { name: /added mass/ })).toBeVisible();
  await expectAccessible(page, "main");
  await page.getByLabel("Language").selectOption("de");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Kräfte am Köder");
  await expect(page.getByRole("table", { name: "Kräfte und Drehmomente" })).toContainText(/\d,\d+.mN/);
  await expect(page.locator(".teach")).toHaveAttribute("lang", "de");
  // The frame round it speaks German too; what does not yet says that it is English.
  await expect(page.locator("html")).toHaveAttribute("lang", "de");
  await expect(page.getByRole("navigation", { name: "Ansichten" })).toContainText("Wiegen");
  await expect(page.getByRole("button", { name: "Laufen lassen" })).toHaveCount(1);
  await page.keyboard.press("?");
  await expect(page.getByRole("dialog", { name: "Tasten" })).toContainText("laufen lassen oder anhalten");
  await page.keyboard.press("Escape");
  await part(page, "Wörter der Werkstatt").click();
  await page.getByRole("searchbox").fill("lippe");
  await expect(page.getByText("Tauchschaufel", { exact: true })).toBeVisible();
  if (!isPhone(page)) await expectAccessible(page);
});
