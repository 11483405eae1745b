import { atan2, cos, hypot, sin } from "../base";
import type { Bait, BallSide, RigidSet } from "../bait";
import { lowSide, MID } from "../bait";
import type { RestTrim } from "./types";

/** Below this distance from G to B the rest trim is undefined, m (docs/model.md §5). */
export const LEAST_BG = 1e-4;

export const BOXED: readonly BallSide[] = (["floor", "roof"] as const).flatMap((face) =>
  (["nose", "tail"] as const).map((end) => ({ end, face })),
);

/** Angle in (−π, π]. */
export const wrap = (angle: number): number => {
  const a = angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
  return a <= -Math.PI ? a + 2 * Math.PI : a;
};

export const hasBalls = (bait: Bait): boolean => bait.items.some((i) => i.part === "balls" && i.mass > 0);

/** Where loose balls lie at a pitch: the lower end, and the roof when belly-up (docs/model.md §3). */
export const sideAt = (pitch: number): BallSide => lowSide(sin(pitch), cos(pitch));

interface Rest {
  readonly side: BallSide;
  readonly rigid: RigidSet;
  readonly BG: number;
  /** θ = atan2(x_B − x_G, z_B − z_G). */
  readonly pitch: number;
}

function rest(bait: Bait, side: BallSide): Rest {
  const rigid = bait.rigid(side);
  const x = rigid.B.x - rigid.G.x;
  const z = rigid.B.z - rigid.G.z;
  return { side, rigid, BG: hypot(x, z), pitch: atan2(x, z) };
}

/**
 * Rest trim under water: B stands vertically above G, with hooks and rings at their eyes. The loose balls lie on the side
 * that this attitude makes the lower one. A loose ball can make two such attitudes. The result is then the one nearest to
 * the trim found with the balls at mid-length; the others are listed (docs/model.md §3, §5).
 */
export function restTrim(bait: Bait): RestTrim {
  let found: Rest[];
  if (!hasBalls(bait)) found = [rest(bait, MID)];
  else {
    // At least one side always agrees with its attitude. Balls moved to the tail raise the nose, and balls moved to the
    // roof lower B − G. So if one side of a pair disagrees with its own attitude, the other side agrees.
    found = BOXED.map((side) => rest(bait, side)).filter((r) => {
      const own = sideAt(r.pitch);
      return own.end === r.side.end && own.face === r.side.face;
    });
    const floor = rest(bait, MID);
    const mid = cos(floor.pitch) >= 0 ? floor : rest(bait, { end: "mid", face: "roof" });
    const far = (r: Rest): number => Math.abs(wrap(r.pitch - mid.pitch));
    found.sort((a, b) => far(a) - far(b));
    const defined = found.filter((r) => r.BG >= LEAST_BG);
    if (defined.length > 0) found = defined;
    if (found.length === 0) found = [mid];
  }
  const [chosen, ...others] = found;
  if (!chosen) throw new Error("restTrim: no attitude found");
  return {
    pitch: chosen.BG < LEAST_BG ? null : chosen.pitch,
    others: others.filter((r) => r.BG >= LEAST_BG).map((r) => r.pitch),
    side: chosen.side,
    G: chosen.rigid.G,
    B: chosen.rigid.B,
    BG: chosen.BG,
  };
}
