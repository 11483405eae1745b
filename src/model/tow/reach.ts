import { cos, sin } from "../base";
import type { Bait, BaitSpec } from "../bait";
import { assemble } from "../bait";
import { cylinderDrag, type SwimmerOptions, type Surroundings } from "../forces";
import { steadyLine, type Tackle } from "../line";
import { outline } from "../shape";
import { restTrim } from "../statics";
import { Swimmers, runningRoot, towRoots } from "./attitude";
import type { ReachRow, TowRoot } from "./types";

export interface ReachQuery {
  /** m/s through the water. */
  readonly speed: number;
  /** m; default the tackle's. */
  readonly lineOut?: number | undefined;
  /** Factor on the line's normal drag C_n, for bands; default 1. */
  readonly lineDrag?: number | undefined;
}

const UP_45 = Math.PI / 4;

/** Why a bait does not run, in the order in which it is asked. */
export const REASONS = [
  "turns over",
  "tail sinks",
  "nose lifts",
  "bib stalls",
  "too little downforce at this speed",
  "cannot get under",
] as const;
export type Reason = (typeof REASONS)[number];

/** Height (m) of the bare outline's and the bib's highest point above the tie eye at a pitch. */
function highestAboveEye(bait: Bait, pitch: number): number {
  const s = sin(pitch);
  const c = cos(pitch);
  const { tie, bib } = bait.spec;
  const points = [...outline(bait.drawn, 120)];
  if (bib)
    points.push({
      x: bib.root.x + bib.length * cos(bib.angle),
      z: bib.root.z - bib.length * sin(bib.angle),
    });
  return Math.max(...points.map((p) => (p.x - tie.x) * s + (p.z - tie.z) * c));
}

/** A bait prepared for the tow: everything that does not depend on the speed. */
export interface TowBait {
  readonly bait: Bait;
  readonly swimmers: Swimmers;
  /** Rest trim, rad; 0 where B and G are at one place, so that the bait rests at any attitude. */
  readonly restTrim: number;
}

/**
 * Prepares a bait for any number of reach evaluations.
 *
 * @param options further coefficients of the swimmer, for bands
 */
export function prepareTow(
  bait: Bait,
  bibFactor = 1,
  options: Partial<Pick<SwimmerOptions, "munkShare">> = {},
): TowBait {
  return {
    bait,
    swimmers: new Swimmers(bait, { ...options, bibFactor }),
    restTrim: restTrim(bait).pitch ?? 0,
  };
}

/** The attitudes of a tow at one speed: they do not depend on the line. */
export interface TowAttitude {
  readonly speed: number;
  readonly roots: readonly TowRoot[];
  /** The running attitude; null where there is no stable one. */
  readonly running: TowRoot | null;
}

const deepWaters = new WeakMap<Surroundings, Surroundings>();

/**
 * Water without surface or current, as the forces of a steady tow feel it. The same object is given for the same
 * surroundings (which never change), so that what the forces prepare for it is used again.
 */
function deepWater(around: Surroundings): Surroundings {
  const known = deepWaters.get(around) ?? { ...around, surface: false, current: { x: 0, z: 0 } };
  deepWaters.set(around, known);
  return known;
}

/**
 * All attitudes of a tow, and the one at which the bait runs. This is the first half of `reach`; several lines can share
 * it.
 *
 * @param speed m/s through the water
 * @throws RangeError for a speed that is not above 0
 */
export function towAttitude(tow: TowBait, around: Surroundings, speed: number): TowAttitude {
  const deep = deepWater(around);
  const roots = towRoots(tow.swimmers, deep, speed);
  return { speed, roots, running: runningRoot(tow.swimmers, deep, speed, tow.restTrim, roots) };
}

/** The same spec with another bib angle (rad); all else stays, the tie eye too. Without a bib the spec is unchanged. */
export function withBibAngle(spec: BaitSpec, angle: number): BaitSpec {
  return spec.bib ? { ...spec, bib: { ...spec.bib, angle } } : spec;
}

/**
 * How deep the bait runs in a steady tow, and at what attitude and tension; or that it does not run, and why (docs/model.md
 * §7: the reasons are tried in the order given there).
 *
 * @param around water; the forces do not feel its surface; its depth limits the answer
 * @throws RangeError where speed or line out is not above 0
 */
export function reach(tow: TowBait, around: Surroundings, tackle: Tackle, query: ReachQuery): ReachRow {
  return reachFrom(tow, towAttitude(tow, around, query.speed), around, tackle, query);
}

/**
 * `reach` from attitudes that are known.
 *
 * @throws RangeError where line out or the factor on its drag is not above 0
 */
export function reachFrom(
  tow: TowBait,
  attitude: TowAttitude,
  around: Surroundings,
  tackle: Tackle,
  options: Omit<ReachQuery, "speed"> = {},
): ReachRow {
  const { bait } = tow;
  const { speed, roots, running: root } = attitude;
  const lineOut = options.lineOut ?? tackle.lineOut;
  if (!(lineOut > 0)) throw new RangeError(`Line out must be above 0 m, not ${lineOut}.`);
  const lineDrag = options.lineDrag ?? 1;
  if (!(lineDrag > 0))
    throw new RangeError(`The factor on the line's drag must be above 0, not ${lineDrag}.`);
  const deep = deepWater(around);
  const bib = bait.spec.bib;
  const not = (why: Reason): ReachRow => ({
    speed,
    bibAngle: bib ? bib.angle : null,
    lineOut,
    depth: null,
    pitch: null,
    tension: null,
    lineAngle: null,
    runs: false,
    why,
    roots,
    line: null,
  });
  if (!root || cos(root.pitch) <= 0) return not("turns over");
  const attack = bib ? bib.angle - root.pitch : null;
  if (attack !== null && attack <= 0) return not(tow.restTrim > UP_45 ? "tail sinks" : "nose lifts");
  if (root.tension * sin(root.lineAngle) <= 0)
    return not(
      attack !== null && attack >= Math.PI / 2 ? "bib stalls" : "too little downforce at this speed",
    );
  const line = steadyLine(
    { ...tackle, lineOut },
    deep,
    speed,
    root.tension,
    root.lineAngle,
    lineDrag === 1 ? {} : { normalDrag: (reynolds) => lineDrag * cylinderDrag(reynolds) },
  );
  if (!line.meetsRod || line.depth <= highestAboveEye(bait, root.pitch)) return not("cannot get under");
  const bottomed = line.depth > around.depth;
  return {
    speed,
    bibAngle: bib ? bib.angle : null,
    lineOut,
    depth: bottomed ? around.depth : line.depth,
    pitch: root.pitch,
    tension: root.tension,
    lineAngle: root.lineAngle,
    runs: true,
    why: bottomed ? "limited by the bottom" : null,
    roots,
    line,
  };
}

/**
 * Reach for each bib angle, and for each speed at that angle. Angles null: the file's own. Mass, G, B and rest trim are
 * computed anew for each angle.
 */
export function reachSweep(
  spec: BaitSpec,
  around: Surroundings,
  tackle: Tackle,
  sweep: {
    readonly speeds: readonly number[];
    readonly angles: readonly number[] | null;
    readonly bibFactor?: number;
  },
): ReachRow[] {
  const specs = sweep.angles && spec.bib ? sweep.angles.map((angle) => withBibAngle(spec, angle)) : [spec];
  return specs.flatMap((each) => {
    const tow = prepareTow(assemble(each), sweep.bibFactor ?? 1);
    return sweep.speeds.map((speed) => reach(tow, around, tackle, { speed }));
  });
}
