import { print } from "../document";
import { lessonSchema } from "./schema";
import type { Lesson } from "./schema";

/** The text of a lesson file: keys in the order of the format, empty lists left out. */
export function serializeLesson(lesson: Lesson): string {
  const ordered = lessonSchema.parse(lesson);
  const lean = Object.entries(ordered).filter(([, value]) => !(Array.isArray(value) && value.length === 0));
  const variants = ordered.variants.map(({ changes, ...one }) =>
    changes.length === 0 ? one : { ...one, changes },
  );
  return `${print({ ...Object.fromEntries(lean), variants }, 0, true)}\n`;
}
