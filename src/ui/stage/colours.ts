import {
  forcedPalette,
  paletteFrom,
  rgbOf,
  TOKENS,
  type Palette,
  type Rgb,
  type Role,
  type SystemColours,
} from "../../drawing";

/** The browser's own reading of any CSS colour (hex, rgb, hsl, oklch, color-mix …), or null. */
function readColour(text: string): Rgb | null {
  if (text === "") return null;
  if (/^#[0-9a-f]{6}$/i.test(text)) return rgbOf(text);
  const canvas = document.createElement("canvas");
  canvas.width = canvas.height = 1;
  const context = canvas.getContext("2d", { willReadFrequently: true });
  if (!context) return null;
  context.fillStyle = "#010203";
  context.fillStyle = text;
  if (context.fillStyle === "#010203") return null;
  context.fillRect(0, 0, 1, 1);
  const [r, g, b] = context.getImageData(0, 0, 1, 1).data;
  return r === undefined || g === undefined || b === undefined ? null : [r, g, b];
}

const FORCED = "(forced-colors: active)";

/** The colours that the system imposes. The page's own tokens say nothing then. */
function systemColours(element: Element): SystemColours {
  const probe = document.createElement("span");
  probe.hidden = true;
  // Else the browser would answer each question with the colour of text.
  probe.style.setProperty("forced-color-adjust", "none");
  element.appendChild(probe);
  const read = (name: string): Rgb | null => {
    probe.style.color = name;
    return readColour(getComputedStyle(probe).color);
  };
  const [canvas, text, link] = [read("Canvas"), read("CanvasText"), read("LinkText")];
  probe.remove();
  const dark = matchMedia("(prefers-color-scheme: dark)").matches;
  const ground = canvas ?? rgbOf(dark ? "#000000" : "#ffffff");
  const ink = text ?? rgbOf(dark ? "#ffffff" : "#000000");
  return { canvas: ground, text: ink, link: link ?? ink };
}

/** Reads the palette where `element` stands in the page. */
export function readPalette(element: Element): Palette {
  const style = getComputedStyle(element);
  const font = style.fontFamily || "sans-serif";
  if (matchMedia(FORCED).matches) return forcedPalette(systemColours(element), font);
  // A probe resolves var(), light-dark() and the like that a custom property's own text may hold.
  const probe = document.createElement("span");
  probe.hidden = true;
  element.appendChild(probe);
  const read: Partial<Record<Role, Rgb>> = {};
  for (const [role, token] of TOKENS) {
    if (style.getPropertyValue(token).trim() === "") continue;
    probe.style.color = `var(${token})`;
    const colour = readColour(getComputedStyle(probe).color);
    if (colour) read[role] = colour;
  }
  probe.remove();
  return paletteFrom(read, matchMedia("(prefers-color-scheme: dark)").matches, font);
}

/**
 * Calls back whenever the page may have changed its colours (system scheme, forced colours, attributes of the root), and
 * when a typeface has come: words that are already painted must be painted anew with it. Returns the end of it.
 */
export function watchPalette(element: Element, changed: (palette: Palette) => void): () => void {
  const again = (): void => changed(readPalette(element));
  const media = ["(prefers-color-scheme: dark)", FORCED].map((query) => matchMedia(query));
  for (const one of media) one.addEventListener("change", again);
  document.fonts.addEventListener("loadingdone", again);
  const observer = new MutationObserver(again);
  observer.observe(document.documentElement, {
    attributes: true,
    attributeFilter: ["class", "style", "data-theme"],
  });
  observer.observe(document.body, { attributes: true, attributeFilter: ["class", "style", "data-theme"] });
  return () => {
    for (const one of media) one.removeEventListener("change", again);
    document.fonts.removeEventListener("loadingdone", again);
    observer.disconnect();
  };
}
