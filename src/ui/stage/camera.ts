import type { Vec } from "../../model/base";
import { rulerSizes, type Rulers, type Scene, type Size, type View } from "../../drawing";
import type { Framing } from "./types";

/** Least and greatest share of the stage's width that the bait's length takes when close. */
const CLOSE_SHARE = [0.45, 0.55] as const;

/** Sine of the pitch at which the bait with its hanging hooks still has to fit when close: a little under 30°. */
const STEEP = 0.45;

/**
 * Scale at which the bait fills the stage: its length 45 to 55 % of the width, the more the better it fits in height
 * when it swims steeply; less on a stage too low to hold it upright.
 */
export function closeScale(scene: Scene, size: Size): number {
  const { extent, length } = scene;
  const tall = extent.maxZ - extent.minZ + STEEP * length;
  const fits = (0.9 * (size.height - rulerSizes(size).bottom)) / tall;
  const [least, most] = CLOSE_SHARE.map((share) => (share * size.width) / length) as [number, number];
  const whole = (0.9 * (size.height - rulerSizes(size).bottom)) / (scene.whole ?? 0);
  return Math.min(Math.max(least, Math.min(most, fits)), (1.15 * size.height) / length, whole);
}

/** Depth of water that the framing of the column shows: the whole where there is a floor, else 2 m or to the bait. */
function columnDepth(scene: Scene, around: Vec): number {
  return Number.isFinite(scene.depth) ? scene.depth : Math.max(2, -1.3 * around.z);
}

/**
 * Where the camera wants to be: what it frames stands in the middle of the stage between its scales.
 * @param around the point it follows (the bait's middle), world
 * @param rodTip end of the line, world, or null without a line
 */
export function framed(
  framing: Framing,
  scene: Scene,
  size: Size,
  rulers: Rulers,
  around: Vec,
  rodTip: Vec | null,
): View {
  const width = size.width - rulers.left;
  const height = size.height - rulers.bottom;
  const centred = (x: number, z: number, scale: number): View => ({
    x: x - rulers.left / 2 / scale,
    z: z - rulers.bottom / 2 / scale,
    scale,
  });
  const close = closeScale(scene, size);
  if (framing === "close") return centred(around.x, around.z, close);
  const depth = columnDepth(scene, around);
  const sky = Math.max(0.12 * depth, 2 * scene.length);
  const bottom = -1.05 * depth;
  if (framing === "cast" && rodTip) {
    const top = Math.max(rodTip.z * 1.15, sky);
    const span = Math.abs(rodTip.x - around.x) * 1.2 + 4 * scene.length;
    const scale = Math.min(width / span, height / (top - bottom), close);
    return centred((rodTip.x + around.x) / 2, (top + bottom) / 2, scale);
  }
  return centred(around.x, (sky + bottom) / 2, Math.min(height / (sky - bottom), close));
}

/** Least and greatest scale that zooming reaches. */
export function scaleLimits(scene: Scene, size: Size): readonly [number, number] {
  const far = Math.max(Number.isFinite(scene.depth) ? scene.depth : 10, scene.rod ? scene.rod.lineOut : 0, 1);
  return [Math.min(size.width, size.height) / (2.5 * far), 8 * closeScale(scene, size)];
}

/** How far the camera still is from where it wants to be: m, m, and the logarithm of the ratio of scales. */
export interface Offset {
  readonly x: number;
  readonly z: number;
  readonly log: number;
}

export const NO_OFFSET: Offset = { x: 0, z: 0, log: 0 };

export const offsetOf = (view: View, goal: View): Offset => ({
  x: view.x - goal.x,
  z: view.z - goal.z,
  log: Math.log(view.scale / goal.scale),
});

/** The view from a goal and what is left of the way to it. */
export const seen = (goal: View, offset: Offset): View => ({
  x: goal.x + offset.x,
  z: goal.z + offset.z,
  scale: goal.scale * Math.exp(offset.log),
});

/** Time constant of the camera's travel, s. */
const EASE = 0.13;

/** What is left of the way after `dt` seconds: an exponential approach, so that steps of any size end alike. */
export function eased(offset: Offset, dt: number): Offset {
  const k = Math.exp(-Math.max(0, dt) / EASE);
  return { x: offset.x * k, z: offset.z * k, log: offset.log * k };
}

/** True where the way left is too short to be seen. */
export function settled(offset: Offset, goal: View): boolean {
  return Math.abs(offset.log) < 5e-4 && Math.hypot(offset.x, offset.z) * goal.scale < 0.25;
}
