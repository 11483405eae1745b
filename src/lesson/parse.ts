import { problem, problemsOf, nearestPlace } from "../document";
import type { Place, Problem } from "../document";
import { readBounded } from "./bounded";
import { lessonRules } from "./rules";
import { lessonSchema } from "./schema";
import type { Lesson } from "./schema";

export type ParsedLesson =
  | { readonly ok: true; readonly lesson: Lesson }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** A lesson is a page or two: a file that is longer is none. */
export const LONGEST_LESSON = 200_000;

const nowhere = (): Place | null => null;

/** Reads the text of a lesson file. Whether its baits can be built, `variantsOf` says. */
export function parseLesson(text: string): ParsedLesson {
  const read = readBounded(text, LONGEST_LESSON, "This is no lesson file; open another.");
  return read.ok ? readLesson(read.value, read.place) : read;
}

/** The same for a value that is not a text: what stands on a form. */
export function readLesson(value: unknown, place: (path: string) => Place | null = nowhere): ParsedLesson {
  const result = lessonSchema.safeParse(value);
  const near = (path: string): Place | null => nearestPlace(path, place);
  if (!result.success)
    return { ok: false, problems: problemsOf(lessonSchema, value, result.error.issues, near) };
  const lesson: Lesson = result.data;
  const broken = lessonRules(lesson);
  return broken.length === 0
    ? { ok: true, lesson }
    : {
        ok: false,
        problems: broken.map(({ path, found, allowed, remedy }) =>
          problem(path, found, allowed, remedy, near(path)),
        ),
      };
}
