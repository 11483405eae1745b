import { watchedFor } from "../../../model/motion";
import type { Tub } from "../../../runner";
import type { Shown } from "../../state";

/** A release that is shown, at the length that is wished; null where more than its length differs. */
export function atLength({ recording, worked, job }: Shown, tub: Tub): Shown | null {
  if (job.kind !== "tub") return null;
  const { depth, pitch, stage } = job.tub;
  if (depth !== tub.depth || pitch !== tub.pitch || stage !== tub.stage) return null;
  return { recording: watchedFor(recording, tub.duration), worked, job: { ...job, tub } };
}
