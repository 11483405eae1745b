import { LARGEST_TEXT } from "./json";
import { problem } from "./problem";
import type { Problem } from "./problem";

export type Decoded =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Largest file read, in bytes: UTF-8 needs at most three for what JavaScript counts as one character. */
export const LARGEST_FILE = 3 * LARGEST_TEXT;

const REMEDY = "Open it in a text editor, save it as UTF-8, and open it again.";

/**
 * The bytes of a file as text. The page and the headless command both read files by this function. A file is UTF-8
 * (RFC 3629), with or without a byte order mark; anything else is refused: read as if it were UTF-8, its names would
 * change without a word.
 *
 * @param largest most bytes that are read
 */
export function decodeText(bytes: Uint8Array, largest = LARGEST_FILE): Decoded {
  const refuse = (found: string, remedy = REMEDY, place?: { line: number; column: number }): Decoded => ({
    ok: false,
    problems: [problem("", found, "text in UTF-8", remedy, place)],
  });
  if (bytes.length > largest)
    return {
      ok: false,
      problems: [
        problem(
          "",
          `${bytes.length.toLocaleString("en")} bytes`,
          `up to ${LARGEST_TEXT.toLocaleString("en")} characters`,
          "This is no scenario file; open another.",
        ),
      ],
    };
  const other = otherEncoding(bytes);
  if (other !== null) return refuse(`text in ${other}`);
  try {
    // The mark is left to the reader of JSON, which takes one and no second.
    return { ok: true, text: new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes) };
  } catch {
    const at = firstFault(bytes);
    const before = new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes.subarray(0, at)).split("\n");
    const byte = (bytes[at] ?? 0).toString(16).toUpperCase().padStart(2, "0");
    return refuse(`the byte ${byte}, which begins no character of UTF-8 here`, REMEDY, {
      line: before.length,
      column: (before.at(-1) ?? "").length + 1,
    });
  }
}

/** Byte order marks of the other Unicode encodings, the longer ones first; without a mark, every second byte of JSON is 0. */
function otherEncoding(bytes: Uint8Array): string | null {
  const starts = (...wanted: number[]) => wanted.every((byte, i) => bytes[i] === byte);
  if (starts(0xff, 0xfe, 0, 0) || starts(0, 0, 0xfe, 0xff) || starts(0, 0, 0)) return "UTF-32";
  if (bytes.length >= 4 && bytes[1] === 0 && bytes[2] === 0 && bytes[3] === 0) return "UTF-32";
  if (starts(0xff, 0xfe) || starts(0xfe, 0xff)) return "UTF-16";
  if (bytes.length >= 2 && (bytes[0] === 0) !== (bytes[1] === 0)) return "UTF-16";
  return null;
}

/** Where the first byte sequence begins that is not a character of UTF-8 (RFC 3629, section 4). */
function firstFault(bytes: Uint8Array): number {
  const tail = (i: number, low = 0x80, high = 0xbf): boolean => {
    const byte = bytes[i];
    return byte !== undefined && byte >= low && byte <= high;
  };
  for (let i = 0; i < bytes.length;) {
    const first = bytes[i] ?? 0;
    let length = 0;
    if (first < 0x80) length = 1;
    else if (first >= 0xc2 && first <= 0xdf && tail(i + 1)) length = 2;
    else if (first >= 0xe0 && first <= 0xef) {
      // No longer form than needed (E0), and no half of a character (ED).
      if (tail(i + 1, first === 0xe0 ? 0xa0 : 0x80, first === 0xed ? 0x9f : 0xbf) && tail(i + 2)) length = 3;
    } else if (first >= 0xf0 && first <= 0xf4) {
      // No longer form than needed (F0), and nothing beyond Unicode's end (F4).
      const second = tail(i + 1, first === 0xf0 ? 0x90 : 0x80, first === 0xf4 ? 0x8f : 0xbf);
      if (second && tail(i + 2) && tail(i + 3)) length = 4;
    }
    if (length === 0) return i;
    i += length;
  }
  return bytes.length;
}
