import { z } from "zod";
import type { LessonResult } from "../../../lesson";

/** What of Teach stays on this device, in the browser's own storage: student, and what was done in each lesson. */
export interface Kept {
  readonly group: string;
  readonly name: string;
  readonly done: readonly LessonResult[];
}

const KEY = "trimwright/teach";
const NOTHING: Kept = { group: "", name: "", done: [] };

const finite = z.number().min(-1e12).max(1e12);
const schema = z.object({
  group: z.string().max(60),
  name: z.string().max(60),
  done: z
    .array(
      z.object({
        lesson: z.string().regex(/^[a-z0-9][a-z0-9-]{0,39}$/),
        predicted: finite,
        happened: finite,
        cameTrue: z.boolean(),
        answers: z.array(z.object({ value: finite, right: z.boolean() })).max(50),
      }),
    )
    .max(200),
});

/** What an earlier visit left; what is odd in it is left out. */
export function readDevice(): Kept {
  try {
    const read = schema.safeParse(JSON.parse(localStorage.getItem(KEY) ?? "null"));
    return read.success ? read.data : NOTHING;
  } catch {
    return NOTHING;
  }
}

export function writeDevice(kept: Kept): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(kept));
  } catch {
    // A full or forbidden storage: then progress lasts as long as the page.
  }
}
