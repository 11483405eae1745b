import svgpath from "svgpath";
import type { Told, TraceKey } from "../../../words/trace";
import type { Px } from "./place";
import type { Drawing } from "./picture";

/** Greatest text, letters; shapes that are looked at; corners in all. */
const LONGEST_TEXT = 1_000_000;
const MOST_SHAPES = 2000;
const MOST_CORNERS = 20_000;
/** Outlines that are offered, the largest first. */
const OFFERED = 12;
/** Longest side of the drawing as it is kept, in px of its own. */
const SIDE = 2000;
/** A curve is cut into straight pieces that leave it by no more than this share of the drawing. */
const FINE = 1e-4;
/** A path whose ends come together within this share of its size is closed. */
const CLOSED = 0.005;

type Read = { readonly ok: true; readonly drawing: Drawing } | { readonly ok: false; readonly why: Told };
/** Why no outline can be read: a text without places. */
type Reason = Exclude<Extract<TraceKey, `svg.${string}`>, "svg.shapes">;
const no = (why: Reason): Read => ({ ok: false, why: (words) => words.tell(why) });

/**
 * The closed outlines in the text of an SVG file, or in the text of one path. The file is parsed and never put on the page:
 * nothing of it is drawn, run or loaded, and what it refers to elsewhere is left out.
 */
export function readDrawing(text: string): Read {
  const plain = text.replace(/^\uFEFF/, "").trim();
  if (plain.length > LONGEST_TEXT) return no("svg.long");
  if (plain === "") return no("svg.empty");
  const shapes = plain.startsWith("<") ? shapesOf(plain) : [{ d: plain, transform: "" }];
  if (typeof shapes === "string") return no(shapes);
  if (shapes.length === 0) return no("svg.none");
  if (shapes.length > MOST_SHAPES)
    return { ok: false, why: (words) => words.tell("svg.shapes", { shapes: shapes.length }) };
  const rough = shapes.flatMap((shape) => linesOf(shape, 1));
  const size = extent(rough.flatMap(({ points }) => points));
  if (!(size.width > 0 || size.height > 0)) return no(plain.startsWith("<") ? "svg.size" : "svg.path");
  const fine = FINE * Math.max(size.width, size.height);
  const lines = shapes.flatMap((shape) => linesOf(shape, fine));
  if (lines.reduce((sum, { points }) => sum + points.length, 0) > MOST_CORNERS) return no("svg.corners");
  const rings = lines
    .filter(({ points, closed }) => closed && points.length > 2)
    .map(({ points }) => ({ points, area: Math.abs(area(points)) }))
    .filter((one) => one.area > 0)
    .sort((a, b) => b.area - a.area)
    .slice(0, OFFERED)
    .map(({ points }) => points);
  if (rings.length === 0) return no("svg.open");
  const box = extent(rings.flat());
  const by = SIDE / Math.max(box.width, box.height);
  return {
    ok: true,
    drawing: {
      rings: rings.map((ring) => ring.map(({ u, v }) => ({ u: (u - box.u) * by, v: (v - box.v) * by }))),
      width: box.width * by,
      height: box.height * by,
    },
  };
}

interface Shape {
  /** Path data. */
  readonly d: string;
  readonly transform: string;
}

/** The shapes of an SVG file; a text is the reason why it cannot be read. */
function shapesOf(text: string): readonly Shape[] | Reason {
  if (/<!ENTITY/i.test(text)) return "svg.entities";
  const { documentElement: root } = new DOMParser().parseFromString(text, "image/svg+xml");
  if (root.nodeName !== "svg" || root.querySelector("parsererror") !== null) return "svg.damaged";
  return [...root.querySelectorAll("path, polygon, polyline, rect, circle, ellipse")].flatMap((element) => {
    // Shapes inside these are not drawn by themselves.
    if (element.closest("defs, clipPath, mask, symbol, pattern, marker") !== null) return [];
    const d = pathOf(element);
    return d === null ? [] : [{ d, transform: transformOf(element) }];
  });
}

/** The transforms of an element and of all around it, the outermost first. */
function transformOf(element: Element): string {
  const all: string[] = [];
  for (let at: Element | null = element; at !== null; at = at.parentElement)
    all.unshift(at.getAttribute("transform") ?? "");
  return all.join(" ").trim();
}

/** A shape as path data; null where it has no size. Source: SVG 2, chapter 10 (Basic shapes). */
function pathOf(element: Element): string | null {
  const number = (name: string): number => Number.parseFloat(element.getAttribute(name) ?? "0");
  const round = (cx: number, cy: number, rx: number, ry: number): string | null =>
    rx > 0 && ry > 0
      ? `M${cx - rx} ${cy}A${rx} ${ry} 0 1 0 ${cx + rx} ${cy}A${rx} ${ry} 0 1 0 ${cx - rx} ${cy}Z`
      : null;
  switch (element.nodeName) {
    case "path":
      return element.getAttribute("d");
    case "polygon":
      return `M${element.getAttribute("points") ?? ""}Z`;
    case "polyline":
      return `M${element.getAttribute("points") ?? ""}`;
    case "rect": {
      const [x, y, w, h] = [number("x"), number("y"), number("width"), number("height")];
      return w > 0 && h > 0 ? `M${x} ${y}h${w}v${h}h${-w}Z` : null;
    }
    case "circle":
      return round(number("cx"), number("cy"), number("r"), number("r"));
    case "ellipse":
      return round(number("cx"), number("cy"), number("rx"), number("ry"));
    default:
      return null;
  }
}

interface Line {
  readonly points: Px[];
  closed: boolean;
}

/** The lines of a shape, its curves cut into straight pieces that leave them by no more than `fine`. */
function linesOf({ d, transform }: Shape, fine: number): readonly Line[] {
  const lines: Line[] = [];
  let line: Line = { points: [], closed: false };
  let count = 0;
  const add = (u: number, v: number): void => {
    count += 1;
    if (Number.isFinite(u) && Number.isFinite(v) && count <= MOST_CORNERS + 1) line.points.push({ u, v });
  };
  const begin = (u: number, v: number): void => {
    line = { points: [], closed: false };
    lines.push(line);
    add(u, v);
  };
  const curve = (degree: 2 | 3, points: readonly Px[]): void => {
    for (const { u, v } of pieces(degree, points, fine)) add(u, v);
  };
  svgpath(d)
    .transform(transform)
    .abs()
    .unarc()
    .unshort()
    .iterate((segment, _, u, v) => {
      const from = { u, v };
      switch (segment[0]) {
        case "M":
          begin(segment[1], segment[2]);
          break;
        case "L":
          add(segment[1], segment[2]);
          break;
        case "H":
          add(segment[1], v);
          break;
        case "V":
          add(u, segment[1]);
          break;
        case "Q":
          curve(2, [from, { u: segment[1], v: segment[2] }, { u: segment[3], v: segment[4] }]);
          break;
        case "C":
          curve(3, [
            from,
            { u: segment[1], v: segment[2] },
            { u: segment[3], v: segment[4] },
            { u: segment[5], v: segment[6] },
          ]);
          break;
        case "Z":
        case "z": {
          line.closed = true;
          const [start] = line.points;
          // What follows without a move begins where the line began.
          if (start !== undefined) begin(start.u, start.v);
          break;
        }
        default:
        // After abs, unarc and unshort there are no others.
      }
    });
  return lines
    .filter(({ points }) => points.length > 1)
    .map((one) => ({ points: one.points, closed: one.closed || comesBack(one.points) }));
}

function comesBack(points: readonly Px[]): boolean {
  const [first, last] = [points[0], points.at(-1)];
  if (first === undefined || last === undefined) return false;
  const { width, height } = extent(points);
  return Math.hypot(last.u - first.u, last.v - first.v) < CLOSED * Math.max(width, height);
}

/**
 * Corners along a Bézier curve after its first. n pieces leave a curve of degree k by at most k(k − 1)/8·max|Δ²P|/n². Source:
 * Wang 1984, in Goldman 2003, Pyramid Algorithms, ch. 5 (bound of the second derivative).
 */
function pieces(degree: 2 | 3, points: readonly Px[], fine: number): readonly Px[] {
  const [a, b, c, d] = points;
  if (a === undefined || b === undefined || c === undefined) return [];
  const bend = (p: Px, q: Px, r: Px): number => Math.hypot(p.u - 2 * q.u + r.u, p.v - 2 * q.v + r.v);
  const most = Math.max(bend(a, b, c), d === undefined ? 0 : bend(b, c, d));
  const n = Math.min(400, Math.max(1, Math.ceil(Math.sqrt((degree * (degree - 1) * most) / (8 * fine)))));
  return Array.from({ length: n }, (_, i): Px => {
    const t = (i + 1) / n;
    const o = 1 - t;
    const mix = (of: (p: Px) => number): number =>
      d === undefined
        ? o * o * of(a) + 2 * o * t * of(b) + t * t * of(c)
        : o * o * o * of(a) + 3 * o * o * t * of(b) + 3 * o * t * t * of(c) + t * t * t * of(d);
    return { u: mix((p) => p.u), v: mix((p) => p.v) };
  });
}

function extent(points: readonly Px[]): { u: number; v: number; width: number; height: number } {
  let [u, v, right, low] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const p of points) {
    u = Math.min(u, p.u);
    v = Math.min(v, p.v);
    right = Math.max(right, p.u);
    low = Math.max(low, p.v);
  }
  return { u, v, width: right - u, height: low - v };
}

/** Area of a closed line, by the shoelace rule. */
const area = (ring: readonly Px[]): number =>
  ring.reduce((sum, { u, v }, i) => {
    const next = ring[(i + 1) % ring.length] ?? { u, v };
    return sum + (u * next.v - next.u * v) / 2;
  }, 0);
