import { describe, expect, it } from "vitest";
import { DEEPEST, LARGEST_TEXT, readJson } from "../../../src/document/json";

const value = (text: string) => {
  const read = readJson(text);
  if (!read.ok) throw new Error(read.problems[0]?.message);
  return read.value;
};
const refusal = (text: string) => {
  const read = readJson(text);
  if (read.ok) throw new Error(`read ${JSON.stringify(read.value)}`);
  const first = read.problems[0];
  if (first === undefined) throw new Error("refused without a problem");
  return first;
};

describe("the strict JSON reader", () => {
  it("reads what the built-in reader reads, to the same values", () => {
    for (const text of [
      '{"a": [1, -2.5e-3, 0, 1e2], "b": {"c": null, "d": true, "e": false}, "": "x\\n\\u00e9\\"\\\\"}',
      "  [ ]\r\n",
      "{}",
      "-0.0",
      '"\uD83D\uDE00"',
      "\uFEFF[1]",
    ]) {
      expect(value(text)).toEqual(JSON.parse(text.replace("\uFEFF", "")));
    }
  });

  // Each refused text with the words that must appear: place, what was found, and the remedy.
  it.each([
    ["", 1, 1, /empty file/],
    ["{", 1, 2, /end of the file.*ends too early/],
    ['{"a": 1,}', 1, 9, /comma before it/],
    ["[1 2]", 1, 4, /comma or "]"/],
    ['{\n  "a": 012\n}', 2, 8, /number such as 12\.5/],
    ['{\n  "a": 0,5\n}', 2, 10, /key in double quotes/],
    ["{'a': 1}", 1, 2, /Use double quotes/],
    ['{"a": NaN}', 1, 7, /finite number/],
    ['{"a": Infinity}', 1, 7, /finite number/],
    ['{"a": 1e999}', 1, 7, /finite number/],
    ['{"a": 1} x', 1, 10, /after the last closing bracket/],
    ['{"a": 1, "a": 2}', 1, 10, /same key twice/],
    ['{"a" 1}', 1, 6, /colon/],
    ['{"a": "b\nc"}', 1, 7, /on one line/],
    ['{ // remark\n "a": 1}', 1, 3, /without comments/],
    ['{"a": undefined}', 1, 7, /a value/],
    ['{"__proto__": {"polluted": true}}', 1, 2, /Remove this key/],
    ['{"a": 12mm}', 1, 7, /no unit/],
    ['{"a": "\\ud83d"}', 1, 7, /half of a character \(\\ud83d.*both of its halves/],
    ['{"a": "x\\ude00\\ud83d"}', 1, 7, /half of a character \(\\ude00/],
  ])("refuses %j with its place and a remedy", (text, line, column, words) => {
    const found = refusal(text);
    expect(found.message).toMatch(words);
    expect({ line: found.line, column: found.column }).toEqual({ line, column });
    expect(found.remedy).not.toBe("");
  });

  it("never touches a prototype", () => {
    const read = value('{"constructor": {"prototype": {"polluted": 1}}}');
    expect(Object.hasOwn(read as object, "constructor")).toBe(true);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  it("says how large and how deep a file may be", () => {
    expect(refusal(`"${"x".repeat(LARGEST_TEXT)}"`).message).toContain(LARGEST_TEXT.toLocaleString("en"));
    expect(refusal("[".repeat(DEEPEST + 1)).message).toContain(String(DEEPEST));
    expect(refusal("[".repeat(100_000)).message).toContain(String(DEEPEST));
  });

  it("knows where a value stands", () => {
    const read = readJson('{\n  "bait": { "top": [[0, 1],\n    [5, 2]] }\n}');
    expect(read.ok && read.place("bait.top[1][1]")).toEqual({ line: 3, column: 9 });
    expect(read.ok && read.place("bait.bottom")).toBeNull();
  });
});
