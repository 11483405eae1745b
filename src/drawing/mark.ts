import type { Vec } from "../model/base";
import { boxOf, distanceToPath, insidePolygon, turned } from "./geometry";
import { mix, rgbOf, type Palette, type Rgb, type Role } from "./palette";
import type { Box } from "./types";

/**
 * A drawing is a list of marks, from back to front. The stage, the SVG writer and the pointer's search all read the
 * same list. A mark's places are in the drawing's own unit of length (metres for a bait, px for a screen), z up.
 * Line widths, dashes and letters are in px, so that they keep their weight at every scale.
 */

export interface Paint {
  readonly role: Role;
  /** Mixed towards this role by `t`. */
  readonly to?: Role;
  readonly t?: number;
  /** A colour of its own (#rrggbb) instead of the role's: a force's. Black follows the ink on dark paper. */
  readonly hex?: string;
  /** Default 1. */
  readonly alpha?: number;
}

export interface Stroke extends Paint {
  /** Least width, px. */
  readonly px: number;
  /** True width where the thing has one, in the drawing's unit. */
  readonly real?: number;
  /** Dashes, px drawn and px left out. */
  readonly dash?: readonly [number, number];
}

/** Which side of a text stands at its place: 0 left or top, 0.5 middle, 1 right or bottom. */
export interface Anchor {
  readonly x: 0 | 0.5 | 1;
  readonly y: 0 | 0.5 | 1;
}

export type Mark = {
  /** What a pointer finds here ("ballast:belly", "bib" …); null: only drawn. */
  readonly what: string | null;
  /** Words that a pointer or a screen reader gets for this mark. */
  readonly title?: string;
  readonly fill?: Paint;
  readonly stroke?: Stroke;
} & (
  | { readonly kind: "polygon"; readonly points: readonly Vec[] }
  | { readonly kind: "path"; readonly points: readonly Vec[] }
  /** Many lines with one stroke, such as a hatching or a grid: drawn at once, which is what makes them cheap. */
  | { readonly kind: "lines"; readonly paths: readonly (readonly Vec[])[] }
  | { readonly kind: "circle"; readonly at: Vec; readonly radius: number }
  /** A shaft with the stroke's width and a head with the fill; `head` is the head's length, px. */
  | { readonly kind: "arrow"; readonly from: Vec; readonly to: Vec; readonly head: number }
  /** Words with the fill's colour; a rim in the halo's colour keeps them readable over lines. */
  | {
      readonly kind: "text";
      readonly at: Vec;
      readonly words: string;
      /** px */
      readonly size: number;
      readonly bold?: boolean;
      readonly anchor: Anchor;
      readonly halo?: Paint;
    }
);

const samePaint = (a: Paint | undefined, b: Paint | undefined): boolean =>
  a === b ||
  (a !== undefined &&
    b !== undefined &&
    a.role === b.role &&
    a.to === b.to &&
    a.t === b.t &&
    a.hex === b.hex &&
    a.alpha === b.alpha);

const sameStroke = (a: Stroke | undefined, b: Stroke | undefined): boolean =>
  a === b ||
  (a !== undefined &&
    b !== undefined &&
    samePaint(a, b) &&
    a.px === b.px &&
    a.real === b.real &&
    a.dash?.[0] === b.dash?.[0] &&
    a.dash?.[1] === b.dash?.[1]);

const sameAt = (a: Vec, b: Vec): boolean => a.x === b.x && a.z === b.z;

function samePoints(a: readonly Vec[], b: readonly Vec[]): boolean {
  if (a === b) return true;
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (!sameAt(a[i] as Vec, b[i] as Vec)) return false;
  return true;
}

/** Two marks that look the same, at the same place. */
export function sameMark(a: Mark, b: Mark): boolean {
  if (a === b) return true;
  if (
    a.what !== b.what ||
    a.title !== b.title ||
    !samePaint(a.fill, b.fill) ||
    !sameStroke(a.stroke, b.stroke)
  )
    return false;
  switch (a.kind) {
    case "polygon":
    case "path":
      return b.kind === a.kind && samePoints(a.points, b.points);
    case "lines":
      return (
        b.kind === "lines" &&
        a.paths.length === b.paths.length &&
        a.paths.every((path, i) => samePoints(path, b.paths[i] ?? []))
      );
    case "circle":
      return b.kind === "circle" && sameAt(a.at, b.at) && a.radius === b.radius;
    case "arrow":
      return b.kind === "arrow" && sameAt(a.from, b.from) && sameAt(a.to, b.to) && a.head === b.head;
    case "text":
      return (
        b.kind === "text" &&
        sameAt(a.at, b.at) &&
        a.words === b.words &&
        a.size === b.size &&
        a.bold === b.bold &&
        sameAnchor(a.anchor, b.anchor) &&
        samePaint(a.halo, b.halo)
      );
  }
}

const sameAnchor = (a: Anchor, b: Anchor): boolean => a.x === b.x && a.y === b.y;

export type TextMark = Extract<Mark, { kind: "text" }>;

export function colourOf(paint: Paint, palette: Palette): Rgb {
  if (paint.hex !== undefined)
    return paint.hex === "#000000" && palette.dark ? palette.ink : rgbOf(paint.hex);
  return paint.to === undefined
    ? palette[paint.role]
    : mix(palette[paint.role], palette[paint.to], paint.t ?? 0);
}

/** Half the breadth of an arrow's head over its length. */
const HEAD_HALF = 0.36;

/** An arrow's shaft and head at a scale (px to the drawing's unit). A short arrow gets a short head. */
export function arrowShape(
  { from, to, head }: Extract<Mark, { kind: "arrow" }>,
  scale: number,
): { readonly shaft: readonly [Vec, Vec]; readonly head: readonly [Vec, Vec, Vec] } {
  const length = Math.hypot(to.x - from.x, to.z - from.z);
  const size = Math.min(head / scale, 0.6 * length);
  const [dx, dz] = length > 0 ? [(to.x - from.x) / length, (to.z - from.z) / length] : [0, 0];
  const neck = { x: to.x - dx * size, z: to.z - dz * size };
  const half = HEAD_HALF * size;
  return {
    shaft: [from, neck],
    head: [
      to,
      { x: neck.x - dz * half, z: neck.z + dx * half },
      { x: neck.x + dz * half, z: neck.z - dx * half },
    ],
  };
}

/** The same mark with each of its places mapped. */
function mapped(m: Mark, move: (p: Vec) => Vec): Mark {
  switch (m.kind) {
    case "circle":
    case "text":
      return { ...m, at: move(m.at) };
    case "arrow":
      return { ...m, from: move(m.from), to: move(m.to) };
    case "lines":
      return { ...m, paths: m.paths.map((path) => path.map(move)) };
    case "polygon":
    case "path":
      return { ...m, points: m.points.map(move) };
  }
}

/** The same marks turned by `angle` about the origin and then moved. */
export function movedMarks(marks: readonly Mark[], by: Vec, angle: number): Mark[] {
  const move = (p: Vec): Vec => {
    const t = turned(p, angle);
    return { x: t.x + by.x, z: t.z + by.z };
  };
  return marks.map((m) => mapped(m, move));
}

/** The same marks in another unit of length: `scale` of the new unit to one of the old. */
export function scaledMarks(marks: readonly Mark[], scale: number): Mark[] {
  return marks.map((m) => {
    const to = mapped(m, (p) => ({ x: p.x * scale, z: p.z * scale }));
    const stroke = m.stroke?.real === undefined ? m.stroke : { ...m.stroke, real: m.stroke.real * scale };
    return {
      ...to,
      ...(stroke === undefined ? {} : { stroke }),
      ...(to.kind === "circle" ? { radius: to.radius * scale } : {}),
    };
  });
}

/** Every place that a mark names; a circle by the corners of its box. A text counts by its place alone. */
export function placesOf(m: Mark): readonly Vec[] {
  switch (m.kind) {
    case "circle":
      return [
        { x: m.at.x - m.radius, z: m.at.z - m.radius },
        { x: m.at.x + m.radius, z: m.at.z + m.radius },
      ];
    case "text":
      return [m.at];
    case "arrow":
      return [m.from, m.to];
    case "lines":
      return m.paths.flat();
    case "polygon":
    case "path":
      return m.points;
  }
}

/** Box round marks, in their own unit. */
export const boxOfMarks = (marks: readonly Mark[]): Box => boxOf(marks.flatMap(placesOf));

/** What lies under a point of the same frame as the marks, front first; `tolerance` in the drawing's unit. */
export function pickFrom(marks: readonly Mark[], p: Vec, tolerance: number): string | null {
  for (let i = marks.length - 1; i >= 0; i--) {
    const m = marks[i];
    if (!m || m.what === null || m.kind === "text") continue;
    if (m.kind === "circle") {
      if (Math.hypot(p.x - m.at.x, p.z - m.at.z) <= m.radius + tolerance) return m.what;
    } else if (m.kind === "polygon" && m.fill) {
      if (insidePolygon(m.points, p)) return m.what;
    } else {
      const paths = m.kind === "lines" ? m.paths : m.kind === "arrow" ? [[m.from, m.to]] : [m.points];
      const reach = tolerance + (m.stroke?.real ?? 0) / 2;
      if (paths.some((path) => distanceToPath(p, path) <= reach)) return m.what;
    }
  }
  return null;
}
