import type { Vec } from "../../model/base";
import type { Bait, WireSpec } from "../../model/bait";
import { sketches, type Figure } from "../../model/parts";
import { sideCurve } from "../../drawing";
import { fromSI } from "../../units";
import { textBox, type Box, type Item, type Point } from "../paper/page";
import { TYPE, textAt, type Letters, type Pen } from "../paper/pen";
import { clippedTo } from "../paper/tile";

/** mm from m. */
export const mm = (metres: number): number => fromSI(metres, "mm");

/** Places of the bait on paper: the nose to the right, heights up, the nose tip at 0, 0. Lower: mirrored upside down. */
export interface Seen {
  (p: Vec): Point;
}
export const upright: Seen = (p) => ({ x: mm(p.x), y: 0 - mm(p.z) });
export const mirrored =
  (down: number): Seen =>
  (p) => ({ x: mm(p.x), y: down + mm(p.z) });

const apart = (a: Box, b: Box): boolean =>
  a.maxX <= b.minX || b.maxX <= a.minX || a.maxY <= b.minY || b.maxY <= a.minY;

const CLEAR = 0.6;
const grown = ({ minX, minY, maxX, maxY }: Box): Box => ({
  minX: minX - CLEAR,
  minY: minY - CLEAR,
  maxX: maxX + CLEAR,
  maxY: maxY + CLEAR,
});

/** Directions in which a label is looked for, the nearest first. */
const AROUND = [
  [1, -1],
  [-1, -1],
  [1, 1],
  [-1, 1],
  [0, -1],
  [0, 1],
  [1, 0],
  [-1, 0],
  [1, -0.5],
  [-1, -0.5],
  [1, 0.5],
  [-1, 0.5],
] as const;

/** What a label keeps clear of, and how far from its point it is looked for, mm. Words it always keeps clear of. */
const SEARCHES = [
  { lines: "all", end: 40 },
  { lines: "cut", end: 14 },
  { lines: "none", end: 400 },
] as const;
const FIRST = 1.6;
const STEP = 1.2;
/** Beyond this a line leads from the point to its label, mm. */
const BESIDE = 3;

const crosses = (item: Item, box: Box, lines: "all" | "cut"): boolean =>
  item.kind === "path" &&
  (lines === "all" || item.role === "cut") &&
  clippedTo(item.closed ? [...item.points, ...item.points.slice(0, 1)] : item.points, box).length > 0;

/**
 * Words beside a point, where no other words stand and, while there is room near by, no line is drawn; with a line to the point
 * where they had to go further away.
 */
export function label(pen: Pen, at: Point, words: string, letters: Letters = {}): void {
  const { size = TYPE.small } = letters;
  const taken = pen.items.flatMap((item) => (item.kind === "text" ? [textBox(item)] : []));
  const probe = textAt(pen.fonts, at, pen.words(words), { ...letters, size });
  for (const { lines, end } of SEARCHES)
    for (let away = FIRST; away < end; away += STEP)
      for (const [sx, sy] of AROUND) {
        const x = at.x + sx * away + (sx > 0 ? 0 : sx < 0 ? -probe.width : -probe.width / 2);
        const y = at.y + sy * away + (sy > 0 ? 0.75 * size : sy < 0 ? 0 : 0.3 * size);
        const item = { ...probe, at: { x, y } };
        const box = textBox(item);
        const own = grown(box);
        if (!taken.every((one) => apart(one, own))) continue;
        if (lines !== "none" && pen.items.some((one) => crosses(one, own, lines))) continue;
        const near = {
          x: Math.min(Math.max(at.x, box.minX), box.maxX),
          y: Math.min(Math.max(at.y, box.minY), box.maxY),
        };
        const leads = away > BESIDE;
        if (leads && taken.some((one) => clippedTo([at, near], one).length > 0)) continue;
        pen.items.push(item);
        if (leads) pen.line("rule", at, near);
        return;
      }
  throw new Error(`There is no room for the words “${words}” on the sheet.`);
}

/** A scale of stations below a drawing: mm from the nose tip. */
export function stationScale(pen: Pen, length: number, y: number): void {
  const whole = mm(length);
  const step = whole < 40 ? 5 : 10;
  pen.line("rule", { x: 0, y }, { x: -whole, y });
  for (let s = 0; s <= whole + 1e-9; s += step / 2)
    pen.line("rule", { x: -s, y }, { x: -s, y: y + (s % step === 0 ? 2 : 1.2) });
  for (let s = 0; s <= whole + 1e-9; s += step)
    pen.text({ x: -s, y: y + 4.4 }, String(s), { size: TYPE.tiny, anchor: 0.5 });
  pen.text({ x: -whole / 2, y: y + 7.6 }, "mm from the nose", { size: TYPE.tiny, anchor: 0.5 });
}

/** The datum line, a little longer than the body. */
export function datum(pen: Pen, bait: Bait, seen: Seen): void {
  const over = 0.006;
  pen.line("axis", seen({ x: over, z: 0 }), seen({ x: -bait.drawn.length - over, z: 0 }));
}

export const outlineOf = (bait: Bait, seen: Seen): Point[] => sideCurve(bait.drawn).map(seen);

/** Lines of one entry of the bait in a layer, as it is drawn from the side. `path`: the entry's place in the document. */
export const linesOf = (bait: Bait, path: string, layer: Figure["layer"]): readonly (readonly Vec[])[] =>
  sketches(bait.spec, bait)
    .filter((one) => one.path === path)
    .flatMap((one) => one.figures.flatMap((f) => (f.layer === layer && f.is !== "circle" ? [f.points] : [])));

/** The channel of a wire: both its edges and its middle. */
export function channel(pen: Pen, wire: WireSpec, paths: readonly (readonly Vec[])[], seen: Seen): void {
  const half = wire.diameter / 2;
  for (const path of paths) {
    pen.line("axis", ...path.map(seen));
    path.forEach((b, i) => {
      const a = path[i - 1];
      if (!a) return;
      const size = Math.sqrt((b.x - a.x) * (b.x - a.x) + (b.z - a.z) * (b.z - a.z));
      if (size === 0) return;
      const n = { x: (-(b.z - a.z) / size) * half, z: ((b.x - a.x) / size) * half };
      for (const side of [1, -1])
        pen.line(
          "mark",
          seen({ x: a.x + side * n.x, z: a.z + side * n.z }),
          seen({ x: b.x + side * n.x, z: b.z + side * n.z }),
        );
    });
  }
}

/** The bib seen edge on: its part outside and its tongue. */
export function bibEdge(pen: Pen, bait: Bait, seen: Seen, parts: "all" | "tongue"): void {
  for (const tongue of linesOf(bait, "bait.bib", "inside")) pen.ring("mark", tongue.map(seen));
  if (parts === "tongue") return;
  for (const plate of linesOf(bait, "bait.bib", "behind")) pen.ring("hidden", plate.map(seen));
}
