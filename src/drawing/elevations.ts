import { add, scale as times, type Vec } from "../model/base";
import type { Bait, BibSpec } from "../model/bait";
import { halfBreadthAt } from "../model/shape";
import { curvePoints, sectionCurve, topCurve } from "./curves";
import type { Mark, Paint, Stroke } from "./mark";
import { sceneOf } from "./scene";
import type { Scene } from "./types";

/**
 * The bait from above and cut across: pure functions from the assembled bait to marks, true to the same scale as the
 * side view. From above a mark's x is forward and its z the breadth to one side; in a section x is the breadth and z
 * the height. m.
 */

const THIN: Stroke = { role: "ink", px: 1.1 };
const BOLD: Stroke = { role: "ink", px: 1.7 };
const HIDDEN: Stroke = { role: "ink", px: 0.9, dash: [4, 2.5] };
const AXIS: Stroke = { role: "inkSoft", px: 0.75, dash: [9, 3], alpha: 0.8 };
const PLATE: Paint = { role: "paper", to: "accent", t: 0.3, alpha: 0.9 };

const skinOf = (scene: Scene): Paint =>
  scene.body === "wood"
    ? { role: "woodDark", to: "woodLight", t: 0.8 }
    : { role: "baitDark", to: "baitLight", t: 0.8 };

const circle = (what: string, at: Vec, radius: number, fill: Paint | null, stroke: Stroke): Mark => ({
  kind: "circle",
  what,
  at,
  radius,
  ...(fill ? { fill } : {}),
  stroke,
});

const box = (what: string, a: Vec, b: Vec, stroke: Stroke, fill?: Paint): Mark => ({
  kind: "polygon",
  what,
  points: [a, { x: b.x, z: a.z }, b, { x: a.x, z: b.z }],
  stroke,
  ...(fill ? { fill } : {}),
});

/**
 * The bib's outline in its own plane: x along the plate from the root, z across. A round bib has its full width up to a
 * half ellipse with semi-axes width/2 across and min(width/2, length) along (docs/model.md §3).
 */
export function bibOutline({ length, width, outline }: BibSpec): Vec[] {
  const half = width / 2;
  if (outline === "square")
    return [
      { x: 0, z: half },
      { x: length, z: half },
      { x: length, z: -half },
      { x: 0, z: -half },
    ];
  const c = Math.min(half, length);
  const end = curvePoints(
    (t) => ({ x: length - c + c * Math.cos(t), z: half * Math.sin(t) }),
    [Math.PI / 2, 0, -Math.PI / 2],
  );
  return length > c ? [{ x: 0, z: half }, ...end, { x: 0, z: -half }] : end;
}

/** The bait from above, mirrored about the plane of symmetry. What lies inside is dashed. */
export function topMarks(bait: Bait, scene: Scene = sceneOf(bait, null, Infinity)): Mark[] {
  const { spec, drawn } = bait;
  const marks: Mark[] = [];
  const line = (points: readonly Vec[]): Vec[] => points.map(({ x }) => ({ x, z: 0 }));
  for (const wire of scene.wires)
    for (const points of wire.outside)
      marks.push({
        kind: "path",
        what: `wire:${wire.name}`,
        points: line(points),
        stroke: { role: "metal", px: 1.7, real: wire.diameter },
      });
  if (spec.bib) {
    const { root, angle } = spec.bib;
    marks.push({
      kind: "polygon",
      what: "bib",
      points: bibOutline(spec.bib).map((p) => ({ x: root.x + p.x * Math.cos(angle), z: p.z })),
      fill: PLATE,
      stroke: THIN,
    });
  }
  const skin = topCurve(drawn);
  marks.push({ kind: "polygon", what: "body", points: skin, fill: skinOf(scene) });
  const over = 0.05 * scene.length;
  marks.push({
    kind: "path",
    what: null,
    points: [
      { x: over, z: 0 },
      { x: -scene.length - over, z: 0 },
    ],
    stroke: AXIS,
  });
  if (spec.bib && spec.bib.slot > 0) {
    const { root, angle, slot } = spec.bib;
    const back = root.x - slot * Math.cos(angle);
    const middle = Math.min(Math.max(-(root.x + back) / 2, 0), drawn.length);
    const half = drawn.section(middle).halfBreadth;
    marks.push(box("bib", { x: root.x, z: half }, { x: back, z: -half }, HIDDEN));
  }
  for (const c of spec.chambers)
    marks.push(box(`chamber:${c.name}`, { x: -c.from, z: c.wide / 2 }, { x: -c.to, z: -c.wide / 2 }, HIDDEN));
  for (const wire of scene.wires)
    for (const points of wire.inside)
      marks.push({
        kind: "path",
        what: `wire:${wire.name}`,
        points: line(points),
        stroke: { role: "metal", px: 1.2, real: wire.diameter, alpha: 0.6, dash: [4, 2.5] },
      });
  for (const slug of scene.ballast) {
    const inside = slug.where === "inside";
    const at = { x: slug.at.x, z: 0 };
    marks.push(
      circle(
        `ballast:${slug.name}`,
        at,
        slug.radius,
        inside ? null : { role: "metal" },
        inside ? HIDDEN : THIN,
      ),
    );
  }
  scene.balls.forEach(({ at, radius }) =>
    marks.push(circle("balls", { x: at.x, z: 0 }, radius, null, HIDDEN)),
  );
  marks.push({ kind: "polygon", what: "body", points: skin, stroke: BOLD });
  for (const part of scene.fittings) {
    if (part.where === "inside") continue;
    const what = `fitting:${part.name}`;
    const s = -part.at.x;
    // Eyes sit on both flanks; any other fitting stands in the plane of symmetry.
    const onBody = part.looksLikeEye && s >= 0 && s <= drawn.length;
    const y = onBody ? halfBreadthAt(drawn.section(s), part.at.z) : 0;
    for (const side of y > 0 ? [1, -1] : [0])
      marks.push(
        circle(
          what,
          { x: part.at.x, z: side * y },
          (onBody ? 0.5 : 1) * part.radius,
          { role: "paper" },
          THIN,
        ),
      );
  }
  for (const hanger of scene.hangers)
    marks.push(circle(`hanger:${hanger.name}`, { x: hanger.at.x, z: 0 }, 0.0011, { role: "paper" }, THIN));
  marks.push(circle("tie", { x: scene.tie.x, z: 0 }, 0.0014, { role: "paper" }, BOLD));
  return marks;
}

/** Points where a path crosses the plane of a station, as heights. */
function heightsAt(path: readonly Vec[], x: number): number[] {
  return path.flatMap((b, i) => {
    const a = path[i - 1];
    if (!a || a.x === b.x || (a.x - x) * (b.x - x) > 0 || b.x === x) return [];
    return [a.z + ((b.z - a.z) * (x - a.x)) / (b.x - a.x)];
  });
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
  const { spec, drawn } = bait;
  const section = drawn.section(station);
  const x = 0 - station;
  const skin = sectionCurve(section);
  const marks: Mark[] = [{ kind: "polygon", what: "body", points: skin, fill: skinOf(scene) }];
  for (const c of spec.chambers)
    if (station >= c.from && station <= c.to)
      marks.push(
        box(
          `chamber:${c.name}`,
          { x: -c.wide / 2, z: c.height + c.tall / 2 },
          { x: c.wide / 2, z: c.height - c.tall / 2 },
          THIN,
          { role: "paper", alpha: 0.92 },
        ),
      );
  const cut = (what: string, at: Vec, radius: number, fill: Paint | null, stroke: Stroke): void => {
    const away = at.x - x;
    if (Math.abs(away) < radius)
      marks.push(circle(what, { x: 0, z: at.z }, Math.sqrt(radius * radius - away * away), fill, stroke));
  };
  for (const slug of scene.ballast) {
    if (slug.hole !== null && Math.abs(slug.at.x - x) < slug.hole / 2) {
      // A cylinder that stands upright, as wide as deep: the cut leaves a chord of its width.
      const chord = Math.sqrt((slug.hole / 2) ** 2 - (slug.at.x - x) ** 2);
      marks.push(
        box(
          `ballast:${slug.name}`,
          { x: -chord, z: slug.at.z + slug.hole / 2 },
          { x: chord, z: slug.at.z - slug.hole / 2 },
          HIDDEN,
          { role: "paper", alpha: 0.7 },
        ),
      );
    }
    cut(`ballast:${slug.name}`, slug.at, slug.radius, { role: "metal" }, THIN);
  }
  for (const ball of scene.balls) cut("balls", ball.at, ball.radius, { role: "metal" }, THIN);
  for (const wire of spec.wires)
    for (const z of heightsAt(wire.path, x))
      marks.push(circle(`wire:${wire.name}`, { x: 0, z }, wire.diameter / 2, { role: "metal" }, THIN));
  if (spec.bib) marks.push(...bibCut(spec.bib, x, section.halfBreadth));
  marks.push({ kind: "polygon", what: "body", points: skin, stroke: BOLD });
  const reach = { x: section.halfBreadth, top: section.top, bottom: section.bottom };
  const over = 0.15 * Math.max(reach.x, (reach.top - reach.bottom) / 2);
  marks.push({
    kind: "path",
    what: null,
    points: [
      { x: 0, z: reach.top + over },
      { x: 0, z: reach.bottom - over },
    ],
    stroke: AXIS,
  });
  return marks;
}

/** The bib where a section meets it: as wide as its outline there, in the slot as wide as the body. */
function bibCut(bib: BibSpec, x: number, halfBreadth: number): Mark[] {
  const along = { x: Math.cos(bib.angle), z: -Math.sin(bib.angle) };
  if (Math.abs(along.x) < 1e-9) return [];
  const d = (x - bib.root.x) / along.x;
  if (d < -bib.slot || d > bib.length) return [];
  const { z } = add(bib.root, times(along, d));
  const c = Math.min(bib.width / 2, bib.length);
  const u = (d - (bib.length - c)) / c;
  const half =
    d < 0
      ? halfBreadth
      : bib.outline === "square" || u <= 0
        ? bib.width / 2
        : (bib.width / 2) * Math.sqrt(Math.max(0, 1 - u * u));
  const thick = bib.thickness / Math.abs(along.x);
  return [box("bib", { x: -half, z: z + thick / 2 }, { x: half, z: z - thick / 2 }, THIN, PLATE)];
}
