import {
  BufferTarget,
  CanvasSource,
  getFirstEncodableVideoCodec,
  Mp4OutputFormat,
  Output,
  Quality,
  WebMOutputFormat,
} from "mediabunny";

/** The stretch of a run that is filmed: s of the run, and how many of them pass in a second of the film. */
export interface Cut {
  readonly from: number;
  readonly to: number;
  readonly rate: number;
}

/** Pictures in a second of film. */
export const PICTURES = 30;

/** How long the film is, s. */
export const lengthOf = ({ from, to, rate }: Cut): number => (to - from) / rate;

/** The moments of the run that its pictures show, s: a picture at the beginning of each thirtieth of a second. */
export function momentsIn(cut: Cut): readonly number[] {
  const { from, to, rate } = cut;
  if (!(rate > 0) || !(to > from)) throw new RangeError(`a film from ${from} to ${to} s at ${rate} times`);
  // No tail of binary digits makes another picture.
  const count = Math.max(1, Math.ceil(lengthOf(cut) * PICTURES - 1e-9));
  return Array.from({ length: count }, (_, i) => from + (i * rate) / PICTURES);
}

/** H.264 wants even numbers of pixels: at most one row and one column of a picture are left off. */
export const filmSize = ({ width, height }: { readonly width: number; readonly height: number }) => ({
  width: width - (width % 2),
  height: height - (height % 2),
});

export interface Film {
  readonly data: ArrayBuffer;
  /** Media type of the data, and the file's ending. */
  readonly type: string;
  readonly ending: string;
}

interface Making {
  /** Gives the picture of a moment of the run, s; all have the size of the first. */
  readonly paint: (time: number) => Promise<HTMLCanvasElement>;
  /** Share that is done. */
  readonly onprogress: (share: number) => void;
  readonly signal: AbortSignal;
  /** What went wrong, in words. */
  readonly tell: (key: "cannot" | "noCanvas" | "empty") => string;
}

/**
 * Makes a film picture by picture, as fast as the machine can, with its length written in the file. H.264 in MP4 where the
 * browser can write it, for that plays everywhere; else VP9 or VP8 in WebM.
 *
 * @throws Error where the browser writes none of these, or where painting or writing fails
 * @returns null where it was stopped
 */
export async function makeFilm(cut: Cut, { paint, onprogress, signal, tell }: Making): Promise<Film | null> {
  const moments = momentsIn(cut);
  const first = await paint(cut.from);
  const { width, height } = filmSize(first);
  const codec = await getFirstEncodableVideoCodec(["avc", "vp9", "vp8"], { width, height });
  if (codec === null) throw new Error(tell("cannot"));
  const canvas = document.createElement("canvas");
  canvas.width = width;
  canvas.height = height;
  const context = canvas.getContext("2d");
  if (context === null) throw new Error(tell("noCanvas"));
  const mp4 = codec === "avc";
  const target = new BufferTarget();
  const format = mp4 ? new Mp4OutputFormat({ fastStart: "in-memory" }) : new WebMOutputFormat();
  const output = new Output({ format, target });
  const source = new CanvasSource(canvas, { codec, quality: new Quality("high") });
  output.addVideoTrack(source, { frameRate: PICTURES });
  await output.start();
  try {
    for (const [i, moment] of moments.entries()) {
      if (signal.aborted) break;
      context.drawImage(await paint(moment), 0, 0);
      await source.add(i / PICTURES, 1 / PICTURES);
      onprogress((i + 1) / moments.length);
    }
    if (signal.aborted) {
      await output.cancel();
      return null;
    }
    await output.finalize();
  } catch (fault) {
    if (output.state === "started") await output.cancel();
    throw fault;
  }
  if (target.buffer === null) throw new Error(tell("empty"));
  return {
    data: target.buffer,
    type: mp4 ? "video/mp4" : "video/webm",
    ending: mp4 ? "mp4" : "webm",
  };
}
