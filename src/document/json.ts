import { pathText } from "./fields";
import { problem } from "./problem";
import type { Place, Problem } from "./problem";

/**
 * A strict reader of JSON (RFC 8259). The built-in one keeps the last of two equal keys, turns 1e999 into Infinity, limits
 * neither depth nor size, and reports positions differently in each engine. A file that a maker trusts must not be read
 * that way.
 */

/** Largest text read, in characters: hundreds of times a large scenario. */
export const LARGEST_TEXT = 2_000_000;
/** Deepest nesting read; a scenario needs 8. */
export const DEEPEST = 24;

export type Reading =
  | {
      readonly ok: true;
      readonly value: unknown;
      /** Where the value at a path ("bait.length_mm") stands, or null. */
      readonly place: (path: string) => Place | null;
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

class Refusal extends Error {
  constructor(readonly problem: Problem) {
    super(problem.message);
  }
}

const FORBIDDEN_KEY = "__proto__";

/**
 * @param largest longest text that is read, in characters
 * @param placed remember where each value stands; a file of many baits names its places in another way, and is long
 */
export function readJson(text: string, largest = LARGEST_TEXT, placed = true): Reading {
  if (text.length > largest) {
    const found = `${text.length.toLocaleString("en")} characters`;
    const allowed = `up to ${largest.toLocaleString("en")} characters`;
    return { ok: false, problems: [problem("", found, allowed, "This is no scenario file; open another.")] };
  }
  const reader = new Reader(text, placed);
  try {
    const value = reader.document();
    return { ok: true, value, place: (path) => reader.placeOf(path) };
  } catch (fault) {
    if (fault instanceof Refusal) return { ok: false, problems: [fault.problem] };
    throw fault;
  }
}

class Reader {
  private at = 0;
  private readonly path: (string | number)[] = [];
  private readonly starts = new Map<string, number>();
  /** Where each line of the text begins, found when a place is first asked for. A byte order mark stands in no line. */
  private lines: readonly number[] | null = null;

  constructor(
    private readonly text: string,
    private readonly placed: boolean,
  ) {
    if (text.startsWith("\uFEFF")) this.at = 1;
  }

  document(): unknown {
    this.space();
    if (this.at >= this.text.length) {
      this.refuse("an empty file", "a JSON object", "Open a scenario file, or save one first.");
    }
    const value = this.value();
    this.space();
    if (this.at < this.text.length) {
      this.refuse(this.here(), "the end of the file", "Remove what stands after the last closing bracket.");
    }
    return value;
  }

  placeOf(path: string): Place | null {
    const start = this.starts.get(path);
    return start === undefined ? null : this.place(start);
  }

  private place(offset: number): Place {
    this.lines ??= [
      this.text.startsWith("\uFEFF") ? 1 : 0,
      ...Array.from(this.text.matchAll(/\n/g), ({ index }) => index + 1),
    ];
    // The last line that begins at or before the offset, by halving.
    let low = 0;
    let high = this.lines.length;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if ((this.lines[middle] ?? Infinity) <= offset) low = middle;
      else high = middle;
    }
    return { line: low + 1, column: offset - (this.lines[low] ?? 0) + 1 };
  }

  private refuse(found: string, allowed: string, remedy: string, offset = this.at): never {
    throw new Refusal(problem(pathText(this.path), found, allowed, remedy, this.place(offset)));
  }

  /** What stands here, in words. */
  private here(): string {
    const rest = this.text.slice(this.at, this.at + 24);
    if (rest === "") return "the end of the file";
    const word = /^[A-Za-z0-9_.+-]+/.exec(rest)?.[0];
    return JSON.stringify(word ?? String.fromCodePoint(rest.codePointAt(0) ?? 0));
  }

  private space(): void {
    for (;;) {
      const code = this.text.charCodeAt(this.at);
      if (code === 0x20 || code === 0x0a || code === 0x0d || code === 0x09) this.at++;
      else break;
    }
    if (this.text.startsWith("//", this.at) || this.text.startsWith("/*", this.at)) {
      this.refuse("a comment", "JSON without comments", 'Put remarks under "notes".');
    }
  }

  private value(): unknown {
    if (this.placed) this.starts.set(pathText(this.path), this.at);
    const code = this.text[this.at];
    if (code === "{") return this.object();
    if (code === "[") return this.array();
    if (code === '"') return this.string();
    if (code === "-" || (code !== undefined && code >= "0" && code <= "9")) return this.number();
    for (const [word, value] of [
      ["true", true],
      ["false", false],
      ["null", null],
    ] as const) {
      if (this.text.startsWith(word, this.at) && !/[\w$]/.test(this.text[this.at + word.length] ?? "")) {
        this.at += word.length;
        return value;
      }
    }
    if (/^(NaN|[+-]?Infinity)/.test(this.text.slice(this.at, this.at + 9))) {
      this.refuse(this.here(), "a finite number", "Give the number itself, or leave an optional key out.");
    }
    this.refuse(this.here(), "a value (text in double quotes, number, list or group)", this.remedyHere());
  }

  private remedyHere(): string {
    const code = this.text[this.at];
    if (code === undefined) return "The file ends too early: was it cut off while saving?";
    if (code === "'") return "Use double quotes.";
    if (code === "," || code === "}" || code === "]")
      return "Remove the comma before it, or add the missing value.";
    if (code === "." || code === "+") return "Begin a number with a digit or a minus sign.";
    return "Check quotes, commas and brackets just before this place.";
  }

  private deeper(): void {
    if (this.path.length >= DEEPEST) {
      const path = pathText(this.path.slice(0, 4));
      const allowed = `at most ${DEEPEST} levels`;
      throw new Refusal(
        problem(path, "brackets nested too deep", allowed, "This is no scenario file.", this.place(this.at)),
      );
    }
  }

  private object(): Record<string, unknown> {
    this.deeper();
    const out: Record<string, unknown> = {};
    this.at++;
    this.space();
    if (this.text[this.at] === "}") {
      this.at++;
      return out;
    }
    for (;;) {
      this.space();
      if (this.text[this.at] !== '"') {
        this.refuse(this.here(), "a key in double quotes", this.remedyHere());
      }
      const keyStart = this.at;
      const key = this.string();
      this.path.push(key);
      if (key === FORBIDDEN_KEY) {
        this.refuse(`the key "${key}"`, "keys of the scenario format", "Remove this key.", keyStart);
      }
      if (Object.hasOwn(out, key)) {
        this.refuse("the same key twice", "each key once", "Remove one of the two.", keyStart);
      }
      this.space();
      if (this.text[this.at] !== ":") {
        this.refuse(this.here(), "a colon after the key", "Add the colon and the value.");
      }
      this.at++;
      this.space();
      out[key] = this.value();
      this.path.pop();
      if (this.more("}")) return out;
    }
  }

  private array(): unknown[] {
    this.deeper();
    const out: unknown[] = [];
    this.at++;
    this.space();
    if (this.text[this.at] === "]") {
      this.at++;
      return out;
    }
    for (;;) {
      this.space();
      this.path.push(out.length);
      out.push(this.value());
      this.path.pop();
      if (this.more("]")) return out;
    }
  }

  /** After one entry: true at the closing bracket, false after a comma. */
  private more(closing: "}" | "]"): boolean {
    this.space();
    const code = this.text[this.at];
    if (code === closing) {
      this.at++;
      return true;
    }
    if (code !== ",") {
      this.refuse(
        this.here(),
        `a comma or "${closing}"`,
        code === undefined
          ? this.remedyHere()
          : "Add the missing comma or closing bracket just before this place.",
      );
    }
    this.at++;
    this.space();
    if (this.text[this.at] === closing) {
      this.refuse(`"${closing}" after a comma`, "another entry", "Remove the comma before it.");
    }
    return false;
  }

  private string(): string {
    const start = this.at;
    const pattern = /"(?:[^"\\]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y;
    pattern.lastIndex = start;
    let found = pattern.exec(this.text)?.[0];
    // Control characters, line breaks among them, must be escaped.
    for (let i = 0; found !== undefined && i < found.length; i++)
      if (found.charCodeAt(i) < 0x20) found = undefined;
    if (found === undefined) {
      this.refuse(
        "text that does not end well",
        "text in double quotes on one line",
        "Close the quotes; write a line break as \\n and a backslash as \\\\.",
      );
    }
    const text = JSON.parse(found) as string;
    // Half of a character has no form in UTF-8: saved again, the text would be different.
    const half = /\p{Cs}/u.exec(text);
    if (half !== null) {
      const code = half[0].charCodeAt(0).toString(16);
      this.refuse(
        `half of a character (\\u${code} without its other half)`,
        "whole characters",
        "Write the character itself, or both of its halves.",
      );
    }
    this.at += found.length;
    return text;
  }

  private number(): number {
    const pattern = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
    pattern.lastIndex = this.at;
    const found = pattern.exec(this.text)?.[0];
    const next = found === undefined ? "" : (this.text[this.at + found.length] ?? "");
    if (found === undefined || /[\w.$+-]/.test(next)) {
      this.refuse(
        this.here(),
        "a number such as 12.5",
        "Write digits with a point for the decimals, and no unit.",
      );
    }
    const value = Number(found);
    if (!Number.isFinite(value)) {
      this.refuse(found.slice(0, 40), "a finite number", "Give a number of a sensible size.");
    }
    this.at += found.length;
    return value;
  }
}
