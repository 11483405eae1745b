import { filled, inLanguage, optionOf, readFormula, saidOf, texOf } from "../../../lesson";
import type { Lesson, LessonWords, Outcome, Values } from "../../../lesson";
import type { Speaker } from "../../words/teach";

interface Shown {
  readonly unit: string;
  readonly digits: number;
  readonly symbol?: string | undefined;
  readonly means: LessonWords;
}

/** Draws and figures of a lesson by their name. */
export const namedIn = (lesson: Lesson): ReadonlyMap<string, Shown> =>
  new Map([...lesson.draws, ...lesson.figures].map((one) => [one.name, one]));

/** A number of the lesson with its unit. */
export function numberOf(lesson: Lesson, values: Values, name: string, words: Speaker): string {
  const shown = namedIn(lesson).get(name);
  const value = values[name];
  return shown === undefined || value === undefined ? "…" : words.quantity(value, shown.unit, shown.digits);
}

/** What happens or is predicted, in words: an option's text, or a number with its unit. */
export function predictionText(lesson: Lesson, value: number, values: Values, words: Speaker): string {
  const { prediction } = lesson;
  if (prediction.kind !== "choose") return words.quantity(value, prediction.unit, prediction.digits);
  const option = prediction.options[value];
  return option === undefined ? "…" : told(lesson, option.says, { values }, words);
}

/** What happens, in words. */
export function happensText(lesson: Lesson, outcome: Outcome, words: Speaker): string {
  const { prediction } = lesson;
  const value = prediction.kind === "choose" ? optionOf(prediction, outcome.happens) : outcome.happens;
  return predictionText(lesson, value, outcome.values, words);
}

/** A text of the lesson in the language that is read, its places filled. */
export function told(
  lesson: Lesson,
  text: LessonWords,
  outcome: Pick<Outcome, "values"> & Partial<Outcome>,
  words: Speaker,
): string {
  const { unit, digits } = lesson.exercise;
  // A number and its per cent stay on one line.
  const joined = inLanguage(text, words.language).replaceAll(/(?<=\d) (?=%)/g, "\u202f");
  return filled(joined, (name) => {
    if (name === "happens")
      return outcome.happens === undefined || outcome.hand === undefined || outcome.model === undefined
        ? "…"
        : happensText(
            lesson,
            { values: outcome.values, happens: outcome.happens, hand: outcome.hand, model: outcome.model },
            words,
          );
    if (name === "hand" || name === "model") {
      const value = outcome[name];
      return value === undefined ? "…" : words.quantity(value, unit, digits);
    }
    return numberOf(lesson, outcome.values, name, words);
  });
}

/** A number as TeX: the decimal comma of a language must not stand as a separator of a list. */
const texNumber = (text: string): string => text.replace("\u2212", "-").replace(",", "{,}");
const texUnit = (unit: string): string =>
  unit === ""
    ? ""
    : unit === "%"
      ? "\\,\\%"
      : unit === "°"
        ? "\\text{°}"
        : `\\,\\mathrm{${unit.replace("²", "^2")}}`;

/** A number of a formula as the language writes it. */
export const literalIn = (words: Speaker, text: string): string =>
  words.language === "de" ? text.replace(".", ",") : text;

/** The exercise's formula with the present numbers, as TeX and read aloud. */
export function workedLine(lesson: Lesson, outcome: Outcome, words: Speaker): { tex: string; said: string } {
  const { exercise } = lesson;
  const read = readFormula(exercise.hand);
  if (!read.ok) throw new Error(`The lesson "${lesson.id}" has a formula that cannot be read.`);
  const named = namedIn(lesson);
  const plain = (name: string): string => {
    const shown = named.get(name);
    return words.number(outcome.values[name] ?? NaN, shown?.digits ?? 2);
  };
  const literal = (text: string): string => literalIn(words, text);
  const bracketed = (name: string): string => {
    const text = texNumber(plain(name));
    return text.startsWith("-") ? `(${text})` : text;
  };
  const tex = texOf(read.term, bracketed, (text) => texNumber(literal(text)));
  const speech = {
    plus: words.tell("speech.plus"),
    minus: words.tell("speech.minus"),
    times: words.tell("speech.times"),
    over: words.tell("speech.over"),
    root: (of: string) => words.tell("speech.root", { of }),
    of: (name: string, of: string) => words.tell("speech.function", { name, of }),
    bracket: (of: string) => words.tell("speech.bracket", { of }),
  };
  const result = words.number(outcome.hand, exercise.digits);
  return {
    tex: `${tex} = ${texNumber(result)}${texUnit(exercise.unit)}`,
    said: words.tell("speech.equals", {
      left: saidOf(read.term, speech, plain, literal),
      right: words.quantity(outcome.hand, exercise.unit, exercise.digits),
    }),
  };
}
