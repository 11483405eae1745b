import { describe, expect, it } from "vitest";
import { decodeText, parseScenario, visible, visibleIn, visibleJson } from "../../../src/document";
import { LARGEST_TEXT } from "../../../src/document/json";

const bytes = (...all: (string | number[])[]): Uint8Array =>
  Buffer.concat(all.map((one) => (typeof one === "string" ? Buffer.from(one) : Buffer.from(one))));
const text = (from: Uint8Array): string => {
  const decoded = decodeText(from);
  if (!decoded.ok) throw new Error(decoded.problems[0]?.message);
  return decoded.text;
};
const refusal = (from: Uint8Array) => {
  const decoded = decodeText(from);
  if (decoded.ok) throw new Error(`read as ${JSON.stringify(decoded.text)}`);
  expect(decoded.problems).toHaveLength(1);
  const [only] = decoded.problems;
  return only!;
};

describe("the bytes of a file", () => {
  it("are read as UTF-8, every character of it", () => {
    // The first and last of each length, and one replacement character that is meant.
    const all = "\u0001\u007f\u0080\u07ff\u0800\ud7ff\ue000\ufffd\uffff\u{10000}\u{10ffff} äöü 鱒 🎣";
    expect(text(bytes(all))).toBe(all);
  });

  it("may begin with one byte order mark, and with no second", () => {
    const mark = [0xef, 0xbb, 0xbf];
    const message = (from: Uint8Array) => {
      const read = parseScenario(text(from));
      return read.ok ? "" : read.problems[0]!.message;
    };
    expect(message(bytes(mark, "{}"))).toBe(message(bytes("{}")));
    expect(message(bytes(mark, mark, "{}"))).toMatch(/line 1, column 1\).*"\\ufeff"/);
  });

  it.each([
    [[0xff, 0xfe, 0x7b, 0], "UTF-16"],
    [[0xfe, 0xff, 0, 0x7b], "UTF-16"],
    [[0x7b, 0, 0x7d, 0], "UTF-16"],
    [[0, 0x7b, 0, 0x7d], "UTF-16"],
    [[0xff, 0xfe, 0, 0, 0x7b, 0, 0, 0], "UTF-32"],
    [[0, 0, 0xfe, 0xff, 0, 0, 0, 0x7b], "UTF-32"],
    [[0x7b, 0, 0, 0, 0x7d, 0, 0, 0], "UTF-32"],
    [[0, 0, 0, 0x7b, 0, 0, 0, 0x7d], "UTF-32"],
  ])("%j is refused as %s with the remedy", (all, encoding) => {
    const { message } = refusal(bytes(all));
    expect(message).toBe(
      `The file: found text in ${encoding}; allowed: text in UTF-8. ` +
        "Open it in a text editor, save it as UTF-8, and open it again.",
    );
  });

  // RFC 3629, section 4: what is no character, and Unicode 16, table 3-7.
  it.each([
    [[0x80]],
    [[0xc0, 0xaf]],
    [[0xc1, 0x81]],
    [[0xc3, 0x28]],
    [[0xe0, 0x9f, 0xbf]],
    [[0xe2, 0x28, 0xa1]],
    [[0xe2, 0x82, 0x28]],
    [[0xed, 0xa0, 0x80]],
    [[0xed, 0xbf, 0xbf]],
    [[0xf0, 0x8f, 0xbf, 0xbf]],
    [[0xf0, 0x9f, 0x98, 0x22]],
    [[0xf4, 0x90, 0x80, 0x80]],
    [[0xf8, 0x88, 0x80, 0x80, 0x80]],
    [[0xff]],
    [[0xe2, 0x82]],
  ])("%j is refused where it stands, in the middle and at the end", (odd) => {
    // Characters of two and four bytes before it: a column counts as JavaScript does, where the fish hook is two.
    for (const rest of ['"}', ""]) {
      const found = refusal(bytes('{\n  "ä🎣": "', odd, rest));
      expect({ line: found.line, column: found.column }).toEqual({ line: 2, column: 11 });
      expect(found.found).toContain(`the byte ${odd[0]!.toString(16).toUpperCase()}`);
      expect(found.remedy).toMatch(/save it as UTF-8/);
    }
  });

  it("are not read at all where they are far too many", () => {
    expect(refusal(new Uint8Array(3 * LARGEST_TEXT + 1)).message).toContain("6,000,001 bytes");
  });
});

describe("texts from a file, shown", () => {
  it("write out what would be obeyed, and leave every script alone", () => {
    expect(visible("\u001b[31m\u0000\r\n\t\u0085\u202e\u2066\u200f\ufeff\u2028\ud800")).toBe(
      "\\u001b[31m\\u0000\\u000d\\u000a\\u0009\\u0085\\u202e\\u2066\\u200f\\ufeff\\u2028\\ud800",
    );
    const harmless = "Ä ö ß 鱒 العربية עברית می‌شود 👩‍👧 🎣 ½ − “quoted”";
    expect(visible(harmless)).toBe(harmless);
  });

  it("keep numbers and shape in plain data, and the value in JSON", () => {
    const data = { a: ["\u0007", 1, null, true], "b\u202e": { c: "\u009b" } };
    expect(visibleIn(data)).toEqual({ a: ["\\u0007", 1, null, true], "b\u202e": { c: "\\u009b" } });
    for (const hidden of ["\u0007", "\u009b", "\u202e"]) expect(visibleJson(data)).not.toContain(hidden);
    expect(JSON.parse(visibleJson(data))).toEqual(data);
  });
});
