import type { Vec } from "../base";
import { cos, sin, rotate } from "../base";
import { lowSide } from "../bait";
import type { BallSide } from "../bait";
import { floating, restTrim } from "../statics";
import { MotionError } from "./error";
import type { HangingHook, RunSetup } from "./types";

/**
 * A sinker starts with its highest point this far under the surface, m, so that all of it is wet. Common practice, no
 * source.
 */
const JUST_UNDER = 0.002;

/** Where and how a bait starts: the tie eye stands at X = 0. World frame; m, rad. */
export interface StartPose {
  readonly nose: Vec;
  readonly pitch: number;
  readonly side: BallSide;
}

/** World places of body points in a pose. */
export function placer({ nose, pitch }: Pick<StartPose, "nose" | "pitch">): (p: Vec) => Vec {
  const s = sin(pitch);
  const c = cos(pitch);
  return (p) => {
    const arm = rotate(p, s, c);
    return { x: nose.x + arm.x, z: nose.z + arm.z };
  };
}

/** Pose at the start. Where the rest trim is undefined (G at B) it lies level. Throws MotionError where it cannot start. */
export function startPose(setup: RunSetup, hull: readonly Vec[], hooks: readonly HangingHook[]): StartPose {
  const { bait, around, start } = setup;
  const turned = (pitch: number): ((p: Vec) => Vec) => placer({ nose: { x: 0, z: 0 }, pitch });
  const make = (pitch: number, noseZ: number, side: BallSide): StartPose => {
    const place = turned(pitch);
    const pose = { nose: { x: -place(bait.spec.tie).x, z: noseZ }, pitch, side };
    const lowest = Math.min(
      ...hull.map((p) => noseZ + place(p).z),
      ...hooks.map((hook) => noseZ + place(hook.at).z - hook.length),
    );
    if (lowest < -around.depth)
      throw new MotionError(
        "start depth of its lowest point (m)",
        -lowest,
        null,
        `the water is ${around.depth} m deep`,
        "Start it higher or give deeper water",
      );
    return pose;
  };

  if (start === "afloat") {
    if (!around.surface)
      throw new MotionError("start", start, null, "this water has no surface", "Start it at a depth");
    const afloat = floating(bait, around.density);
    if (afloat !== null) return make(afloat.pitch, -afloat.surface.level, afloat.side);
    const rest = restTrim(bait);
    const pitch = rest.pitch ?? 0;
    const place = turned(pitch);
    const highest = Math.max(...hull.map((p) => place(p).z));
    return make(pitch, -JUST_UNDER - highest, rest.side);
  }

  if (!Number.isFinite(start.depth))
    throw new MotionError("start.depth", start.depth, null, "not a depth", "Give a number of metres");
  if (start.pitch === "rest") {
    const rest = restTrim(bait);
    const pitch = rest.pitch ?? 0;
    return make(pitch, -start.depth - turned(pitch)(bait.spec.tie).z, rest.side);
  }
  const { pitch } = start;
  if (!Number.isFinite(pitch))
    throw new MotionError("start.pitch", pitch, null, "not an angle", "Give a number of radians");
  return make(pitch, -start.depth - turned(pitch)(bait.spec.tie).z, lowSide(sin(pitch), cos(pitch)));
}

/** Place of the rod tip that keeps `lineOut` just straight from an eye at the height z and X = 0. World frame, m. */
export function rodTipPlace(eyeZ: number, lineOut: number, rodTip: number): Vec {
  const rise = rodTip - eyeZ;
  if (!(lineOut > Math.abs(rise)))
    throw new MotionError(
      "tackle.lineOut (m)",
      lineOut,
      null,
      `the rod tip is ${rise.toFixed(2)} m above the tie eye`,
      "Give more line, or start the bait nearer to the rod tip's height",
    );
  return { x: Math.sqrt(lineOut * lineOut - rise * rise), z: rodTip };
}
