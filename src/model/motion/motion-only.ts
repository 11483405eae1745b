import { layout } from "./layout";
import type { RecordingChunk, RecordingMeta } from "./types";

/** The same recording without the line's points and the forces, for comparison runs: they need neither. It takes a tenth of the memory. */
export function motionOnlyMeta(meta: RecordingMeta): RecordingMeta {
  const motion = { ...meta, linePoints: 0, forces: [] };
  return { ...motion, stride: layout(motion).stride };
}

/** A chunk of a run described by `meta`, as a recording of `motionOnlyMeta(meta)` takes it. */
export function motionOnlyChunk(meta: RecordingMeta, chunk: RecordingChunk): RecordingChunk {
  const keep = layout(meta).line;
  const data = new Float64Array(chunk.frames * keep);
  for (let i = 0; i < chunk.frames; i++)
    data.set(chunk.data.subarray(i * meta.stride, i * meta.stride + keep), i * keep);
  return { ...chunk, data };
}
