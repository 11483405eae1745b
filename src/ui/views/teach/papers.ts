import { inLanguage, readFormula, saidOf, toleranceOf } from "../../../lesson";
import type { Lesson, Outcome } from "../../../lesson";
import type { Block, ClassPaper } from "../../../sheet";
import type { Speaker } from "../../words/teach";
import type { Sheet } from "./sheets";
import { happensText, literalIn, namedIn, numberOf, told } from "./telling";

/** The papers of a lesson, in the language that is read: what a teacher prints. */

/** The exercise's formula with the numbers of one student, in one line of plain signs. */
export function workedText(lesson: Lesson, outcome: Outcome, words: Speaker): string {
  const { exercise } = lesson;
  const read = readFormula(exercise.hand);
  if (!read.ok) throw new Error(`The lesson "${lesson.id}" has a formula that cannot be read.`);
  const named = namedIn(lesson);
  const signs = {
    plus: "+",
    minus: "\u2212",
    times: "·",
    over: "/",
    root: (of: string) => `√(${of})`,
    of: (name: string, of: string) => `${name === "atan" ? "arctan" : name}(${of})`,
    bracket: (of: string) => `(${of})`,
  };
  const number = (name: string): string => {
    const text = words.number(outcome.values[name] ?? NaN, named.get(name)?.digits ?? 2);
    return text.startsWith("\u2212") ? `(${text})` : text;
  };
  return saidOf(read.term, signs, number, (text) => literalIn(words, text));
}

export function rightText({ exercise }: Lesson, { hand }: Outcome, words: Speaker): string {
  const within = words.quantity(toleranceOf(exercise, hand), exercise.unit, Math.max(1, exercise.digits));
  return `${words.quantity(hand, exercise.unit, exercise.digits)} (${words.tell("sheet.within")} ${within})`;
}

export function numbersText(lesson: Lesson, outcome: Outcome, words: Speaker): string {
  return lesson.draws.map(({ name }) => numberOf(lesson, outcome.values, name, words)).join("; ");
}

/** One paper for each student, with the numbers of that student. */
export function worksheets(lesson: Lesson, sheets: readonly Sheet[], words: Speaker): ClassPaper[] {
  const { exercise, prediction } = lesson;
  const title = inLanguage(lesson.title, words.language);
  return sheets.map(({ student, outcome }) => {
    const arrow = prediction.kind === "arrow";
    const asked: Block[] =
      prediction.kind === "choose"
        ? [{ kind: "ticks", words: prediction.options.map(({ says }) => told(lesson, says, outcome, words)) }]
        : [
            ...(arrow
              ? ([{ kind: "text", words: words.tell("sheet.arrow") }, { kind: "arrow" }] as const)
              : []),
            { kind: "number", words: words.tell("sheet.guess"), unit: prediction.unit },
          ];
    return {
      name: title,
      part: words.tell("sheet.worksheet"),
      blocks: [
        {
          kind: "fields",
          words: [
            words.tell("sheet.name", { name: student.name }),
            words.tell("sheet.group", { group: student.group }),
          ],
        },
        { kind: "title", words: title },
        { kind: "text", words: told(lesson, lesson.question, outcome, words) },
        { kind: "text", words: words.tell("sheet.predict") },
        ...asked,
        { kind: "lines", count: arrow ? 2 : 3 },
        { kind: "text", words: words.tell("sheet.seen") },
        { kind: "lines", count: 3 },
        { kind: "heading", words: words.tell("lesson.exercise") },
        { kind: "text", words: told(lesson, exercise.ask, outcome, words) },
        { kind: "text", words: words.tell("sheet.work") },
        { kind: "lines", count: arrow ? 6 : prediction.kind === "number" ? 8 : 9 },
        { kind: "number", words: words.tell("sheet.answer"), unit: exercise.unit },
      ],
    };
  });
}

/** One paper for the teacher: what happens and what is right, student by student. */
export function answerSheet(lesson: Lesson, sheets: readonly Sheet[], words: Speaker): ClassPaper {
  const title = inLanguage(lesson.title, words.language);
  const named = namedIn(lesson);
  const means = lesson.draws.map(({ name, means }) => {
    const { unit = "" } = named.get(name) ?? {};
    return `${inLanguage(means, words.language)}${unit === "" ? "" : ` (${unit})`}`;
  });
  return {
    name: title,
    part: words.tell("sheet.answerPart"),
    blocks: [
      { kind: "title", words: words.tell("sheet.answers", { title }) },
      { kind: "small", words: `${words.tell("sheet.numbers")}: ${means.join("; ")}.` },
      {
        kind: "table",
        columns: [
          { head: words.tell("sheet.student"), share: 0.16 },
          { head: words.tell("sheet.numbers"), share: 0.18 },
          { head: words.tell("sheet.happens"), share: 0.24 },
          { head: words.tell("sheet.way"), share: 0.24 },
          { head: words.tell("sheet.right"), share: 0.18 },
        ],
        rows: sheets.map(({ student, outcome }) => [
          student.name,
          numbersText(lesson, outcome, words),
          happensText(lesson, outcome, words),
          workedText(lesson, outcome, words),
          rightText(lesson, outcome, words),
        ]),
      },
      { kind: "small", words: `${words.tell("sources.title")}: ${lesson.sources.join("; ")}.` },
    ],
  };
}

/** What a teacher has to know and to bring; its texts name no student's numbers. */
export function planRows(lesson: Lesson, words: Speaker): readonly (readonly [string, string])[] {
  const { plan } = lesson;
  const say = (text: Lesson["misconception"]): string => told(lesson, text, { values: {} }, words);
  return [
    [words.tell("teacher.goal"), say(plan.goal)],
    [words.tell("teacher.time"), words.tell("teacher.minutes", { count: plan.minutes })],
    [words.tell("teacher.misconception"), say(lesson.misconception)],
    [words.tell("teacher.things"), say(plan.things)],
    [words.tell("teacher.demonstration"), say(plan.demonstration)],
    [words.tell("teacher.safety"), say(plan.safety)],
  ];
}

export function planPaper(lesson: Lesson, words: Speaker): ClassPaper {
  const title = inLanguage(lesson.title, words.language);
  return {
    name: title,
    part: words.tell("teacher.plan"),
    blocks: [
      { kind: "title", words: `${words.tell("teacher.plan")}: ${title}` },
      { kind: "text", words: inLanguage(lesson.idea, words.language) },
      { kind: "terms", rows: planRows(lesson, words) },
      { kind: "small", words: `${words.tell("sources.title")}: ${lesson.sources.join("; ")}.` },
    ],
  };
}
