import { framesIn } from "./layout";
import type { GrowingRecording } from "./recording";

/**
 * The recording of the same release, watched for another time (s). A release does the same however long it is watched: so
 * the frames that are there are taken over, and only those that are still missing have to be worked out.
 *
 * @throws RangeError where the recording is not one of a release alone
 */
export function watchedFor(recording: GrowingRecording, duration: number): GrowingRecording {
  const { meta } = recording;
  const [leg, further] = meta.legs;
  if (leg?.move.do !== "release" || further !== undefined)
    throw new RangeError(`Only a release can be watched for another time, not ${meta.legs.length} moves.`);
  return recording.atLength({
    ...meta,
    frames: framesIn(duration, meta.frameRate),
    duration,
    legs: [{ ...leg, move: { ...leg.move, for: duration }, end: leg.start + duration }],
  });
}
