/** What the program's files are, and where each is opened: told where one came to the place of another. */
const ELSEWHERE: Readonly<Record<string, string>> = {
  "trimwright/scenario": "This is the file of one bait: open it with “Open a file”.",
  "trimwright/baits":
    "This file holds many baits: open it with “Open a file”, or take it over under “My baits”.",
  "trimwright/box": "This is a box: open it on the view Weigh, under “Own box”.",
  "trimwright/lesson": "This is a lesson: open it on the view Teach, under “Write a lesson”.",
};

/** Where a file of this format is opened; null: it is none of the program's. */
export const placeOf = (format: unknown): string | null =>
  typeof format === "string" && Object.hasOwn(ELSEWHERE, format) ? (ELSEWHERE[format] ?? null) : null;
