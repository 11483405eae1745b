import { distanceToSegment } from "../model/base";
import type { Vec } from "../model/base";
import type { Bait } from "../model/bait";
import { boxOf } from "./geometry";
import { boxOfMarks, type Mark } from "./mark";
import type { Palette } from "./palette";
import { sceneOf } from "./scene";
import { heldStill, posedMarks } from "./still";
import { svgElements, svgOf, type SvgElement } from "./svg";
import type { Box } from "./types";

/** Width that a thumbnail is made for, px. */
const WIDTH = 160;
/** How far a simplified line may lie off the full one, px. */
const OFF = 0.3;
/** A thumbnail's greatest size in characters: lists hold hundreds of them. */
export const THUMBNAIL_LIMIT = 6000;
/** Longest name that a thumbnail says. */
const NAME = 80;

/** A line with as few of its points as stay within `off` of all of them (Ramer 1972, Douglas and Peucker 1973). */
export function simplified(points: readonly Vec[], off: number): Vec[] {
  const [a, b] = [points[0], points.at(-1)];
  if (!a || !b || points.length < 3) return [...points];
  let far = 0;
  let most = 0;
  points.forEach((p, i) => {
    const d = distanceToSegment(p, a, b);
    if (d > most) [most, far] = [d, i];
  });
  if (most <= off) return [a, b];
  return [...simplified(points.slice(0, far + 1), off).slice(0, -1), ...simplified(points.slice(far), off)];
}

/** A closed line: simplified from its two points that lie farthest apart along the bait. */
function simplifiedRound(points: readonly Vec[], off: number): Vec[] {
  const box = boxOf(points);
  const start = points.findIndex((p) => p.x === box.maxX);
  const turned = [...points.slice(start), ...points.slice(0, start)];
  const end = turned.findIndex((p) => p.x === box.minX);
  return [
    ...simplified(turned.slice(0, end + 1), off).slice(0, -1),
    ...simplified([...turned.slice(end), ...turned.slice(0, 1)], off).slice(0, -1),
  ];
}

const simpler = (m: Mark, off: number): Mark =>
  m.kind === "polygon"
    ? { ...m, points: simplifiedRound(m.points, off) }
    : m.kind === "path"
      ? { ...m, points: simplified(m.points, off) }
      : m;

/** What a thumbnail shows, the most important first: where its room ends, the rest is left out. */
const TELLING = ["body", "bib", "hook", "tie", "fitting", "wire", "ballast", "hanger"] as const;

/** What a thumbnail has in it, from back to front, and the frame round it. */
interface Small {
  readonly marks: readonly Mark[];
  readonly frame: Box;
  readonly scale: number;
  readonly label: string;
}

function smallOf(bait: Bait): Small {
  const full = sceneOf(bait, null, Infinity);
  // One tone for the upper skin and one for the lower instead of a shade for each slope.
  const scene = {
    ...full,
    tones: full.tones.filter((_, i) => i === 0 || i === Math.ceil(full.tones.length * 0.6)),
  };
  const snapshot = heldStill(scene, { x: 0, z: 0 }, 0);
  const all = posedMarks(scene, snapshot, false).filter((m) => !m.what?.startsWith("coat:"));
  const box = boxOfMarks(all);
  const pad = 0.03 * scene.length;
  const frame = { minX: box.minX - pad, maxX: box.maxX + pad, minZ: box.minZ - pad, maxZ: box.maxZ + pad };
  const scale = WIDTH / (frame.maxX - frame.minX);
  const marks = withGround(all, scene.outline).map((m) => simpler(m, OFF / scale));
  return { marks, frame, scale, label: full.name.slice(0, NAME) };
}

/** A thumbnail as plain figures, for a canvas: places in px of its own width and height. */
export interface Thumbnail {
  readonly elements: readonly SvgElement[];
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** A small picture of the bait from outside, in figures without words. */
export function thumbnailFigures(bait: Bait, palette: Palette): Thumbnail {
  const { marks, frame, scale } = smallOf(bait);
  return {
    elements: svgElements(marks, { palette, scale, digits: 1 }),
    left: frame.minX * scale,
    top: -frame.maxZ * scale,
    width: WIDTH,
    height: (frame.maxZ - frame.minZ) * scale,
  };
}

/** A small picture of the bait from outside, as an SVG text of at most 6,000 characters. */
export function thumbnailOf(bait: Bait, palette: Palette): string {
  const { marks: small, frame, scale, label } = smallOf(bait);
  const rank = (m: Mark): number => {
    const i = TELLING.findIndex((kind) => m.what === kind || m.what?.startsWith(`${kind}:`));
    return i < 0 ? TELLING.length : i;
  };
  const order = small.map((m, i) => ({ m, i })).sort((a, b) => rank(a.m) - rank(b.m) || a.i - b.i);
  const written = (count: number): string => {
    const kept = new Set(order.slice(0, count).map(({ i }) => i));
    return svgOf(
      small.filter((_, i) => kept.has(i)),
      { palette, scale, digits: 1, box: frame, label },
    );
  };
  let count = order.length;
  let text = written(count);
  while (text.length > THUMBNAIL_LIMIT && count > 1) {
    count = Math.max(1, count - Math.ceil(count / 12));
    text = written(count);
  }
  return text;
}

/** The body's tones on a ground of its whole outline, so that nothing shows between them. */
function withGround(marks: readonly Mark[], outline: readonly Vec[]): Mark[] {
  const first = marks.findIndex((m) => m.what === "body" && m.fill);
  const tone = marks[first];
  if (!tone?.fill) return [...marks];
  const ground: Mark = { kind: "polygon", what: "body", points: outline, fill: tone.fill };
  return [...marks.slice(0, first), ground, ...marks.slice(first + 1)];
}
