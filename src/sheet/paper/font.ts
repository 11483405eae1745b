import type { Weight } from "./page";

/** What the sheets need of a font: how wide its signs are, and the file to be put into a PDF. */
export interface Font {
  readonly bytes: Uint8Array;
  has(code: number): boolean;
  /** Width of a sign as a share of the type's size. */
  advance(code: number): number;
}

/** The sheets' fonts. */
export type Fonts = Readonly<Record<Weight, Font>>;

/** Stands for a sign that the font does not have. */
const MISSING = "\u25a1";

/**
 * Reads widths and signs out of a TrueType file: its tables head, hhea, hmtx and cmap (format 4), as the OpenType
 * specification (ISO/IEC 14496-22) describes them.
 * @throws Error where the file is no such font
 */
export function readFont(bytes: Uint8Array): Font {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const tables = new Map<string, number>();
  const count = view.getUint16(4);
  for (let i = 0; i < count; i++) {
    const at = 12 + 16 * i;
    tables.set(String.fromCharCode(...bytes.subarray(at, at + 4)), view.getUint32(at + 8));
  }
  const table = (name: string): number => {
    const at = tables.get(name);
    if (at === undefined) throw new Error(`The font has no table ${name}: use a TrueType file`);
    return at;
  };
  const perEm = view.getUint16(table("head") + 18);
  const metrics = view.getUint16(table("hhea") + 34);
  const hmtx = table("hmtx");
  const glyphs = glyphsOf(view, table("cmap"));
  const known = new Map<number, number>();
  return {
    bytes,
    has: (code) => glyphs(code) !== 0,
    advance: (code) => {
      let width = known.get(code);
      if (width === undefined) {
        width = view.getUint16(hmtx + 4 * Math.min(glyphs(code), metrics - 1)) / perEm;
        known.set(code, width);
      }
      return width;
    },
  };
}

/** The glyph of each sign; 0: the font has none. */
function glyphsOf(view: DataView, cmap: number): (code: number) => number {
  const subtables = Array.from({ length: view.getUint16(cmap + 2) }, (_, i) => {
    const at = cmap + 4 + 8 * i;
    return {
      platform: view.getUint16(at),
      encoding: view.getUint16(at + 2),
      at: cmap + view.getUint32(at + 4),
    };
  });
  const found = subtables.find(
    ({ platform, encoding, at }) => platform === 3 && encoding === 1 && view.getUint16(at) === 4,
  );
  if (!found) throw new Error("The font does not say which signs it has: use a Unicode TrueType file");
  const { at } = found;
  const segments = view.getUint16(at + 6) / 2;
  const [ends, starts] = [at + 14, at + 16 + 2 * segments];
  const [deltas, offsets] = [starts + 2 * segments, starts + 4 * segments];
  return (code) => {
    if (code > 0xffff) return 0;
    for (let i = 0; i < segments; i++) {
      if (code > view.getUint16(ends + 2 * i)) continue;
      const start = view.getUint16(starts + 2 * i);
      if (code < start) return 0;
      const delta = view.getUint16(deltas + 2 * i);
      const offset = view.getUint16(offsets + 2 * i);
      if (offset === 0) return (code + delta) & 0xffff;
      const glyph = view.getUint16(offsets + 2 * i + offset + 2 * (code - start));
      return glyph === 0 ? 0 : (glyph + delta) & 0xffff;
    }
    return 0;
  };
}

/** The words with only such signs as the font has; what it lacks stands as an empty square. */
export function spelled(words: string, font: Font): string {
  return Array.from(words.normalize("NFC"), (sign) => {
    const code = sign.codePointAt(0) ?? 0;
    if (font.has(code)) return sign;
    if (/\s/u.test(sign)) return " ";
    // Marks that only join other signs are left out.
    return /\p{M}|\p{C}/u.test(sign) ? "" : MISSING;
  }).join("");
}

/** Width of words, mm; no pair of signs is moved together. */
export function widthOf(words: string, size: number, font: Font): number {
  let width = 0;
  for (const sign of words) width += font.advance(sign.codePointAt(0) ?? 0);
  return width * size;
}
