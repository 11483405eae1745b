const SVG = "http://www.w3.org/2000/svg";

/** What of an element's computed style makes its look. */
const LOOK = [
  "fill",
  "fill-opacity",
  "stroke",
  "stroke-width",
  "stroke-dasharray",
  "stroke-linecap",
  "stroke-linejoin",
  "stroke-opacity",
  "opacity",
  "font-family",
  "font-size",
  "font-weight",
  "text-anchor",
  "dominant-baseline",
  "paint-order",
] as const;

const PAD = 12;
const SIZE = 13;
const LINE = 18;
/** Width of a letter as a share of its size, at most, on an average of words: who opens the file may lack the page's typeface. */
const LETTER = { regular: 0.6, bold: 0.68 } as const;
const FOOT = 30;
/** Lengths that a scale's bar may have, mm. */
const BARS = [1, 2, 5, 10, 20, 50, 100, 200];

/** A picture of a view: its title, what it is, and its lines. */
export interface Titled {
  readonly title: string;
  readonly what: string;
}

function withLook(source: SVGSVGElement): SVGSVGElement {
  const copy = source.cloneNode(true) as SVGSVGElement;
  const originals = source.querySelectorAll<SVGElement>("*");
  copy.querySelectorAll<SVGElement>("*").forEach((node, i) => {
    const original = originals[i];
    if (original === undefined) return;
    const style = getComputedStyle(original);
    if (style.display === "none" || style.visibility === "hidden") node.setAttribute("display", "none");
    for (const name of LOOK) {
      const value = style.getPropertyValue(name);
      if (value !== "") node.setAttribute(name, value);
    }
    node.removeAttribute("style");
  });
  // What the pointer happens to show, what reaches beyond the file, and photos, which stay on the device.
  const away = copy.querySelectorAll(".passing, .cursor, image, foreignObject, script, a[href]");
  for (const node of away) node.remove();
  for (const node of copy.querySelectorAll("[class]")) node.removeAttribute("class");
  copy.removeAttribute("class");
  copy.removeAttribute("style");
  return copy;
}

const made = (kind: string, values: Readonly<Record<string, string | number>>): SVGElement => {
  const node = document.createElementNS(SVG, kind);
  for (const [name, value] of Object.entries(values)) node.setAttribute(name, String(value));
  return node;
};

/** Words in lines of at most so many letters; a longer word has a line of its own. */
export function inLines(text: string, most: number): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(" ")) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= most)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** The longest bar that takes at most a third of the width. `mm`: screen px to a millimetre. */
const barFor = (mm: number, width: number): number | undefined =>
  BARS.filter((one) => one * mm <= width / 3).at(-1);

/**
 * An SVG of the page as a file of its own: its computed look written into it, title above, and below it the scale where it is
 * a drawing (`data-mm`: how many of its units a millimetre has). It holds no script and no reference to anything outside.
 */
export function standalone(source: SVGSVGElement, { title, what }: Titled): SVGSVGElement {
  const { width, height } = source.getBoundingClientRect();
  const style = getComputedStyle(source);
  const paper = style.getPropertyValue("--paper").trim() || "#ffffff";
  const ink = style.color;
  const perMm = Number(source.dataset["mm"] ?? NaN) * (source.getScreenCTM()?.a ?? NaN);
  const bar = Number.isFinite(perMm) ? barFor(perMm, width) : undefined;
  // A narrow picture has a sheet on which its words have room.
  const room = Math.max(width, title.length * SIZE * LETTER.bold);
  const told = inLines(what, Math.floor(room / (SIZE * LETTER.regular)));
  const head = LINE * (1 + told.length) + 8;
  const whole = { width: room + 2 * PAD, height: height + head + (bar === undefined ? PAD : FOOT) };
  const sheet = made("svg", { xmlns: SVG, ...whole, viewBox: `0 0 ${whole.width} ${whole.height}` });
  const words = (text: string, x: number, y: number, weight: number): void => {
    const node = made("text", {
      x,
      y,
      fill: ink,
      "font-family": style.fontFamily,
      "font-size": SIZE,
      "font-weight": weight,
    });
    node.textContent = text;
    sheet.append(node);
  };
  sheet.append(made("rect", { ...whole, fill: paper }));
  words(title, PAD, LINE, 600);
  told.forEach((line, i) => words(line, PAD, LINE * (2 + i), 400));
  // A page to be printed is white whatever the page round it is.
  const ground = style.backgroundColor;
  if (!/^(?:transparent|rgba\(.*, 0\))$/.test(ground))
    sheet.append(made("rect", { x: PAD, y: head, width, height, fill: ground }));
  const copy = withLook(source);
  if (!source.hasAttribute("viewBox")) copy.setAttribute("viewBox", `0 0 ${width} ${height}`);
  for (const [name, value] of Object.entries({ x: PAD, y: head, width, height }))
    copy.setAttribute(name, String(value));
  sheet.append(copy);
  if (bar !== undefined) {
    const y = head + height + 12;
    const end = PAD + bar * perMm;
    sheet.append(
      made("path", {
        d: `M${PAD} ${y - 4}v8M${PAD} ${y}H${end}M${end} ${y - 4}v8`,
        fill: "none",
        stroke: ink,
        "stroke-width": 1,
      }),
    );
    words(`${bar} mm`, end + 6, y + 4, 400);
  }
  return sheet as SVGSVGElement;
}

export const svgText = (svg: SVGSVGElement): string =>
  `<?xml version="1.0" encoding="UTF-8"?>\n${new XMLSerializer().serializeToString(svg)}\n`;

/** The same as a PNG, `scale` pixels to a pixel on the screen; where there is none, why not. */
export async function pngOf(svg: SVGSVGElement, scale = 2): Promise<Blob | "noCanvas" | "notWritten"> {
  const url = URL.createObjectURL(new Blob([svgText(svg)], { type: "image/svg+xml" }));
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    const canvas = document.createElement("canvas");
    canvas.width = Math.round(svg.width.baseVal.value * scale);
    canvas.height = Math.round(svg.height.baseVal.value * scale);
    const context = canvas.getContext("2d");
    if (context === null) return "noCanvas";
    context.drawImage(image, 0, 0, canvas.width, canvas.height);
    return await new Promise((done) => canvas.toBlob((blob) => done(blob ?? "notWritten")));
  } finally {
    URL.revokeObjectURL(url);
  }
}
