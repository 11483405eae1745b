import { toSI } from "../../../../units";
import type { boardBoxes } from "../../../../drawing";
import type { Vec } from "../../../../model/base";
import { MARKS, onBait } from "./place";
import type { Px } from "./place";
import type { Trace } from "./trace.svelte";

/** Room round the marks of a picture, and above and below the datum line at most, shares of the datum line's length. */
const PAD = 0.06;
const TALL = 0.32;

/** What each view has to hold, with the picture in hand: all of its bait, but not all of the table that it lies on. */
export function aroundPicture(
  boxes: ReturnType<typeof boardBoxes>,
  { laid, sight }: Trace,
): ReturnType<typeof boardBoxes> {
  if (laid === null) return boxes;
  const { place, width, height } = laid;
  const seen = (px: Px): Vec => {
    const [s, z] = onBait(place, px);
    return { x: 0 - toSI(s, "mm"), z: toSI(z, "mm") };
  };
  const marks = MARKS.filter((key) => !place.whole || key === "nose" || key === "tail").map((key) =>
    seen(place[key]),
  );
  const corners = [0, width].flatMap((u) => [0, height].map((v) => seen({ u, v })));
  const xs = marks.map(({ x }) => x);
  const long = Math.max(...xs) - Math.min(...xs);
  const zs = [
    ...marks.map(({ z }) => z),
    ...corners.map(({ z }) => Math.max(-TALL * long, Math.min(TALL * long, z))),
  ];
  const box = boxes[sight];
  return {
    ...boxes,
    [sight]: {
      minX: Math.min(box.minX, Math.min(...xs) - PAD * long),
      maxX: Math.max(box.maxX, Math.max(...xs) + PAD * long),
      minZ: Math.min(box.minZ, ...zs),
      maxZ: Math.max(box.maxZ, ...zs),
    },
  };
}
