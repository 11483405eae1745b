import { layout } from "./layout";
import type { RecordingChunk, RecordingMeta } from "./types";

/** The same recording without the line's points and the forces: a tenth of the memory, for runs that only accompany another. */
export function slimMeta(meta: RecordingMeta): RecordingMeta {
  const slim = { ...meta, linePoints: 0, forces: [] };
  return { ...slim, stride: layout(slim).stride };
}

/** A chunk of a run described by `meta`, as a recording of `slimMeta(meta)` takes it. */
export function slimChunk(meta: RecordingMeta, chunk: RecordingChunk): RecordingChunk {
  const keep = layout(meta).line;
  const data = new Float64Array(chunk.frames * keep);
  for (let i = 0; i < chunk.frames; i++)
    data.set(chunk.data.subarray(i * meta.stride, i * meta.stride + keep), i * keep);
  return { ...chunk, data };
}
