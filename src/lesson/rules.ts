import { problem } from "../document";
import type { Problem } from "../document";
import { figureTrouble } from "./figures";
import { namesIn, PI, readFormula } from "./formula";
import { LANGUAGES } from "./schema";
import type { Lesson, LessonWords } from "./schema";
import { texTrouble } from "./tex";
import { placesIn } from "./text";

/** Names that a text may hold in braces besides figures: the results of the exercise. */
const RESULTS = ["hand", "model", "happens"];

/** What no single field can know: names, formulas, ranges, places in texts. */
export function lessonRules(lesson: Lesson): readonly Problem[] {
  const found: Problem[] = [];
  const say = (path: string, what: string, allowed: string, remedy: string): void => {
    found.push(problem(path, what, allowed, remedy));
  };
  const draws = lesson.draws.map(({ name }) => name);
  const names = [...draws, ...lesson.figures.map(({ name }) => name)];
  const reserved = [PI, "sqrt", "sin", "cos", "tan", "atan", ...RESULTS];
  names.forEach((name, i) => {
    const path = i < draws.length ? `draws[${i}].name` : `figures[${i - draws.length}].name`;
    if (names.indexOf(name) !== i)
      say(path, `"${name}" a second time`, "each name once", "Give it another name.");
    if (reserved.includes(name))
      say(path, `"${name}"`, "a name that means nothing else", "Give it another name.");
  });

  const formula = (path: string, text: string, known: readonly string[]): void => {
    const read = readFormula(text);
    if (!read.ok) {
      say(path, `"${text}"`, `a formula: ${read.why}`, "Write numbers, names, + - * / and brackets.");
      return;
    }
    const strange = namesIn(read.term).filter((name) => !known.includes(name));
    for (const name of strange)
      say(
        path,
        `"${name}"`,
        `one of the names ${known.join(", ") || "(there are none)"}`,
        "Add a figure of this name, or use another.",
      );
  };
  formula("prediction.of", lesson.prediction.of, names);
  formula("exercise.hand", lesson.exercise.hand, names);
  formula("exercise.model", lesson.exercise.model, names);

  const tex = (path: string, text: string | undefined): void => {
    const trouble = text === undefined ? null : texTrouble(text);
    if (trouble !== null)
      say(path, "TeX", `simple TeX: ${trouble}`, "Use fractions, roots, indices and Greek letters only.");
  };
  tex("equation.tex", lesson.equation.tex);
  tex("equation.tex_de", lesson.equation.tex_de);
  lesson.figures.forEach(({ symbol, is, of = "A" }, i) => {
    tex(`figures[${i}].symbol`, symbol);
    const trouble = figureTrouble(is);
    if (trouble !== null) say(`figures[${i}].is`, `"${is}"`, trouble, "Use one of these names.");
    if ("ABC".indexOf(of) >= lesson.variants.length)
      say(
        `figures[${i}].of`,
        `variant ${of}`,
        `a variant that exists (there are ${lesson.variants.length})`,
        "Add the variant, or choose another.",
      );
  });
  lesson.draws.forEach(({ symbol, from, to, usual, step }, i) => {
    tex(`draws[${i}].symbol`, symbol);
    if (!(from < to)) say(`draws[${i}].to`, String(to), `more than ${from}`, "Make the range longer than 0.");
    else if ((to - from) / step > 1e5)
      say(`draws[${i}].step`, String(step), "at most 100000 steps in the range", "Make the step longer.");
    if (usual < from || usual > to)
      say(`draws[${i}].usual`, String(usual), `a number from ${from} to ${to}`, "Move it into the range.");
  });

  lesson.variants.forEach(({ size, changes }, i) => {
    if (size !== undefined) formula(`variants[${i}].size`, size, draws);
    changes.forEach(({ value }, j) => {
      const look = (one: unknown): void => {
        if (typeof one === "string" && one.startsWith("="))
          formula(`variants[${i}].changes[${j}].value`, one.slice(1), draws);
        else if (typeof one === "object" && one !== null) Object.values(one).forEach(look);
      };
      look(value);
    });
  });

  for (const [path, words] of textsOf(lesson)) {
    const given = LANGUAGES.filter((language) => (words[language] ?? "").trim() !== "");
    if (given.length === 0) say(path, "no text", "a text in one language at least", "Write it.");
    for (const language of given)
      for (const name of placesIn(words[language] ?? ""))
        if (![...names, ...RESULTS].includes(name))
          say(
            `${path}.${language}`,
            `{${name}}`,
            `one of the names ${[...names, ...RESULTS].join(", ")}`,
            "Mend the name in the braces.",
          );
  }
  if (lesson.prediction.kind === "arrow" && !(lesson.prediction.from < lesson.prediction.to))
    say(
      "prediction.to",
      String(lesson.prediction.to),
      `more than ${lesson.prediction.from}`,
      "Make the range longer than 0.",
    );
  return found;
}

/** Every text of a lesson that a student or a teacher reads, with its place. */
export function textsOf(lesson: Lesson): readonly (readonly [path: string, words: LessonWords])[] {
  const { prediction, exercise, plan } = lesson;
  return [
    ["title", lesson.title],
    ["idea", lesson.idea],
    ["question", lesson.question],
    ["misconception", lesson.misconception],
    ["explanation", lesson.explanation],
    ["equation.said", lesson.equation.said],
    ["exercise.ask", exercise.ask],
    ["exercise.hint", exercise.hint],
    ["exercise.why", exercise.why],
    ["plan.goal", plan.goal],
    ["plan.things", plan.things],
    ["plan.demonstration", plan.demonstration],
    ["plan.safety", plan.safety],
    ...(prediction.kind === "choose"
      ? prediction.options.map(({ says }, i) => [`prediction.options[${i}].says`, says] as const)
      : []),
    ...lesson.draws.map(({ means }, i) => [`draws[${i}].means`, means] as const),
    ...lesson.figures.map(({ means }, i) => [`figures[${i}].means`, means] as const),
    ...lesson.variants.flatMap(({ name }, i) =>
      name === undefined ? [] : [[`variants[${i}].name`, name] as const],
    ),
  ];
}
