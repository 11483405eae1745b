import type { Vec } from "../model/base";
import type { Bait } from "../model/bait";
import { FORCE_LEGEND, type ForceKey } from "../model/forces";
import type { Recording, Snapshot } from "../model/motion";
import { placed } from "./geometry";
import type { Scene } from "./types";

/** One force of a free body at a moment, world axes. */
export interface BodyForce {
  readonly key: ForceKey | "added";
  readonly letter: string;
  readonly colour: string;
  /** Where its arrow stands, m. */
  readonly at: Vec;
  /** N */
  readonly force: Vec;
  /** About G, N·m, nose-up positive. */
  readonly moment: number;
}

export interface FreeBody {
  readonly snapshot: Snapshot;
  readonly forces: readonly BodyForce[];
  /** Their sum, the water that moves along counted: the mass times the acceleration. */
  readonly sum: Vec;
}

/** Letter and colour of the push of the water that moves along; the colour is one of the eight by Okabe and Ito. */
const ADDED = { letter: "A", colour: "#999999" } as const;

const cross = (r: Vec, f: Vec): number => r.x * f.z - r.z * f.x;
const less = (a: Vec, b: Vec): Vec => ({ x: a.x - b.x, z: a.z - b.z });

/** The moment of a force about a point of the world: M_P = M_G + (G − P) × F. */
export const momentAbout = (
  point: Vec,
  G: Vec,
  { force, moment }: Pick<BodyForce, "force" | "moment">,
): number => moment + cross(less(G, point), force);

/**
 * All forces on the bait in one frame of a recording. What hangs on it and rolls in it (hooks, balls) is a body of its own in
 * the run: `hooks` and `contact` are what these pull and push. The water that moves along pushes with
 * F_A = m a − ΣF and M_A = I α − ΣM, by d'Alembert: a and α from the places of three neighbouring frames. A run's first and
 * last frame have no neighbours, so there it is left out.
 */
export function freeBody(recording: Recording, frame: number, bait: Bait, scene: Scene): FreeBody {
  const h = 1 / recording.frameRate;
  const snapshot = recording.at(frame * h);
  const anchors = new Map(snapshot.forces.map(({ key, at }) => [key, at]));
  const [s, c] = [Math.sin(snapshot.pitch), Math.cos(snapshot.pitch)];
  const forces: BodyForce[] = [...recording.wrench(frame)].flatMap(([key, { x, z, m }]): BodyForce[] => {
    const legend = FORCE_LEGEND.find((one) => one.key === key);
    if (legend === undefined) return [];
    const force = { x: x * c - z * s, z: x * s + z * c };
    return [
      {
        key,
        letter: legend.letter,
        colour: legend.colour,
        at: anchors.get(key) ?? snapshot.G,
        force,
        moment: m,
      },
    ];
  });
  const added = addedAt(recording, frame, bait, snapshot, forces);
  const all =
    added === null
      ? forces
      : [...forces, { ...added, at: placed({ x: -scene.length / 2, z: 0 }, snapshot.nose, snapshot.pitch) }];
  return {
    snapshot,
    forces: all,
    sum: all.reduce((sum, { force }) => ({ x: sum.x + force.x, z: sum.z + force.z }), { x: 0, z: 0 }),
  };
}

function addedAt(
  recording: Recording,
  frame: number,
  bait: Bait,
  { G, pitch, nose }: Snapshot,
  forces: readonly BodyForce[],
): Omit<BodyForce, "at"> | null {
  if (frame < 1 || frame + 1 >= recording.frames) return null;
  const h = 1 / recording.frameRate;
  const { mass, inertia, G: centre } = bait.rigidWithout({ hooks: true, balls: true });
  const at = (step: number): { p: Vec; pitch: number } => {
    const one = recording.at((frame + step) * h);
    return { p: placed(centre, one.nose, one.pitch), pitch: one.pitch };
  };
  const [before, now, after] = [at(-1), { p: placed(centre, nose, pitch), pitch }, at(1)];
  // (p₋ − 2p + p₊)/h²
  const second = (a: number, b: number, d: number): number => (a - 2 * b + d) / (h * h);
  // The shorter way round where the pitch passes ±180°.
  const near = (angle: number): number => angle - 2 * Math.PI * Math.round((angle - pitch) / (2 * Math.PI));
  const force = forces.reduce((left, one) => ({ x: left.x - one.force.x, z: left.z - one.force.z }), {
    x: mass * second(before.p.x, now.p.x, after.p.x),
    z: mass * second(before.p.z, now.p.z, after.p.z),
  });
  const turning = forces.reduce((sum, one) => sum + momentAbout(now.p, G, one), 0);
  const aboutCentre = inertia * second(near(before.pitch), pitch, near(after.pitch)) - turning;
  return { key: "added", ...ADDED, force, moment: aboutCentre + cross(less(now.p, G), force) };
}

/** Round scales for arrows, N for each 10 mm of the bait. */
export const FREE_SCALES = [0.0005, 0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5] as const;

/** The scale at which the longest arrow of a run's moments is at most half the bait's length. */
export function scaleFor(longest: number, length: number): number {
  const wanted = longest / ((0.5 * length) / 0.01);
  return FREE_SCALES.find((one) => one >= wanted) ?? 5;
}
