import type { SvgElement, Thumbnail } from "../../../drawing";

/** Dots of a picture to one px of it: it stays sharp on a screen of fine dots, and where the page is shown larger. */
const DOTS = 2;

/** The outline of a figure as the canvas wants it. */
function pathOf({ tag, attributes: a }: SvgElement): Path2D {
  if (tag === "path") return new Path2D(a["d"] ?? "");
  if (tag !== "circle")
    return new Path2D(`M${(a["points"] ?? "").replaceAll(" ", "L")}${tag === "polygon" ? "Z" : ""}`);
  const path = new Path2D();
  path.arc(Number(a["cx"]), Number(a["cy"]), Number(a["r"]), 0, 2 * Math.PI);
  return path;
}

/**
 * A thumbnail as a PNG in an address. A browser shows hundreds of these at once; an SVG picture is a whole document to it, and
 * takes some milliseconds each.
 */
export async function bitmapOf({ elements, left, top, width, height }: Thumbnail): Promise<string> {
  const canvas = new OffscreenCanvas(Math.ceil(DOTS * width), Math.max(1, Math.ceil(DOTS * height)));
  const pen = canvas.getContext("2d");
  if (pen === null) throw new Error("this browser has no canvas to draw small pictures on");
  pen.scale(DOTS, DOTS);
  pen.translate(-left, -top);
  for (const element of elements) {
    const { attributes: a } = element;
    const path = pathOf(element);
    if (a["fill"] !== undefined && a["fill"] !== "none") {
      pen.fillStyle = a["fill"];
      pen.globalAlpha = Number(a["fill-opacity"] ?? 1);
      pen.fill(path);
    }
    if (a["stroke"] === undefined) continue;
    pen.strokeStyle = a["stroke"];
    pen.globalAlpha = Number(a["stroke-opacity"] ?? 1);
    pen.lineWidth = Number(a["stroke-width"]);
    pen.lineJoin = "round";
    pen.lineCap = a["stroke-linecap"] === "butt" ? "butt" : "round";
    pen.setLineDash((a["stroke-dasharray"] ?? "").split(" ").filter(Boolean).map(Number));
    pen.stroke(path);
  }
  const bytes = new Uint8Array(await (await canvas.convertToBlob()).arrayBuffer());
  return `data:image/png;base64,${btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(""))}`;
}
