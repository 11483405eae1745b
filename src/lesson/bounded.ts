import { problem, readJson } from "../document";

/** Reads JSON of a bounded length: a file that is longer is none of ours, and the remedy says so. */
export const readBounded = (text: string, longest: number, remedy: string): ReturnType<typeof readJson> =>
  text.length > longest
    ? {
        ok: false,
        problems: [problem("", `${text.length} characters`, `up to ${longest} characters`, remedy)],
      }
    : readJson(text);
