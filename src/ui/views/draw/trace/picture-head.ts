import type { Told } from "../../../words/trace";

/** What the first bytes of a picture file say: its kind and its size, before anything is decoded. */
export interface PictureHead {
  readonly kind: "JPEG" | "PNG" | "WebP" | "GIF";
  /** As stored; a photo may be turned by its orientation afterwards. */
  readonly width: number;
  readonly height: number;
}

const MILLION = 1e6;
/** Greatest file, bytes: no camera's picture is larger. */
const LARGEST = 60 * MILLION;
/** Greatest number of pixels that is decoded: one takes 4 bytes of memory. */
const MOST_PIXELS = 120 * MILLION;

/** Why a picture is not decoded, in words; null where it may be. `start`: the file's first bytes, `size`: all that it has. */
export function pictureTrouble(start: Uint8Array, size: number): Told | null {
  if (size > LARGEST) return (words) => words.tell("picture.large", { most: LARGEST / MILLION });
  const head = pictureHead(start);
  if (head === null) return (words) => words.tell("picture.kind");
  const { width, height } = head;
  return width * height > MOST_PIXELS
    ? (words) => words.tell("picture.points", { width, height, most: MOST_PIXELS / MILLION })
    : null;
}

/**
 * Reads the head of a picture; null where the bytes are none of the four kinds that every browser reads, or break off.
 * Sources: ISO/IEC 10918-1 (JPEG, B.2.2), ISO/IEC 15948 (PNG, 11.2.2), RFC 9649 (WebP, 2.7), GIF89a specification (18).
 */
export function pictureHead(bytes: Uint8Array): PictureHead | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const letters = (at: number, count: number): string =>
    String.fromCharCode(...bytes.subarray(at, at + count));
  const sized = (kind: PictureHead["kind"], width: number, height: number): PictureHead | null =>
    width > 0 && height > 0 ? { kind, width, height } : null;
  try {
    if (letters(0, 8) === "\x89PNG\r\n\x1a\n") return sized("PNG", view.getUint32(16), view.getUint32(20));
    if (letters(0, 4) === "GIF8") return sized("GIF", view.getUint16(6, true), view.getUint16(8, true));
    if (letters(0, 4) === "RIFF" && letters(8, 4) === "WEBP") {
      const three = (at: number): number => view.getUint16(at, true) + 65_536 * view.getUint8(at + 2);
      const form = letters(12, 4);
      if (form === "VP8X") return sized("WebP", 1 + three(24), 1 + three(27));
      if (form === "VP8L") {
        const bits = view.getUint32(21, true);
        return sized("WebP", 1 + (bits & 0x3fff), 1 + ((bits >>> 14) & 0x3fff));
      }
      if (form === "VP8 ")
        return sized("WebP", view.getUint16(26, true) & 0x3fff, view.getUint16(28, true) & 0x3fff);
      return null;
    }
    if (view.getUint16(0) === 0xffd8) return jpegHead(view, sized);
  } catch (fault) {
    // The bytes end before the head does.
    if (!(fault instanceof RangeError)) throw fault;
  }
  return null;
}

function jpegHead(
  view: DataView,
  sized: (kind: "JPEG", width: number, height: number) => PictureHead | null,
): PictureHead | null {
  for (let at = 2; ;) {
    if (view.getUint8(at) !== 0xff) return null;
    const marker = view.getUint8(at + 1);
    // Fill bytes, and markers that stand alone.
    if (marker === 0xff) at += 1;
    else if (marker === 0x01 || (marker >= 0xd0 && marker <= 0xd8)) at += 2;
    else if (marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker))
      return sized("JPEG", view.getUint16(at + 7), view.getUint16(at + 5));
    else if (marker === 0xda || marker === 0xd9) return null;
    else at += 2 + view.getUint16(at + 2);
  }
}
