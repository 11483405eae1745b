import { escaped } from "../../drawing";
import { LINES, type Box, type Item, type Point } from "../paper/page";

/** mm with at most three decimals. */
const mm = (value: number): string => Number(value.toFixed(3)).toString();
const greyOf = (grey: number): string => {
  const level = Math.round(255 * grey)
    .toString(16)
    .padStart(2, "0");
  return `#${level}${level}${level}`;
};
const path = (points: readonly Point[], closed: boolean): string =>
  `M${points.map(({ x, y }) => `${mm(x)} ${mm(y)}`).join("L")}${closed ? "Z" : ""}`;

/** One element of SVG: for a file, and for the preview. */
export interface Element {
  readonly tag: "path" | "text";
  readonly attributes: Readonly<Record<string, string>>;
  readonly words?: string;
}

/** The items as SVG elements in millimetres. */
export const svgOf = (items: readonly Item[]): Element[] =>
  items.map((item): Element => {
    switch (item.kind) {
      case "path": {
        const { width, dash, grey } = LINES[item.role];
        return {
          tag: "path",
          attributes: {
            class: item.role,
            d: path(item.points, item.closed),
            fill: "none",
            stroke: greyOf(grey),
            "stroke-width": mm(width),
            ...(dash.length > 0 ? { "stroke-dasharray": dash.join(" ") } : {}),
          },
        };
      }
      case "fill":
        return {
          tag: "path",
          attributes: {
            d: item.polygons.map((one) => path(one, true)).join(""),
            fill: greyOf(item.grey),
          },
        };
      case "text": {
        const [x, y] = [mm(item.at.x), mm(item.at.y)];
        return {
          tag: "text",
          attributes: {
            x,
            y,
            "font-family": "'Source Sans 3', sans-serif",
            "font-size": mm(item.size),
            ...(item.weight === "bold" ? { "font-weight": "600" } : {}),
            // The font may be another one on the device: the words take the same room all the same.
            textLength: mm(item.width),
            lengthAdjust: "spacingAndGlyphs",
            fill: greyOf(item.grey),
            ...(item.upright ? { transform: `rotate(-90 ${x} ${y})` } : {}),
          },
          words: item.words,
        };
      }
    }
  });

/** An SVG file in millimetres that says what it is. */
export function svgFile(items: readonly Item[], box: Box, title: string): string {
  const attributes = (list: Readonly<Record<string, string>>): string =>
    Object.entries(list)
      .map(([name, value]) => ` ${name}="${escaped(value)}"`)
      .join("");
  const [width, height] = [mm(box.maxX - box.minX), mm(box.maxY - box.minY)];
  const body = svgOf(items)
    .map(
      ({ tag, attributes: list, words }) =>
        `<${tag}${attributes(list)}${words === undefined ? "/>" : `>${escaped(words)}</${tag}>`}\n`,
    )
    .join("");
  return `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="${mm(box.minX)} ${mm(box.minY)} ${width} ${height}">
<title>${escaped(title)}</title>
${body}</svg>
`;
}
