import type { Problem } from "../document";
import { drawn, outcomeOf, toleranceOf, variantsOf } from "../lesson";
import type { Collection, Lesson, Student } from "../lesson";

/** A lesson worked out, version 1 (docs/lesson-format.md). */
export interface LessonAnswer {
  readonly format: "trimwright/lesson-answer";
  readonly version: 1;
  readonly lesson: string;
  readonly student: Student | null;
  readonly numbers: Readonly<Record<string, number>>;
  readonly happens: number;
  readonly exercise: {
    readonly hand: number;
    readonly model: number;
    readonly unit: string;
    readonly tolerance: number;
    /** Hand and model agree within the tolerance. */
    readonly agrees: boolean;
  };
}

export function lessonAnswer(
  lesson: Lesson,
  collection: Collection,
  student: Student | null,
): LessonAnswer | { readonly problems: readonly Problem[] } {
  const draws = drawn(lesson, student);
  const built = variantsOf(lesson, collection, draws);
  if (!built.ok) return built;
  const { values, happens, hand, model } = outcomeOf(lesson, built.scenarios, draws);
  const { unit } = lesson.exercise;
  const tolerance = toleranceOf(lesson.exercise, model);
  return {
    format: "trimwright/lesson-answer",
    version: 1,
    lesson: lesson.id,
    student,
    numbers: values,
    happens,
    exercise: { hand, model, unit, tolerance, agrees: Math.abs(hand - model) <= tolerance },
  };
}

/** The same for people. */
export function lessonTable({ lesson, student, numbers, happens, exercise }: LessonAnswer): string {
  const { hand, model, unit, tolerance, agrees } = exercise;
  const rows: readonly (readonly [string, string])[] = [
    ...Object.entries(numbers).map(([name, value]) => [name, String(Number(value.toPrecision(6)))] as const),
    ["happens", String(Number(happens.toPrecision(6)))],
    ["by hand", `${Number(hand.toPrecision(6))} ${unit}`],
    ["by model", `${Number(model.toPrecision(6))} ${unit}`],
    ["tolerance", `${Number(tolerance.toPrecision(3))} ${unit}`],
  ];
  const wide = Math.max(...rows.map(([name]) => name.length));
  const whose = student === null ? "the usual numbers" : `the numbers of ${student.name}, ${student.group}`;
  return [
    `Lesson ${lesson}, with ${whose}`,
    ...rows.map(([name, value]) => `  ${name.padEnd(wide)}  ${value}`),
    agrees
      ? "  Hand and model agree."
      : "  Hand and model do NOT agree: mend the formula, or give a tolerance that has a reason.",
    "",
  ].join("\n");
}
