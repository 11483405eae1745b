import type { Vec } from "../model/base";
import type { Bait } from "../model/bait";
import { cutBall, sketches } from "../model/parts";
import { sectionCurve, topCurve } from "./curves";
import { BOLD, figureMarks, figuresOf, inOrder, THIN } from "./figures";
import type { Mark, Paint, Stroke } from "./mark";
import { sceneOf } from "./scene";
import type { Scene, SceneFigure } from "./types";

/**
 * The bait from above and cut across: pure functions from the assembled bait to marks, true to the same scale as the
 * side view. From above a mark's x is forward and its z the breadth to one side; in a section x is the breadth and z
 * the height. m.
 */

const OUTLINE: Stroke = { role: "ink", px: BOLD };
const HIDDEN: Stroke = { role: "ink", px: 0.9, dash: [4, 2.5] };
const AXIS: Stroke = { role: "inkSoft", px: 0.75, dash: [9, 3], alpha: 0.8 };

const skinOf = (scene: Scene): Paint =>
  scene.body === "wood"
    ? { role: "woodDark", to: "woodLight", t: 0.8 }
    : { role: "baitDark", to: "baitLight", t: 0.8 };

/** A line of the plane of symmetry. */
const axis = (from: Vec, to: Vec): Mark => ({ kind: "path", what: null, points: [from, to], stroke: AXIS });

/** The bait from above, mirrored about the plane of symmetry. What lies inside is dashed. */
export function topMarks(bait: Bait, scene: Scene = sceneOf(bait, null, Infinity)): Mark[] {
  const skin = topCurve(bait.drawn);
  const figures = figuresOf(sketches(bait.spec, bait), (one) => one.above());
  const drawn = (which: (f: SceneFigure) => boolean): Mark[] =>
    inOrder(figures.filter(which)).flatMap(fromAbove);
  const over = 0.05 * scene.length;
  // Metal on the skin may stand below the body: from above its outline runs over it.
  const within = (f: SceneFigure): boolean =>
    f.layer === "inside" || (f.layer === "front" && f.role === "metal");
  return [
    ...drawn((f) => f.layer === "behind"),
    { kind: "polygon", what: "body", points: skin, fill: skinOf(scene) },
    axis({ x: over, z: 0 }, { x: -scene.length - over, z: 0 }),
    ...drawn(within),
    ...scene.balls.map(({ at, radius }): Mark => ({
      kind: "circle",
      what: "balls",
      at: { x: at.x, z: 0 },
      radius,
      stroke: HIDDEN,
    })),
    { kind: "polygon", what: "body", points: skin, stroke: OUTLINE },
    ...drawn((f) => f.layer === "front" && !within(f)),
    {
      kind: "circle",
      what: "tie",
      at: { x: scene.tie.x, z: 0 },
      radius: 0.0014,
      fill: { role: "paper" },
      stroke: OUTLINE,
    },
  ];
}

/** A figure from above: inside the body its hidden edge, elsewhere as from the side. */
function fromAbove(f: SceneFigure): Mark[] {
  if (f.layer !== "inside") return figureMarks(f);
  const { what } = f;
  if (f.is === "circle") return [{ kind: "circle", what, at: f.at, radius: f.radius, stroke: HIDDEN }];
  if (f.is === "polygon") return [{ kind: "polygon", what, points: f.points, stroke: HIDDEN }];
  const stroke: Stroke = { ...HIDDEN, role: "metal", px: 1.2, real: f.thickness, alpha: 0.6 };
  return [{ kind: "path", what, points: f.points, stroke }];
}

/**
 * The bait cut across at a station (m aft of the nose tip), looked at from the nose: the skin and what the cut meets.
 * @throws RangeError where the station lies outside the body
 */
export function sectionMarks(
  bait: Bait,
  station: number,
  scene: Scene = sceneOf(bait, null, Infinity),
): Mark[] {
  const section = bait.drawn.section(station);
  const x = 0 - station;
  const skin = sectionCurve(section);
  const figures = figuresOf(sketches(bait.spec, bait), (one) => one.across(x));
  const { halfBreadth, top, bottom } = section;
  const over = 0.15 * Math.max(halfBreadth, (top - bottom) / 2);
  return [
    { kind: "polygon", what: "body", points: skin, fill: skinOf(scene) },
    ...figures.flatMap(cutAcross),
    ...scene.balls.flatMap((ball): Mark[] => {
      const cut = cutBall(ball, x);
      const stroke: Stroke = { role: "ink", px: THIN };
      return cut ? [{ kind: "circle", what: "balls", ...cut, fill: { role: "metal" }, stroke }] : [];
    }),
    { kind: "polygon", what: "body", points: skin, stroke: OUTLINE },
    axis({ x: 0, z: top + over }, { x: 0, z: bottom - over }),
  ];
}

/** A cut figure as it would look from outside, since nothing hides it. The edge of a hole is seen past the cut. */
function cutAcross(f: SceneFigure): Mark[] {
  if (f.is !== "polygon" || (f.role !== "hole" && f.role !== "filled"))
    return figureMarks({ ...f, layer: "front" });
  const { what, points } = f;
  return [{ kind: "polygon", what, points, fill: { role: "paper", alpha: 0.7 }, stroke: HIDDEN }];
}
