import type { Vec } from "../model/base";
import type { Snapshot } from "../model/motion";
import { placed } from "./geometry";
import { movedMarks, type Mark } from "./mark";
import { ballMarks, bodyMarks, ghostMarks, hookMarks } from "./marks";
import type { Role } from "./palette";
import type { Posed, Scene } from "./types";

/** The snapshot of a bait that nothing has moved yet: held with its nose at `nose`, hooks hanging straight down. */
export function heldStill(scene: Scene, nose: Vec, pitch: number): Snapshot {
  const at = (p: Vec): Vec => placed(p, nose, pitch);
  return {
    time: 0,
    nose,
    pitch,
    G: at(scene.G),
    B: at(scene.B),
    velocity: { x: 0, z: 0 },
    eye: at(scene.tie),
    hooks: hookedHangers(scene).map((h) => ({ at: at(h.at), angle: 0 })),
    balls: scene.balls.map((b) => at(b.at)),
    line: [],
    slack: true,
    tension: 0,
    forces: [],
  };
}

/** A place for a bait that no run has placed: level, a little under the surface. */
export function restingPlace(scene: Scene): Vec {
  const depth = Number.isFinite(scene.depth) ? Math.min(0.25, scene.depth / 2) : 0.25;
  return { x: scene.length / 2, z: -depth };
}

/** Hangers that carry something, in the order of the snapshot's hooks. */
export function hookedHangers(scene: Scene): Scene["hangers"] {
  return scene.hangers.filter((h) => h.hookLength !== null || h.ringRadius !== null);
}

/** Every mark of a bait at a snapshot, in the body frame turned by its pitch (the nose tip at the origin). */
export const posedMarks = (scene: Scene, snapshot: Snapshot, xray: boolean): Mark[] =>
  assembled(scene, snapshot, bodyMarks(scene, xray), xray, "ink");

/** The same of another variant: dashed and hatched, in the colour of its role. */
export const ghostMarksAt = (
  { scene, snapshot }: Posed,
  role: Role,
  dash?: readonly [number, number],
): Mark[] => assembled(scene, snapshot, ghostMarks(scene, role, dash), true, role);

/** The body turned by its pitch, with the balls and the hooks where the snapshot has them. */
function assembled(
  scene: Scene,
  snapshot: Snapshot,
  body: readonly Mark[],
  balls: boolean,
  colour: Role,
): Mark[] {
  const fromNose = (p: Vec): Vec => ({ x: p.x - snapshot.nose.x, z: p.z - snapshot.nose.z });
  const marks = movedMarks(body, { x: 0, z: 0 }, snapshot.pitch);
  if (balls)
    scene.balls.forEach((ball, i) => {
      const at = snapshot.balls[i];
      if (at) marks.push(...movedMarks(ballMarks(ball.radius, colour), fromNose(at), 0));
    });
  hookedHangers(scene).forEach((hanger, i) => {
    const hook = snapshot.hooks[i];
    if (hook) marks.push(...movedMarks(hookMarks(hanger, colour), fromNose(hook.at), hook.angle));
  });
  return marks;
}
