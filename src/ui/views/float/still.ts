import { add, cos, sin, rotate } from "../../../model/base";
import type { Vec } from "../../../model/base";
import type { Bait, BallSide } from "../../../model/bait";
import type { Snapshot } from "../../../model/motion";
import type { Scene } from "../../../drawing";

/** A bait that a hand or the water holds still: where its nose tip is, how it is pitched, where its loose balls lie. */
interface Pose {
  readonly nose: Vec;
  readonly pitch: number;
  readonly side: BallSide;
  /** Centre of what is under water, body frame; null: of all of it. */
  readonly B: Vec | null;
}

/** A bait in a pose, as the stage draws it: the hooks hang straight down. Pure geometry. */
export function stillSnapshot(bait: Bait, { nose, pitch, side, B }: Pose): Snapshot {
  const [s, c] = [sin(pitch), cos(pitch)];
  const at = (p: Vec): Vec => add(nose, rotate(p, s, c));
  const whole = bait.rigid(side);
  return {
    time: 0,
    nose,
    pitch,
    G: at(whole.G),
    B: at(B ?? whole.B),
    velocity: { x: 0, z: 0 },
    eye: at(bait.spec.tie),
    hooks: bait.spec.hangers
      .filter((one) => (one.hook?.mass ?? 0) > 0 || (one.ring?.mass ?? 0) > 0)
      .map((one) => ({ at: at(one.at), angle: 0 })),
    balls: bait.balls(side).map((ball) => at(ball.at)),
    line: [],
    slack: true,
    tension: 0,
    forces: [],
  };
}

/** Nose tip of a bait whose surface stands at `level` over the nose in its own frame, its middle over the origin. */
export function noseAfloat(bait: Bait, pitch: number, level: number): Vec {
  return { x: (bait.shape.length / 2) * cos(pitch), z: 0 - level };
}

/** Nose tip of a bait whose tie eye is at a depth, its middle over the origin. */
export function noseAtDepth(bait: Bait, pitch: number, depth: number): Vec {
  const eye = rotate(bait.spec.tie, sin(pitch), cos(pitch));
  return { x: (bait.shape.length / 2) * cos(pitch), z: 0 - depth - eye.z };
}

/** Highest and lowest that a bait in a pose reaches with its hooks, m; the still surface counts where the bait is near it. */
export function spanOf(
  scene: Scene,
  { nose, pitch, hooks }: Snapshot,
): { readonly top: number; readonly bottom: number } {
  const [s, c] = [sin(pitch), cos(pitch)];
  const heights = scene.outline.map((p) => nose.z + rotate(p, s, c).z);
  const hung = scene.hangers.filter((one) => one.hookLength !== null || one.ringRadius !== null);
  const low = hooks.map((hook, i) => {
    const hanger = hung[i];
    return hook.at.z - (hanger?.hookLength ?? 0) - 2 * (hanger?.ringRadius ?? 0);
  });
  const [top, bottom] = [Math.max(...heights), Math.min(...heights, ...low)];
  return { top: top > -scene.length ? Math.max(top, 0) : top, bottom };
}
