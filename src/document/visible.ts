/**
 * Characters that a terminal or a browser obeys instead of showing: controls (C0, C1, DEL, line separators), marks that
 * turn the direction of writing (Unicode UAX 9), a byte order mark, and halves of characters. In a name from a file they
 * could hide or reorder what a message says.
 */
const OBEYED = /[\p{Cc}\p{Cs}\u061C\u200E\u200F\u2028-\u202E\u2066-\u2069\uFEFF]/gu;

const escaped = (text: string): string =>
  Array.from(
    { length: text.length },
    (_, i) => `\\u${text.charCodeAt(i).toString(16).padStart(4, "0")}`,
  ).join("");

/** A text from a file as one line that is safe to print: what would be obeyed stands there as \u001b, \u202e and so on. */
export const visible = (text: string): string => text.replace(OBEYED, escaped);

/** JSON text with the same characters written as JSON's own escapes: it reads back as the same value. */
export const visibleJson = (value: unknown): string => visible(JSON.stringify(value));

/** Plain data with every text in it made visible. */
export function visibleIn<T>(value: T): T;
export function visibleIn(value: unknown): unknown {
  if (typeof value === "string") return visible(value);
  if (Array.isArray(value)) return value.map((one: unknown) => visibleIn(one));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, visibleIn(one)]));
}
