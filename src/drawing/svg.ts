import type { Vec } from "../model/base";
import { arrowShape, colourOf, sameMark, type Mark, type Paint, type Stroke, type TextMark } from "./mark";
import { cssOf, type Palette } from "./palette";
import type { Box } from "./types";

/** One element of an SVG picture. The page's component and the writer of files make the same picture of it. */
export interface SvgElement {
  readonly tag: "polygon" | "polyline" | "path" | "circle" | "text";
  readonly attributes: Readonly<Record<string, string>>;
  /** Content of a text. */
  readonly words?: string;
  readonly title?: string;
}

/** How a drawing becomes SVG. */
export interface SvgOptions {
  readonly palette: Palette;
  /** px to the drawing's unit of length. */
  readonly scale: number;
  /** Digits after the point of a place, px; 2 where nothing is said. */
  readonly digits?: number;
  /** The picture is made larger and smaller as a whole: lines whose width is in px keep it. */
  readonly enlarged?: boolean;
}

/** How far a text's middle lies above its base line, as a share of its size: about half the height of a capital. */
const HALF_CAPITAL = 0.36;

/** What follows the units of a number of hundredths: "", ".01" … ".1" … ".99". */
const HUNDREDTHS = 2;
const TAILS = Array.from({ length: 100 }, (_, k) => String(k / 100).slice(1));
/** Below this, sums of hundredths are exact. */
const MOST = 2 ** 31;

/** The marks as SVG elements, from back to front. */
export function svgElements(
  marks: readonly Mark[],
  { palette, scale, digits = 2, enlarged = false }: SvgOptions,
): SvgElement[] {
  const parts = 10 ** digits;
  const tails = digits === HUNDREDTHS ? TAILS : null;
  const number = (v: number): string => {
    if (!Number.isFinite(v))
      throw new RangeError(`an SVG picture cannot hold ${v}: find out where it comes from`);
    // The same digits as by toFixed, in a tenth of its time: a board of many parts writes thousands of numbers a frame.
    const whole = Math.round(v * parts);
    if (tails === null || Math.abs(whole) > MOST) return String(whole / parts + 0);
    // Whole numbers are written faster than others.
    const size = Math.abs(whole);
    const units = Math.trunc(size / parts);
    return `${whole < 0 ? "-" : ""}${units}${tails[size - units * parts] ?? ""}`;
  };
  const point = (p: Vec): string => `${number(p.x * scale)},${number(-p.z * scale)}`;
  const points = (list: readonly Vec[]): string => list.map(point).join(" ");
  const filled = (paint: Paint | undefined): Record<string, string> => ({
    fill: paint ? cssOf(colourOf(paint, palette)) : "none",
    ...(paint?.alpha === undefined ? {} : { "fill-opacity": number(paint.alpha) }),
  });
  const stroked = (stroke: Stroke | undefined): Record<string, string> =>
    stroke
      ? {
          stroke: cssOf(colourOf(stroke, palette)),
          "stroke-width": number(Math.max(stroke.px, (stroke.real ?? 0) * scale)),
          ...(enlarged && stroke.px >= (stroke.real ?? 0) * scale
            ? { "vector-effect": "non-scaling-stroke" }
            : {}),
          "stroke-linejoin": "round",
          "stroke-linecap": stroke.dash ? "butt" : "round",
          ...(stroke.alpha === undefined ? {} : { "stroke-opacity": number(stroke.alpha) }),
          ...(stroke.dash ? { "stroke-dasharray": stroke.dash.map(number).join(" ") } : {}),
        }
      : {};
  const textOf = (m: TextMark): SvgElement => ({
    tag: "text",
    words: m.words,
    attributes: {
      x: number(m.at.x * scale),
      // The base line, counted from the side that the anchor names.
      y: number(-m.at.z * scale + m.size * ([0.8, HALF_CAPITAL, -0.2][2 * m.anchor.y] ?? 0)),
      "font-size": number(m.size),
      "font-family": palette.font,
      ...(m.bold ? { "font-weight": "600" } : {}),
      "text-anchor": m.anchor.x === 0 ? "start" : m.anchor.x === 1 ? "end" : "middle",
      ...filled(m.fill),
      ...(m.halo
        ? {
            stroke: cssOf(colourOf(m.halo, palette)),
            "stroke-width": "3",
            "stroke-linejoin": "round",
            "paint-order": "stroke",
          }
        : {}),
    },
  });
  return marks.flatMap((m): SvgElement[] => {
    const title = m.title === undefined ? {} : { title: m.title };
    switch (m.kind) {
      case "text":
        return [{ ...textOf(m), ...title }];
      case "circle":
        return [
          {
            tag: "circle",
            attributes: {
              cx: number(m.at.x * scale),
              cy: number(-m.at.z * scale),
              r: number(Math.max(1, m.radius * scale)),
              ...filled(m.fill),
              ...stroked(m.stroke),
            },
            ...title,
          },
        ];
      case "polygon":
        return [
          {
            tag: "polygon",
            attributes: { points: points(m.points), ...filled(m.fill), ...stroked(m.stroke) },
            ...title,
          },
        ];
      case "path":
        return [
          {
            tag: "polyline",
            attributes: { points: points(m.points), ...filled(m.fill), ...stroked(m.stroke) },
            ...title,
          },
        ];
      case "lines":
        return [
          {
            tag: "path",
            attributes: {
              d: m.paths.map((path) => `M${path.map(point).join("L")}`).join(""),
              ...filled(undefined),
              ...stroked(m.stroke),
            },
            ...title,
          },
        ];
      case "arrow": {
        const { shaft, head } = arrowShape(m, scale);
        const edge = m.stroke && { ...m.stroke, px: Math.min(m.stroke.px, 1.8) };
        return [
          {
            tag: "polyline",
            attributes: { points: points(shaft), fill: "none", ...stroked(m.stroke) },
            ...title,
          },
          { tag: "polygon", attributes: { points: points(head), ...filled(m.fill), ...stroked(edge) } },
        ];
      }
    }
  });
}

/**
 * The elements of a drawing that is made anew at each move of a hand: those of a mark that is as it was stay the objects that
 * they were. To see that costs a tenth of writing its places anew.
 */
export function svgKeeper(): (marks: readonly Mark[], options: SvgOptions) => readonly SvgElement[] {
  let kept: { readonly mark: Mark; readonly elements: readonly SvgElement[] }[] = [];
  let last: SvgOptions | null = null;
  let all: readonly SvgElement[] = [];
  return (marks, options) => {
    const known =
      last !== null &&
      last.palette === options.palette &&
      last.scale === options.scale &&
      last.digits === options.digits &&
      last.enlarged === options.enlarged;
    const before = known ? kept : [];
    last = options;
    let changed = !known || before.length !== marks.length;
    kept = marks.map((mark, i) => {
      const found = before[i];
      if (found !== undefined && sameMark(found.mark, mark)) return found;
      changed = true;
      return { mark, elements: svgElements([mark], options) };
    });
    if (changed) all = kept.flatMap((one) => one.elements);
    return all;
  };
}

/** Where the picture's frame lies, in the drawing's unit, and what the picture says of itself. */
export interface SvgFrame extends SvgOptions {
  readonly box: Box;
  /** What the picture shows, for those who do not see it; it is the file's title too. */
  readonly label: string;
  /** Draws the palette's paper behind everything. */
  readonly paper?: boolean;
  /** Size in the file, with its unit ("80mm"); absent: the picture fills what holds it. */
  readonly size?: { readonly width: string; readonly height: string };
}

/** Whether XML 1.0 allows a character at all (its production 2). Halves of surrogate pairs are not characters. */
function allowed(c: string): boolean {
  const code = c.codePointAt(0) ?? 0;
  if (code < 0x20) return code === 0x9 || code === 0xa || code === 0xd;
  return !(code >= 0xd800 && code <= 0xdfff) && code !== 0xfffe && code !== 0xffff;
}

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/**
 * Any text as XML content or as an attribute's value: names come from files of strangers. Characters that XML does not
 * allow are left out.
 */
export const escaped = (text: string): string =>
  Array.from(text, (c) => (allowed(c) ? (ENTITIES[c] ?? c) : "")).join("");

/** The drawing as the text of an SVG file. It holds no script, no style and no reference to anything outside. */
export function svgOf(marks: readonly Mark[], frame: SvgFrame): string {
  const { box, scale, palette, label, size } = frame;
  const part = (v: number): string => Number((v * scale).toFixed(frame.digits ?? 2)).toString();
  const attributes = (list: Readonly<Record<string, string>>): string =>
    Object.entries(list)
      .map(([name, value]) => ` ${name}="${escaped(value)}"`)
      .join("");
  const [x, y, w, h] = [
    part(box.minX),
    part(-box.maxZ),
    part(box.maxX - box.minX),
    part(box.maxZ - box.minZ),
  ];
  const body = svgElements(marks, frame).map(({ tag, attributes: list, words, title }) => {
    const inside = `${title === undefined ? "" : `<title>${escaped(title)}</title>`}${words === undefined ? "" : escaped(words)}`;
    return `<${tag}${attributes(list)}${inside === "" ? "/>" : `>${inside}</${tag}>`}`;
  });
  const paper = frame.paper
    ? `<rect x="${x}" y="${y}" width="${w}" height="${h}" fill="${cssOf(palette.paper)}"/>`
    : "";
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${x} ${y} ${w} ${h}"${size ? attributes({ ...size }) : ""} role="img" aria-label="${escaped(label)}"><title>${escaped(label)}</title>${paper}${body.join("")}</svg>`;
}
