import type { EntrySketch, Figure } from "../model/parts";
import type { Vec } from "../model/base";
import { boxOf, hatch } from "./geometry";
import type { Mark, Paint, Stroke } from "./mark";
import type { SceneFigure } from "./types";

/** Figures of the parts: their order, and how each looks by its role. The same looks serve every view. */

/** Widths of lines, px. */
export const HAIR = 0.75;
export const THIN = 1.1;
export const BOLD = 1.7;

type Place = readonly [
  layer: SceneFigure["layer"],
  role: SceneFigure["role"] | "any",
  is?: SceneFigure["is"],
];

/** Figures in the order in which they are drawn: those named first lie behind, those named together as in the account. */
const ORDER: readonly (readonly Place[])[] = [
  [["behind", "metal"]],
  [["behind", "plate"]],
  [["inside", "plate"]],
  [["inside", "void"]],
  [["inside", "metal", "path"]],
  [
    ["inside", "any"],
    ["front", "metal"],
  ],
  [["front", "pad"]],
];

/** Place in the order; what is not named lies before what is, each in the order of the account. */
function place({ layer, role, is }: SceneFigure): number {
  const like = role === "pupil" ? "pad" : role; // a pupil lies on its own pad
  const found = ORDER.findIndex((together) =>
    together.some(([l, r, i]) => l === layer && (r === "any" || r === like) && (i === undefined || i === is)),
  );
  return found < 0 ? ORDER.length : found;
}

/** Figures of all parts in one view, each with what it belongs to. */
export const figuresOf = (
  parts: readonly EntrySketch[],
  view: (sketch: EntrySketch) => readonly Figure[],
): SceneFigure[] =>
  parts.flatMap((one) => view(one).map((figure): SceneFigure => ({ ...figure, what: one.what })));

/** The same in the order in which they are drawn. */
export const inOrder = (figures: readonly SceneFigure[]): SceneFigure[] =>
  [...figures].sort((a, b) => place(a) - place(b));

/** Points that a figure reaches to. */
export const pointsOf = (f: SceneFigure): readonly Vec[] =>
  f.is === "circle"
    ? [
        { x: f.at.x - f.radius, z: f.at.z - f.radius },
        { x: f.at.x + f.radius, z: f.at.z + f.radius },
      ]
    : f.points;

/** Looks of the figures by their role; hidden edges in the body are dashed. */
export function figureMarks(f: SceneFigure): Mark[] {
  const inside = f.layer === "inside";
  const { what } = f;
  const draw = (look: { fill?: Paint; stroke?: Stroke }): Mark =>
    f.is === "circle"
      ? { kind: "circle", at: f.at, radius: f.radius, what, ...look }
      : { kind: f.is, points: f.points, what, ...look };
  const edge: Stroke = { role: "ink", px: THIN };
  switch (f.role) {
    case "metal":
      if (f.is === "path") {
        const seen = inside ? { alpha: 0.75 } : {};
        return [draw({ stroke: { role: "metal", px: BOLD, real: f.thickness, ...seen } })];
      }
      return [draw({ fill: { role: "metal" }, stroke: edge }), ...(inside ? [sectioned(f)] : [])];
    case "plate":
      return [
        draw({
          fill: { role: "paper", to: "accent", t: 0.3, alpha: inside ? 0.6 : 0.9 },
          stroke: inside ? { role: "ink", px: HAIR, dash: [4, 2.5] } : edge,
        }),
      ];
    case "void":
      return [draw({ fill: { role: "paper", alpha: 0.92 }, stroke: edge })];
    case "hole":
      return [draw({ fill: { role: "paper", alpha: 0.7 }, stroke: { role: "ink", px: HAIR, dash: [3, 2] } })];
    case "filled":
      return [
        draw({
          fill: { role: "paper", to: "inkSoft", t: 0.25, alpha: 0.85 },
          stroke: { role: "ink", px: HAIR, dash: [3, 2] },
        }),
      ];
    case "pad":
    case "eye":
      return [draw({ fill: { role: "paper" }, stroke: edge })];
    case "pupil":
      return [draw({ fill: { role: "ink" } })];
  }
}

/** Cut metal is hatched, as in a sectioned drawing. */
function sectioned(f: Exclude<SceneFigure, { is: "path" }>): Mark {
  const points =
    f.is === "polygon"
      ? f.points
      : Array.from({ length: 32 }, (_, i) => ({
          x: f.at.x + f.radius * Math.cos((i * Math.PI) / 16),
          z: f.at.z + f.radius * Math.sin((i * Math.PI) / 16),
        }));
  const box = boxOf(points);
  const size = f.is === "circle" ? f.radius : Math.min(box.maxX - box.minX, box.maxZ - box.minZ) / 2;
  return {
    kind: "lines",
    // A weight of nothing is a point: there is nothing to hatch.
    paths: size > 0 ? hatch(points, size / 2.5, Math.PI / 4) : [],
    what: f.what,
    stroke: { role: "paper", px: HAIR, alpha: 0.8 },
  };
}
