import { toSI } from "../../../units";
import { pointsOf } from "../../../document";
import type { CurveKey, CurvePoints, Scenario } from "../../../document";
import { drawnCurve, sectionMarks, sideMarks, topMarks } from "../../../drawing";
import type { BoardLayout, Elevation, Mark, Pane, Scene } from "../../../drawing";
import type { Vec } from "../../../model/base";
import type { Bait } from "../../../model/bait";
import type { StockSpec } from "../../../model/checks";
import type { DrawWords } from "../../words/draw";
import type { SnapMark } from "./snap";
import { stockMarks } from "./stock";

/** What is drawn of the bait in a view: the same from near and from far. */
export function baitMarks(
  elevation: Elevation,
  {
    bait,
    scene,
    station,
    stock,
  }: {
    readonly bait: Bait;
    readonly scene: Scene;
    readonly station: number;
    readonly stock: StockSpec | null;
  },
): Mark[] {
  const around = stock === null ? [] : stockMarks(elevation, bait.drawn, stock);
  switch (elevation) {
    case "section":
      return [...around, ...sectionMarks(bait, stationIn(bait, station), scene)];
    case "above":
      return [...around, ...topMarks(bait, scene)];
    case "side":
      return [...around, ...sideMarks(scene)];
  }
}

const stationIn = ({ drawn }: Bait, station: number): number =>
  Math.min(drawn.length, Math.max(0, toSI(station, "mm")));

/** What stands over it and follows the view's own size: the section's place, G and B. */
export function overMarks(
  { elevation, box }: Pane,
  scale: number,
  {
    bait,
    scene,
    station,
    words,
  }: {
    readonly bait: Bait;
    readonly scene: Scene;
    readonly station: number;
    readonly words: DrawWords;
  },
): Mark[] {
  if (elevation === "section") return [];
  const at = stationIn(bait, station);
  const cut: Mark = {
    kind: "path",
    what: null,
    points: [
      { x: 0 - at, z: box.minZ },
      { x: 0 - at, z: box.maxZ },
    ],
    stroke: { role: "accent", px: 1, dash: [6, 3], alpha: 0.9 },
  };
  return elevation === "above" ? [cut] : [cut, ...centres(scene, scale, words)];
}

/** G as a disc in quarters, B as a ring, each with its letter. */
function centres({ G, B }: Scene, scale: number, speaker: DrawWords): Mark[] {
  const r = 4.5 / scale;
  const letter = (words: string, at: Vec, below: boolean): Mark => ({
    kind: "text",
    what: null,
    at: { x: at.x + 6 / scale, z: at.z },
    words,
    size: 11,
    bold: true,
    anchor: { x: 0, y: below ? 0 : 1 },
    fill: { role: "ink" },
    halo: { role: "paper" },
  });
  return [
    {
      kind: "circle",
      what: null,
      at: B,
      radius: r,
      fill: { role: "paper" },
      stroke: { role: "accent", px: 2 },
      title: speaker.tell("centre.B"),
    },
    {
      kind: "circle",
      what: null,
      at: G,
      radius: r,
      fill: { role: "ink" },
      stroke: { role: "paper", px: 1 },
      title: speaker.tell("centre.G"),
    },
    letter("B", B, false),
    letter("G", G, true),
  ];
}

export interface CurveLines {
  readonly lines: readonly Vec[][];
  /** The points make a curve; else the lines go from point to point. */
  readonly whole: boolean;
}

/** The lines of curves, each made anew only where its points have changed. */
export class LineKeeper {
  readonly #made = new Map<CurveKey, { points: CurvePoints; length: number; made: CurveLines }>();

  of({ bait }: Scenario, key: CurveKey): CurveLines {
    const points = pointsOf(bait, key);
    const { length_mm: length } = bait;
    const before = this.#made.get(key);
    if (before?.points === points && before.length === length) return before.made;
    const made = curveLines(points, length, key);
    this.#made.set(key, { points, length, made });
    return made;
  }
}

/** The curve of some points in its view, m; the points themselves where they make no curve. */
function curveLines(points: CurvePoints, length: number, key: CurveKey): CurveLines {
  const line = drawnCurve(points, length);
  const drawn = (line ?? points).map(([s, v]): Vec => ({ x: 0 - toSI(s, "mm"), z: toSI(v, "mm") }));
  const lines = key === "halfBreadth" ? [drawn, drawn.map(({ x, z }) => ({ x, z: 0 - z }))] : [drawn];
  return { lines, whole: line !== null };
}

/** Half the length of the mark of the grid, px. */
const CROSS = 14;

/** What a drag keeps to, as lines, px: across the whole view for a point or the datum line, a cross for the grid. */
export function snapLines(snapped: SnapMark | null, { panes, scale }: BoardLayout) {
  const pane = panes.find((one) => one.elevation === snapped?.elevation);
  if (snapped === null || pane === undefined) return [];
  const { box } = pane;
  const x = (mm: number): number => pane.x - toSI(mm, "mm") * scale;
  const y = (mm: number): number => pane.y - toSI(mm, "mm") * scale;
  const { s, v } = snapped;
  const lines = [];
  if (s !== null) {
    const grid = s.to === "grid" && v !== null;
    lines.push({
      to: s.to,
      x1: x(s.at),
      x2: x(s.at),
      y1: grid ? y(v.at) - CROSS : pane.y - box.maxZ * scale,
      y2: grid ? y(v.at) + CROSS : pane.y - box.minZ * scale,
    });
  }
  if (v !== null) {
    const grid = v.to === "grid" && s !== null;
    lines.push({
      to: v.to,
      x1: grid ? x(s.at) - CROSS : pane.x + box.minX * scale,
      x2: grid ? x(s.at) + CROSS : pane.x + box.maxX * scale,
      y1: y(v.at),
      y2: y(v.at),
    });
  }
  return lines;
}

/** The curves that a view shows as lines of their own. */
export const CURVES_IN: Readonly<Record<Elevation, readonly CurveKey[]>> = {
  side: ["top", "bottom", "widest"],
  above: ["halfBreadth"],
  section: [],
};
