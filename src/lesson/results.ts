import { z } from "zod";
import { problemsOf } from "../document";
import type { Immutable, Problem } from "../document";
import { readBounded } from "./bounded";

/**
 * What a student hands in, version 1: what was predicted, what happened, and the answers. It is the student's own word:
 * nothing in it proves itself.
 */
export const RESULTS_FORMAT = "trimwright/results";
export const RESULTS_VERSION = 1;
export const LONGEST_RESULTS = 100_000;

const finite = () => z.number().min(-1e12).max(1e12);
const entry = z.strictObject({
  lesson: z.string().regex(/^[a-z0-9][a-z0-9-]{0,39}$/),
  /** An option is its place in the list, from 0. */
  predicted: finite(),
  happened: finite(),
  cameTrue: z.boolean(),
  answers: z.array(z.strictObject({ value: finite(), right: z.boolean() })).max(50),
});
const resultsSchema = z
  .strictObject({
    format: z.literal(RESULTS_FORMAT),
    version: z.literal(RESULTS_VERSION),
    group: z.string().min(1).max(60),
    student: z.string().min(1).max(60),
    lessons: z.array(entry).max(200),
  })
  .meta({ title: "Trimwright results, version 1" });

export type Results = Immutable<z.output<typeof resultsSchema>>;
export type LessonResult = Results["lessons"][number];
export type ParsedResults =
  | { readonly ok: true; readonly results: Results }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export function parseResults(text: string): ParsedResults {
  const read = readBounded(text, LONGEST_RESULTS, "This is no file of results; open another.");
  if (!read.ok) return read;
  const result = resultsSchema.safeParse(read.value);
  if (!result.success)
    return { ok: false, problems: problemsOf(resultsSchema, read.value, result.error.issues, read.place) };
  return { ok: true, results: result.data };
}

/** The text of the file. */
export const serializeResults = (results: Results): string => `${JSON.stringify(results, null, 2)}\n`;

export function resultsJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(resultsSchema, { io: "input" });
}
