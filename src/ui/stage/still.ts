import type { Vec } from "../../model/base";
import type { Snapshot } from "../../model/motion";
import { boxOf, placed } from "./geometry";
import { ballMarks, bodyMarks, hookMarks, movedMarks, type Mark } from "./marks";
import type { Box, Scene } from "./types";

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
export function posedMarks(scene: Scene, snapshot: Snapshot, xray: boolean): Mark[] {
  const marks = movedMarks(bodyMarks(scene, xray), { x: 0, z: 0 }, snapshot.pitch);
  const fromNose = (p: Vec): Vec => ({ x: p.x - snapshot.nose.x, z: p.z - snapshot.nose.z });
  if (xray)
    scene.balls.forEach((ball, i) => {
      const at = snapshot.balls[i];
      if (at) marks.push(...movedMarks(ballMarks(ball.radius), fromNose(at), 0));
    });
  hookedHangers(scene).forEach((hanger, i) => {
    const hook = snapshot.hooks[i];
    if (hook) marks.push(...movedMarks(hookMarks(hanger), fromNose(hook.at), hook.angle));
  });
  return marks;
}

/** Box round marks, m. */
export function boxOfMarks(marks: readonly Mark[]): Box {
  return boxOf(
    marks.flatMap((m) =>
      m.kind === "circle"
        ? [
            { x: m.at.x - m.radius, z: m.at.z - m.radius },
            { x: m.at.x + m.radius, z: m.at.z + m.radius },
          ]
        : m.points,
    ),
  );
}
