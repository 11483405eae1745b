import { pathSteps, pathText } from "./fields";
import { visible } from "./visible";

/** One thing wrong with a file, told so that its writer can mend it. */
export interface Problem {
  /** Where in the document: "bait.ballast[0].mass_g"; "" for the file as a whole. */
  readonly path: string;
  /** What stands there. */
  readonly found: string;
  /** What may stand there; where the model refuses a bait, why this cannot. */
  readonly allowed: string;
  /** What to do about it. */
  readonly remedy: string;
  /** All of it in one sentence or two. */
  readonly message: string;
  /** Place in the text, from 1, where it is known. */
  readonly line?: number;
  readonly column?: number;
}

/** The place of a value in the text of a file, from 1. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

/** Longest path and longest finding in a message, in characters: a key of a spoilt file may be as long as the file. */
const LONGEST_PATH = 120;
const LONGEST_FINDING = 400;

/** A text from a file for people: safe to print, and no longer than `most`. */
const told = (text: string, most: number): string =>
  visible(text.length > most ? `${text.slice(0, most)}…` : text);

/** Makes a problem with its message. What comes from the file is made safe to print. */
export function problem(
  path: string,
  found: string,
  allowed: string,
  remedy: string,
  place?: Place | null,
): Problem {
  const where = path === "" ? "The file" : told(path, LONGEST_PATH);
  const at = place ? ` (line ${place.line}, column ${place.column})` : "";
  const safe = {
    found: told(found, LONGEST_FINDING),
    allowed: visible(allowed),
    remedy: visible(remedy),
  };
  return {
    path,
    ...safe,
    message: `${where}${at}: found ${safe.found}; allowed: ${safe.allowed}. ${safe.remedy}`,
    ...(place ? { line: place.line, column: place.column } : {}),
  };
}

/** Where a path stands in the text, or the nearest group around it that has a place. */
export function nearestPlace(path: string, place: (path: string) => Place | null): Place | null {
  const steps = [...pathSteps(path)];
  for (;;) {
    const found = place(pathText(steps));
    if (found !== null || steps.length === 0) return found;
    steps.pop();
  }
}

/** A value in words, short enough for a message. */
export function describe(value: unknown): string {
  if (value === undefined) return "nothing";
  if (value === null) return "null";
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === "number" || typeof value === "boolean") return String(value);
  if (typeof value === "string") {
    const short = value.length > 40 ? `${value.slice(0, 40)}…` : value;
    return `the text ${JSON.stringify(short)}`;
  }
  return "a group of keys";
}

/** Optimal string alignment distance: insertions, deletions, changes, and swaps of neighbours. */
function distance(a: string, b: string): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const cost = a[i - 1] === b[j - 1] ? 0 : 1;
      let best = Math.min((row[j - 1] ?? 0) + 1, (last[j] ?? 0) + 1, (last[j - 1] ?? 0) + cost);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        best = Math.min(best, (before[j - 2] ?? 0) + 1);
      }
      row.push(best);
    }
    before = last;
    last = row;
  }
  return last[b.length] ?? 0;
}

/** The known words nearest to `word`, best first; only those near enough to be a slip in typing. */
export function nearest(word: string, known: readonly string[], most = 3): string[] {
  const plain = (text: string) =>
    text
      .slice(0, 80)
      .toLowerCase()
      .replaceAll(/[_\s-]/g, "");
  const wanted = plain(word);
  return known
    .map((one) => {
      const other = plain(one);
      const within =
        wanted.length >= 3 && other.length >= 3 && (other.startsWith(wanted) || wanted.startsWith(other));
      return { one, d: within ? Math.min(1, distance(wanted, other)) : distance(wanted, other) };
    })
    .filter(({ one, d }) => d <= Math.max(1, Math.floor(Math.max(one.length, wanted.length) / 3)))
    .sort((a, b) => a.d - b.d)
    .slice(0, most)
    .map(({ one }) => one);
}
