/** Kinds of film that a browser may write, best first. */
const KINDS = ["video/webm;codecs=vp9", "video/webm;codecs=vp8", "video/webm"] as const;

/** The kind of film that this browser writes; null where it writes none. */
export function filmKind(): string | null {
  if (typeof MediaRecorder === "undefined" || !("captureStream" in HTMLCanvasElement.prototype)) return null;
  return KINDS.find((kind) => MediaRecorder.isTypeSupported(kind)) ?? null;
}

/** A film being taken of a canvas; `stop` ends it and gives the file. */
export interface Film {
  stop(): Promise<Blob>;
}

const BITS_PER_SECOND = 8_000_000;

/** Begins to film a canvas as it is drawn, 60 pictures a second at most. */
export function startFilm(canvas: HTMLCanvasElement, kind: string): Film {
  const stream = canvas.captureStream(60);
  const recorder = new MediaRecorder(stream, { mimeType: kind, videoBitsPerSecond: BITS_PER_SECOND });
  const parts: Blob[] = [];
  recorder.addEventListener("dataavailable", ({ data }) => {
    if (data.size > 0) parts.push(data);
  });
  const ended = new Promise<Blob>((done, failed) => {
    recorder.addEventListener("stop", () => {
      for (const track of stream.getTracks()) track.stop();
      done(new Blob(parts, { type: "video/webm" }));
    });
    recorder.addEventListener("error", () =>
      failed(new Error("The browser stopped filming; save single pictures instead")),
    );
  });
  recorder.start(500);
  return {
    stop() {
      if (recorder.state !== "inactive") recorder.stop();
      return ended;
    },
  };
}
