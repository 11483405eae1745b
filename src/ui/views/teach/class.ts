import { optionOf } from "../../../lesson";
import type { Lesson, LessonResult, Results } from "../../../lesson";

export const SIDES = ["low", "right", "high"] as const;
type Side = (typeof SIDES)[number];

/** What a class did in one lesson. */
export interface ClassRow {
  readonly id: string;
  readonly lesson: Lesson | null;
  readonly count: number;
  readonly predictedRight: number;
  readonly solved: number;
  readonly atFirst: number;
  /** Predictions: an option's count, or each number; `happens`: the option that came true for most. */
  readonly spread: readonly { readonly option: number; readonly count: number; readonly happens: boolean }[];
  /** Predictions of a number: how many were too small, right, too large. */
  readonly sides: Readonly<Record<Side, number>>;
  readonly numbers: readonly { readonly predicted: number; readonly happened: number }[];
}

/** The class, lesson by lesson: in the order of the lessons, others after them. */
export function classRows(files: readonly Results[], lessons: readonly Lesson[]): readonly ClassRow[] {
  const entries = files.flatMap((one) => one.lessons);
  const ids = [...lessons.map(({ id }) => id), ...entries.map(({ lesson }) => lesson)];
  return [...new Set(ids)].flatMap((id): ClassRow[] => {
    const own = entries.filter(({ lesson }) => lesson === id);
    if (own.length === 0) return [];
    const lesson = lessons.find((one) => one.id === id) ?? null;
    const prediction = lesson?.prediction;
    const happened = (option: number): number =>
      prediction?.kind === "choose"
        ? own.filter((one) => optionOf(prediction, one.happened) === option).length
        : 0;
    const side = (which: (one: LessonResult) => boolean): number =>
      prediction?.kind === "choose" ? 0 : own.filter(which).length;
    return [
      {
        id,
        lesson,
        count: own.length,
        predictedRight: own.filter(({ cameTrue }) => cameTrue).length,
        solved: own.filter(({ answers }) => answers.some(({ right }) => right)).length,
        atFirst: own.filter(({ answers }) => answers[0]?.right === true).length,
        spread:
          prediction?.kind === "choose"
            ? prediction.options.map((_, option) => ({
                option,
                count: own.filter(({ predicted }) => predicted === option).length,
                happens: 2 * happened(option) > own.length,
              }))
            : [],
        sides: {
          low: side(({ cameTrue, predicted, happened }) => !cameTrue && predicted < happened),
          right: side(({ cameTrue }) => cameTrue),
          high: side(({ cameTrue, predicted, happened }) => !cameTrue && predicted >= happened),
        },
        numbers:
          prediction?.kind === "choose"
            ? []
            : own.map(({ predicted, happened }) => ({ predicted, happened })),
      },
    ];
  });
}
