import { curvePoints, pchip, type Vec } from "../model/base";
import type { Bait } from "../model/bait";
import { sketches } from "../model/parts";
import { phiOfStation, stationOfPhi } from "../model/shape";
import type { CurvePoints } from "../document";
import { figuresOf } from "./figures";
import { boxOf } from "./geometry";
import { movedMarks, type Mark, type Stroke } from "./mark";
import { bodyMarks, hookMarks } from "./marks";
import { flatTone } from "./scene";
import { hookedHangers } from "./still";
import { niceStep, tickText, ticksBetween } from "./ticks";
import type { Box, Scene, SceneFigure, Size } from "./types";

/**
 * The drawing board: side view, view from above and one section, all to one scale and aligned with one another. Pure; the
 * places of a view are in m, in that view's own frame: side (x forward, z up), above (x forward, z to one side), section
 * (x to one side, z up).
 */
export type Elevation = "side" | "above" | "section";

/** One view on the board: where its origin lies, px, and which part of its own plane it shows, m. */
export interface Pane {
  readonly elevation: Elevation;
  readonly x: number;
  readonly y: number;
  readonly box: Box;
}

export interface BoardLayout extends Size {
  /** px to the metre, the same in every view. */
  readonly scale: number;
  readonly panes: readonly Pane[];
}

/** Room for the figures of the rulers, px. */
const RULER = { left: 38, top: 20, gap: 22, right: 8, bottom: 6 } as const;
/** Room round the bait, share of its length. */
const PAD = 0.05;
/** Least height of a view that stands alone, share of its width. */
const LOWEST = 0.72;
/** How far a hook stands out to either side, share of its length as it is drawn. */
const HOOK_ASIDE = 0.36;
/** Greatest scale, px to the metre: a bait of 20 mm does not need more of a screen. */
const MOST = 40_000;

/** Places that parts outside the body reach to. A ball on the skin stands out by less than the margin. */
const reached = (figures: readonly SceneFigure[]): readonly Vec[] =>
  figures.flatMap((f) => (f.layer === "inside" || f.is === "circle" ? [] : f.points));

/** What each view has to hold. */
export function boardBoxes(scene: Scene, bait: Bait): Readonly<Record<Elevation, Box>> {
  const pad = PAD * scene.length;
  const around = boxOf([
    ...scene.outline,
    ...reached(scene.figures),
    scene.tie,
    ...scene.hangers.flatMap(({ at, hookLength }) => {
      const aside = HOOK_ASIDE * (hookLength ?? 0);
      return [
        { x: at.x - aside, z: at.z },
        { x: at.x + aside, z: at.z },
      ];
    }),
  ]);
  const above = reached(figuresOf(sketches(bait.spec, bait), (one) => one.above()));
  const half = Math.max(bait.drawn.maxHalfBreadth, ...above.map(({ z }) => Math.abs(z)));
  const x = { minX: around.minX - pad, maxX: around.maxX + pad };
  const z = { minZ: Math.min(around.minZ, scene.extent.minZ) - pad, maxZ: around.maxZ + pad };
  return {
    side: { ...x, ...z },
    above: { ...x, minZ: -half - pad, maxZ: half + pad },
    section: { minX: -half - pad, maxX: half + pad, ...z },
  };
}

export const wide = (b: Box): number => b.maxX - b.minX;
export const tall = (b: Box): number => b.maxZ - b.minZ;

/** The piece of a direction that holds all of these. */
function along<Low extends "minX" | "minZ", High extends "maxX" | "maxZ">(
  boxes: readonly Box[],
  low: Low,
  high: High,
): Pick<Box, Low | High> {
  const [least, most] = [Math.min(...boxes.map((b) => b[low])), Math.max(...boxes.map((b) => b[high]))];
  return { [low]: least, [high]: most } as Pick<Box, Low | High>;
}

/** All three views side by side and below one another in the room given, or one alone. */
export function boardLayout(
  boxes: Readonly<Record<Elevation, Box>>,
  room: Size,
  only: Elevation | null,
): BoardLayout {
  const { left, top, gap, right, bottom } = RULER;
  if (only !== null) {
    const held = boxes[only];
    const across = room.width - left - right;
    const scale = Math.max(1, Math.min(across / wide(held), (room.height - top - bottom) / tall(held), MOST));
    // A low bait leaves room above and below: a view that is looked at closer needs it.
    const height = Math.max(tall(held) * scale, Math.min(room.height - top - bottom, LOWEST * across));
    const more = (height / scale - tall(held)) / 2;
    const box = { ...held, minZ: held.minZ - more, maxZ: held.maxZ + more };
    return {
      width: room.width,
      height: Math.round(top + height + bottom),
      scale,
      panes: [
        {
          elevation: only,
          box,
          x: left + (across - wide(box) * scale) / 2 - box.minX * scale,
          y: top + box.maxZ * scale,
        },
      ],
    };
  }
  // Views that are looked at along one direction show the same piece of it.
  const x = along([boxes.side, boxes.above], "minX", "maxX");
  const z = along([boxes.side, boxes.section], "minZ", "maxZ");
  const side = { ...boxes.side, ...x, ...z };
  const above = { ...boxes.above, ...x };
  const section = { ...boxes.section, ...z };
  const at = (elevation: Elevation, left: number, top: number, scale: number): Pane => {
    const box = { side, above, section }[elevation];
    return { elevation, box, x: left - box.minX * scale, y: top + box.maxZ * scale };
  };
  const scale = Math.max(
    1,
    Math.min(
      (room.width - left - left - right) / (wide(side) + wide(section)),
      (room.height - top - gap - bottom) / (tall(side) + tall(above)),
      MOST,
    ),
  );
  const used = left + left + right + (wide(side) + wide(section)) * scale;
  const start = left + Math.max(0, (room.width - used) / 2);
  const second = top + tall(side) * scale + gap;
  return {
    width: room.width,
    height: Math.round(second + tall(above) * scale + bottom),
    scale,
    panes: [
      at("side", start, top, scale),
      at("section", start + wide(side) * scale + left, top, scale),
      at("above", start, second, scale),
    ],
  };
}

/** The place of a px of the board in a view's own plane, m. */
export const onPane = (pane: Pane, scale: number, x: number, y: number): Vec => ({
  x: (x - pane.x) / scale,
  z: (pane.y - y) / scale,
});

/** Whether a px of the board lies in a view. */
export function inPane(pane: Pane, scale: number, x: number, y: number): boolean {
  const { box } = pane;
  const p = onPane(pane, scale, x, y);
  return p.x >= box.minX && p.x <= box.maxX && p.z >= box.minZ && p.z <= box.maxZ;
}

/** The unit that rulers and grid count in. */
export interface BoardUnit {
  /** Of the unit to the metre. */
  readonly perMetre: number;
  readonly symbol: string;
}

/** Steps of the grid in the unit shown: the fine lines, and the lines that have figures. */
export const gridSteps = (scale: number, { perMetre }: BoardUnit): { fine: number; bold: number } => ({
  fine: niceStep(scale / perMetre, 7),
  bold: niceStep(scale / perMetre, 46),
});

/** Step that a dragged point snaps to, m: at least 3 px. */
export const snapStep = (scale: number, { perMetre }: BoardUnit): number =>
  niceStep(scale / perMetre, 3) / perMetre;

const FINE: Stroke = { role: "rule", px: 0.5, alpha: 0.55 };
const BOLD: Stroke = { role: "rule", px: 1, alpha: 0.9 };
const DATUM: Stroke = { role: "inkSoft", px: 0.9, dash: [9, 3] };

/** Grid, datum line and rulers of a view. Stations count aft from the nose tip. */
export function gridMarks({ elevation, box }: Pane, scale: number, unit: BoardUnit): Mark[] {
  const { fine, bold } = gridSteps(scale, unit);
  const m = unit.perMetre;
  const lines = (step: number): (readonly Vec[])[] => [
    ...ticksBetween(box.minX * m, box.maxX * m, step).map((x) => [
      { x: x / m, z: box.minZ },
      { x: x / m, z: box.maxZ },
    ]),
    ...ticksBetween(box.minZ * m, box.maxZ * m, step).map((z) => [
      { x: box.minX, z: z / m },
      { x: box.maxX, z: z / m },
    ]),
  ];
  const px = (n: number): number => n / scale;
  const say = (words: string, at: Vec, x: 0 | 0.5 | 1, y: 0 | 0.5 | 1): Mark => ({
    kind: "text",
    what: null,
    at,
    words,
    size: 11,
    anchor: { x, y },
    fill: { role: "inkSoft" },
  });
  // Along the bait the ruler counts stations, aft from the nose tip; across it counts from the middle.
  const along = elevation === "section" ? 1 : -1;
  const labels = [
    ...ticksBetween(box.minX * m, box.maxX * m, bold).map((x) =>
      say(tickText(x === 0 ? 0 : along * x, bold), { x: x / m, z: box.maxZ + px(3) }, 0.5, 1),
    ),
    ...ticksBetween(box.minZ * m, box.maxZ * m, bold)
      .filter((z) => z / m < box.maxZ - px(6) && z / m > box.minZ + px(4))
      .map((z) => say(tickText(z, bold), { x: box.minX - px(4), z: z / m }, 1, 0.5)),
    say(unit.symbol, { x: box.minX - px(4), z: box.maxZ + px(3) }, 1, 1),
  ];
  return [
    { kind: "lines", what: null, paths: lines(fine), stroke: FINE },
    { kind: "lines", what: null, paths: lines(bold), stroke: BOLD },
    {
      kind: "path",
      what: null,
      points: [
        { x: box.minX, z: 0 },
        { x: box.maxX, z: 0 },
      ],
      stroke: DATUM,
    },
    ...labels,
  ];
}

/** The bait from the side without shading, so that the drawn line is what the eye finds: parts inside are shown. */
export function sideMarks(scene: Scene): Mark[] {
  const flat: Scene = {
    ...scene,
    coats: [],
    tones: flatTone(scene.outline),
  };
  return [
    ...bodyMarks(flat, true),
    ...hookedHangers(scene).flatMap((h) => movedMarks(hookMarks(h), h.at, 0)),
  ];
}

/**
 * A drawn curve from its points (mm), the same monotone cubic that the model reckons with (docs/model.md §2), as
 * [station, value] in mm; null where the stations do not rise, since there is no curve then.
 */
export function drawnCurve(points: CurvePoints, length: number): CurvePoints | null {
  const rising = points.every(([s], i) => s > (points[i - 1]?.[0] ?? -Infinity));
  if (!rising || points.length < 2 || !(length > 0) || !points.every(([, v]) => Number.isFinite(v)))
    return null;
  const last = points.length - 1;
  const phis = points.map(([s], i) => (i === 0 ? 0 : i === last ? Math.PI : phiOfStation(s, length)));
  if (phis.some((p, i) => i > 0 && !(p > (phis[i - 1] ?? 0)))) return null;
  const curve = pchip(
    phis,
    points.map(([, v]) => v),
  );
  return curvePoints((phi) => ({ x: stationOfPhi(phi, length), z: curve.at(phi) }), phis, 0.02).map(
    ({ x, z }): readonly [number, number] => [x, z],
  );
}
