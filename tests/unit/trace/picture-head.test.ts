import { describe, expect, it } from "vitest";
import { TRACE } from "../../../src/ui/words/trace";
import jpeg from "jpeg-js";
import { pictureHead, pictureTrouble } from "../../../src/ui/views/draw/trace/picture-head";

const bytes = (...parts: readonly (string | readonly number[])[]): Uint8Array =>
  Uint8Array.from(
    parts.flatMap((part) =>
      typeof part === "string"
        ? Array.from({ length: part.length }, (_, i) => part.charCodeAt(i))
        : [...part],
    ),
  );

describe("the head of a picture file", () => {
  it("gives kind and size", () => {
    const image = { data: new Uint8Array(37 * 21 * 4), width: 37, height: 21 };
    expect(pictureHead(new Uint8Array(jpeg.encode(image, 50).data))).toEqual({
      kind: "JPEG",
      width: 37,
      height: 21,
    });
    // The smallest files of the other kinds, as far as their heads go.
    expect(pictureHead(bytes("\x89PNG\r\n\x1a\n", [0, 0, 0, 13], "IHDR", [0, 0, 1, 0, 0, 0, 0, 9]))).toEqual({
      kind: "PNG",
      width: 256,
      height: 9,
    });
    expect(pictureHead(bytes("GIF89a", [2, 1, 7, 0]))).toEqual({ kind: "GIF", width: 258, height: 7 });
    expect(
      pictureHead(bytes("RIFF", [0, 0, 0, 0], "WEBPVP8X", [10, 0, 0, 0, 0, 0, 0, 0, 99, 0, 0, 49, 0, 0])),
    ).toEqual({ kind: "WebP", width: 100, height: 50 });
    expect(
      pictureHead(bytes("RIFF", [0, 0, 0, 0], "WEBPVP8L", [0, 0, 0, 0, 0x2f, 0x63, 0x40, 0x0c, 0])),
    ).toEqual({ kind: "WebP", width: 100, height: 50 });
  });

  it("of anything else is none: text, a drawing with script, a file that breaks off, a size of nothing", () => {
    for (const one of [
      bytes(""),
      bytes("<svg xmlns='http://www.w3.org/2000/svg'><script/></svg>"),
      bytes("\x89PNG\r\n\x1a\n", [0, 0]),
      bytes([0xff, 0xd8, 0xff, 0xe0, 0x00]),
      bytes([0xff, 0xd8, 0x00, 0xe0, 0, 2, 0, 0, 0, 0]),
      bytes("GIF89a", [0, 0, 7, 0]),
      bytes("RIFF", [0, 0, 0, 0], "WEBPXXXX", [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]),
    ])
      expect(pictureHead(one)).toBeNull();
  });

  it("refuses in words a file or a picture that is too large", () => {
    const png = (width: number): Uint8Array =>
      bytes("\x89PNG\r\n\x1a\n", [0, 0, 0, 13], "IHDR", [0, 0, width >> 8, 0, 0, 0, 0x40, 0]);
    expect(pictureTrouble(png(0x1000), 1000)).toBeNull();
    expect(pictureTrouble(png(0x1000), 70e6)?.(TRACE.in("en"))).toMatch(/larger than 60 MB/);
    expect(pictureTrouble(png(0x4000), 1000)?.(TRACE.in("en"))).toMatch(/16384 × 16384 points/);
    expect(pictureTrouble(bytes("hello"), 5)?.(TRACE.in("en"))).toMatch(/no JPEG/);
  });

  it("never fails on 2000 spoiled heads", () => {
    const image = { data: new Uint8Array(16 * 16 * 4), width: 16, height: 16 };
    const good = new Uint8Array(jpeg.encode(image, 50).data);
    for (let i = 0; i < 2000; i++) {
      const spoiled = good.slice(0, 1 + (i % good.length));
      spoiled[(7 * i) % spoiled.length] = i % 256;
      expect(() => pictureHead(spoiled)).not.toThrow();
    }
  });
});
