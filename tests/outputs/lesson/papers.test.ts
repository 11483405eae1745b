import { readdirSync, readFileSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import { parseScenario } from "../../../src/document";
import { drawn, optionOf, outcomeOf, parseLesson, toleranceOf, variantsOf } from "../../../src/lesson";
import type { Lesson } from "../../../src/lesson";
import { calculate } from "../../../src/lesson/formula";
import { classPages, classPdf } from "../../../src/sheet";
import type { ClassPaper, Page } from "../../../src/sheet";
import { answerSheet, planPaper, worksheets } from "../../../src/ui/views/teach/papers";
import type { Sheet } from "../../../src/ui/views/teach/sheets";
import { LANGUAGES } from "../../../src/ui/words/base";
import { TEACH } from "../../../src/ui/words/teach";
import type { Speaker } from "../../../src/ui/words/teach";
import { faults } from "../sheet/faults";
import { fonts } from "../sheet/fonts";

/** The papers of each lesson, for six students: what is printed is held against the model, not against what was put in. */
const NAMES = [
  "Ada",
  "Ben",
  "Çelik",
  "student 17",
  "Ångström",
  "a name that is longer than most of them are",
];
const lessons = readdirSync("lessons").map((file): Lesson => {
  const read = parseLesson(readFileSync(`lessons/${file}`, "utf8"));
  if (!read.ok) throw new Error(`${file} is refused`);
  return read.lesson;
});

function sheetsOf(lesson: Lesson): Sheet[] {
  const name = lesson.scenario.from === "collection" ? lesson.scenario.file : "";
  const read = parseScenario(readFileSync(`scenarios/${name}.json`, "utf8"));
  if (!read.ok) throw new Error(`${name} is refused`);
  const collection = new Map([[name, read.scenario]]);
  return NAMES.map((own) => {
    const student = { group: "8b", name: own };
    const draws = drawn(lesson, student);
    const built = variantsOf(lesson, collection, draws);
    if (!built.ok) throw new Error(`${lesson.id} cannot be built`);
    return { student, outcome: outcomeOf(lesson, built.scenarios, draws) };
  });
}

const job = (words: Speaker) => ({
  fonts,
  paper: "A4" as const,
  words: {
    paging: (page: number, of: number) => words.tell("sheet.page", { page, all: of }),
    continued: (title: string) => words.tell("sheet.continued", { title }),
  },
});
const textOf = (page: Page): string =>
  page.items.flatMap((one) => (one.kind === "text" ? [one.words] : [])).join(" ");
const plain = (text: string): string => text.replaceAll(/\s+/gu, " ");
/** A number or a formula as it is printed, read again. */
const read = (text: string): number =>
  calculate(
    text.replaceAll(",", ".").replaceAll("√", "sqrt").replaceAll("arctan", "atan").replaceAll("π", "pi"),
    {},
  );
const first = (text: string): number => read(/^[\u2212\d.,]+/.exec(text)?.[0] ?? "");

function rowsOf({ blocks }: ClassPaper): readonly (readonly string[])[] {
  const table = blocks.find((one) => one.kind === "table");
  if (table === undefined) throw new Error("no table");
  return table.rows;
}

beforeAll(() => TEACH.ready("de"));

describe.each(lessons)("the papers of $id", (lesson) => {
  const sheets = sheetsOf(lesson);
  const { exercise, prediction } = lesson;

  it.each(LANGUAGES)("give the answers that the model gives, in %s", (language) => {
    const words = TEACH.in(language);
    const rows = rowsOf(answerSheet(lesson, sheets, words));
    expect(rows.map(([name]) => name)).toEqual(NAMES);
    const rounding = 0.5 * 10 ** -exercise.digits;
    rows.forEach(([, numbers = "", happens = "", way = "", right = ""], i) => {
      const { values = {}, model = NaN, happens: came = NaN } = sheets[i]?.outcome ?? {};
      const slack = toleranceOf(exercise, model);
      expect(Math.abs(first(right) - model), right).toBeLessThanOrEqual(slack + rounding);
      // The way is printed with rounded numbers: it leads as near as an answer has to be.
      expect(Math.abs(read(way) - model), `${way} = ${model}`).toBeLessThanOrEqual(1.5 * slack + rounding);
      const draws = numbers.split("; ").map(first);
      lesson.draws.forEach(({ name, digits }, k) =>
        expect(draws[k]).toBeCloseTo(values[name] ?? NaN, digits),
      );
      if (prediction.kind === "choose") expect(optionOf(prediction, came)).toBeGreaterThanOrEqual(0);
      else expect(first(happens)).toBeCloseTo(came, prediction.digits);
    });
    // Not everybody has the same answer.
    expect(new Set(rows.map(([, , , , right]) => right)).size).toBeGreaterThan(1);
  });

  it.each(LANGUAGES)(
    "are one page for a student, with no word on another and none off the page, in %s",
    (language) => {
      const words = TEACH.in(language);
      const pages = classPages(worksheets(lesson, sheets, words), job(words));
      expect(pages.length).toBe(NAMES.length);
      pages.forEach((page, i) => {
        const text = plain(textOf(page));
        expect(text).toContain(NAMES[i]);
        const { name } = lesson.draws[0] ?? {};
        const drawnNow = rowsOf(answerSheet(lesson, sheets, words))[i]?.[1]?.split("; ")[0] ?? "";
        if (name !== undefined && `${lesson.question.en} ${exercise.ask.en}`.includes(`{${name}}`))
          expect(text).toContain(plain(drawnNow));
      });
      const all = [
        ...pages,
        ...classPages([answerSheet(lesson, sheets, words), planPaper(lesson, words)], job(words)),
      ];
      expect(all.flatMap(faults)).toEqual([]);
    },
  );
});

it("a plan says what to bring and how to stay safe; the PDF has the same bytes each time", async () => {
  const words = TEACH.in("de");
  const [lesson] = lessons;
  if (lesson === undefined) throw new Error("no lesson");
  const plan = planPaper(lesson, words);
  const text = plain(classPages([plan], job(words)).map(textOf).join(" "));
  for (const one of [lesson.plan.things.de, lesson.plan.safety.de, lesson.plan.goal.de])
    expect(text).toContain(plain(one ?? "missing"));
  const [a, b] = await Promise.all(
    [0, 1].map(() => classPdf([plan], job(words), { title: "plan", name: "plan-x" })),
  );
  expect(a?.name).toBe("plan-x-A4.pdf");
  expect(new TextDecoder("latin1").decode(a?.bytes.slice(0, 5))).toBe("%PDF-");
  expect(a?.bytes).toEqual(b?.bytes);
});
