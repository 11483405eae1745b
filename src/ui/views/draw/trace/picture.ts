import { aNumber, groupOf, listOf } from "../../../state";
import type { Told, TraceKey } from "../../../words/trace";
import { TRACE } from "../../../words/trace";
import { pictureTrouble } from "./picture-head";
import type { Px } from "./place";

/** A photo as this browser keeps it: a small copy, upright, without what the camera wrote into the file. */
export interface Photo {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly type: string;
  readonly width: number;
  readonly height: number;
}

/** The closed outlines of an SVG drawing, the largest first. */
export interface Drawing {
  readonly rings: readonly (readonly Px[])[];
  readonly width: number;
  readonly height: number;
}

/** What lies under the drawing. */
export type Picture = Photo | Drawing;
export const isDrawing = (picture: Picture): picture is Drawing => "rings" in picture;

/** Longest side of the copy, px: at 100 mm of bait, 20 px to the millimetre. */
const LONGEST = 2000;
const QUALITY = 0.9;
/** Bytes of a file that are read for its head: what a camera writes before the size may be long. */
const HEAD = 1 << 20;

/** Why a file was not taken, in words for a person. */
export class PictureError extends Error {
  constructor(readonly told: Told) {
    super(told(TRACE.in("en")));
  }
}
const because = (
  key: Extract<TraceKey, "picture.damaged" | "picture.surface" | "picture.small">,
): PictureError => new PictureError((words) => words.tell(key));

/** Reads a picture that somebody picked, dropped or pasted. Nothing of it runs, and nothing is sent anywhere. */
export async function readPicture(file: Blob): Promise<Photo> {
  const trouble = pictureTrouble(new Uint8Array(await file.slice(0, HEAD).arrayBuffer()), file.size);
  if (trouble !== null) throw new PictureError(trouble);
  let bitmap: ImageBitmap;
  try {
    bitmap = await createImageBitmap(file, { imageOrientation: "from-image" });
  } catch {
    throw because("picture.damaged");
  }
  try {
    const by = Math.min(1, LONGEST / Math.max(bitmap.width, bitmap.height));
    const canvas = document.createElement("canvas");
    canvas.width = Math.max(1, Math.round(bitmap.width * by));
    canvas.height = Math.max(1, Math.round(bitmap.height * by));
    const pen = canvas.getContext("2d");
    if (pen === null) throw because("picture.surface");
    pen.fillStyle = "#fff";
    pen.fillRect(0, 0, canvas.width, canvas.height);
    pen.imageSmoothingQuality = "high";
    pen.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
    const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/jpeg", QUALITY));
    if (blob === null) throw because("picture.small");
    return {
      bytes: new Uint8Array(await blob.arrayBuffer()),
      type: blob.type,
      width: canvas.width,
      height: canvas.height,
    };
  } finally {
    bitmap.close();
  }
}

const aRing = (value: unknown): readonly Px[] | undefined =>
  Array.isArray(value) && value.every((one: unknown) => aPx(one) !== undefined) ? (value as Px[]) : undefined;
export const aPx = groupOf<Px>({ u: aNumber, v: aNumber });
const aDrawing = groupOf<Drawing>({ rings: listOf(aRing), width: aNumber, height: aNumber });

/** A picture out of what the browser has kept; null where it is none. */
export function keptPicture(value: unknown): Picture | null {
  if (typeof value !== "object" || value === null) return null;
  const drawing = aDrawing(value);
  if (drawing !== undefined) return drawing;
  const { bytes, type, width, height } = value as Readonly<Record<keyof Photo, unknown>>;
  const size = (side: unknown): side is number => Number.isInteger(side) && (side as number) > 0;
  return bytes instanceof Uint8Array && type === "image/jpeg" && size(width) && size(height)
    ? { bytes: new Uint8Array(bytes), type, width, height }
    : null;
}

/** The colours of a kept photo, 4 bytes a pixel. */
export async function pixelsOf({ bytes, type, width, height }: Photo): Promise<ImageData> {
  const bitmap = await createImageBitmap(new Blob([bytes], { type }));
  try {
    const canvas = document.createElement("canvas");
    canvas.width = width;
    canvas.height = height;
    const pen = canvas.getContext("2d", { willReadFrequently: true });
    if (pen === null) throw because("picture.surface");
    pen.drawImage(bitmap, 0, 0);
    return pen.getImageData(0, 0, width, height);
  } finally {
    bitmap.close();
  }
}
