const SVG = "http://www.w3.org/2000/svg";

/** What of an element's computed style makes its look. */
const LOOK = [
  "fill",
  "fill-opacity",
  "stroke",
  "stroke-width",
  "stroke-dasharray",
  "stroke-linejoin",
  "stroke-opacity",
  "opacity",
  "font-family",
  "font-size",
  "font-weight",
  "paint-order",
] as const;

function chartOf(element: Element): SVGSVGElement {
  const found = element instanceof SVGSVGElement ? element : element.querySelector("svg.chart");
  if (!(found instanceof SVGSVGElement))
    throw new Error("exportPlotSVG: the element holds no plot; give the TimePlot's figure or its SVG");
  return found;
}

/** Height of the line above the plot that carries title and legend, px. */
const HEAD = 26;

/** The plot as a file of its own: styles written into it, title and legend above, on the page's paper. */
function standalone(element: Element): SVGSVGElement {
  const source = chartOf(element);
  const width = source.width.baseVal.value;
  const height = source.height.baseVal.value;
  const copy = source.cloneNode(true) as SVGSVGElement;
  const originals = source.querySelectorAll<SVGElement>("*");
  copy.querySelectorAll<SVGElement>("*").forEach((node, i) => {
    const original = originals[i];
    if (!original) return;
    const style = getComputedStyle(original);
    for (const name of LOOK) {
      const value = style.getPropertyValue(name);
      if (value !== "") node.setAttribute(name, value);
    }
  });
  // What the pointer happens to show does not belong into a file.
  for (const node of copy.querySelectorAll(".passing")) node.remove();
  for (const node of copy.querySelectorAll("[class]")) node.removeAttribute("class");
  copy.removeAttribute("class");
  const ink = getComputedStyle(source).color;
  const font = getComputedStyle(source).fontFamily;
  const paper = getComputedStyle(source).getPropertyValue("--paper").trim() || "#ffffff";
  const body = document.createElementNS(SVG, "g");
  body.setAttribute("transform", `translate(0 ${HEAD})`);
  body.append(...copy.childNodes);
  const sheet = document.createElementNS(SVG, "rect");
  sheet.setAttribute("width", String(width));
  sheet.setAttribute("height", String(height + HEAD));
  sheet.setAttribute("fill", paper);
  copy.append(sheet, body);
  const words = (text: string, x: number, weight: string): void => {
    const node = document.createElementNS(SVG, "text");
    node.textContent = text;
    for (const [name, value] of Object.entries({
      x,
      y: 17,
      fill: ink,
      "font-family": font,
      "font-size": "13px",
      "font-weight": weight,
    }))
      node.setAttribute(name, String(value));
    copy.append(node);
  };
  const title = source.dataset.title ?? "";
  words(title, 12, "600");
  let x = 24 + 7.6 * title.length;
  for (const curve of source.querySelectorAll<SVGPathElement>("path[data-label]")) {
    const sample = document.createElementNS(SVG, "line");
    const dash = curve.getAttribute("stroke-dasharray");
    for (const [name, value] of Object.entries({
      x1: x,
      x2: x + 22,
      y1: 13,
      y2: 13,
      stroke: getComputedStyle(curve).stroke,
      "stroke-width": 2,
      ...(dash === null ? {} : { "stroke-dasharray": dash }),
    }))
      sample.setAttribute(name, String(value));
    copy.append(sample);
    const label = curve.dataset.label ?? "";
    words(label, x + 28, "400");
    x += 44 + 7 * label.length;
  }
  copy.setAttribute("xmlns", SVG);
  copy.setAttribute("width", String(width));
  copy.setAttribute("height", String(height + HEAD));
  copy.setAttribute("viewBox", `0 0 ${width} ${height + HEAD}`);
  return copy;
}

/** A TimePlot (its figure, or anything round it) as the text of an SVG file. */
export function exportPlotSVG(element: Element): string {
  return `<?xml version="1.0" encoding="UTF-8"?>\n${new XMLSerializer().serializeToString(standalone(element))}\n`;
}

/** A TimePlot as a PNG file, `scale` pixels to a pixel on the screen. */
export async function exportPNG(element: Element, scale = 2): Promise<Blob> {
  const svg = standalone(element);
  const width = svg.width.baseVal.value;
  const height = svg.height.baseVal.value;
  const url = URL.createObjectURL(
    new Blob([new XMLSerializer().serializeToString(svg)], { type: "image/svg+xml" }),
  );
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    const canvas = document.createElement("canvas");
    canvas.width = Math.round(width * scale);
    canvas.height = Math.round(height * scale);
    const context = canvas.getContext("2d");
    if (!context) throw new Error("This browser offers no canvas to make a PNG with; save the plot as SVG");
    context.drawImage(image, 0, 0, canvas.width, canvas.height);
    const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done));
    if (blob === null) throw new Error("The browser could not write the PNG; save the plot as SVG");
    return blob;
  } finally {
    URL.revokeObjectURL(url);
  }
}
