/**
 * Colours of the stage. They come from the page's own design tokens (CSS custom properties), read where the stage
 * stands, so that light and dark follow the page:
 *
 *   --paper --ink --ink-soft --rule --water-top --water-deep --sky --floor --accent     asked for
 *   --bait-light --bait-dark --metal --ghost --variant-a … --variant-d                  optional, made from the others
 *
 * A token that is missing or cannot be read takes the fall-back below.
 */

export type Rgb = readonly [number, number, number];

export type Role =
  | "paper"
  | "ink"
  | "inkSoft"
  | "rule"
  | "waterTop"
  | "waterDeep"
  | "sky"
  | "floor"
  | "accent"
  | "baitLight"
  | "baitDark"
  | "metal"
  | "ghost"
  | "variantA"
  | "variantB"
  | "variantC"
  | "variantD";

export type Palette = Readonly<Record<Role, Rgb>> & { readonly dark: boolean; readonly font: string };

const TOKENS: readonly (readonly [Role, string])[] = [
  ["paper", "--paper"],
  ["ink", "--ink"],
  ["inkSoft", "--ink-soft"],
  ["rule", "--rule"],
  ["waterTop", "--water-top"],
  ["waterDeep", "--water-deep"],
  ["sky", "--sky"],
  ["floor", "--floor"],
  ["accent", "--accent"],
  ["baitLight", "--bait-light"],
  ["baitDark", "--bait-dark"],
  ["metal", "--metal"],
  ["ghost", "--ghost"],
  ["variantA", "--variant-a"],
  ["variantB", "--variant-b"],
  ["variantC", "--variant-c"],
  ["variantD", "--variant-d"],
];

const hex = (s: string): Rgb => {
  const v = Number.parseInt(s.slice(1), 16);
  return [(v >> 16) & 255, (v >> 8) & 255, v & 255];
};

export const mix = (a: Rgb, b: Rgb, t: number): Rgb => [
  a[0] + (b[0] - a[0]) * t,
  a[1] + (b[1] - a[1]) * t,
  a[2] + (b[2] - a[2]) * t,
];

/** 0xRRGGBB. */
export const numberOf = (c: Rgb): number =>
  (Math.round(c[0]) << 16) | (Math.round(c[1]) << 8) | Math.round(c[2]);

export const cssOf = (c: Rgb): string => `#${numberOf(c).toString(16).padStart(6, "0")}`;

/** Relative luminance (WCAG 2.2 definition), 0–1. */
export function luminance(c: Rgb): number {
  const [r, g, b] = c.map((v) => {
    const s = v / 255;
    return s <= 0.04045 ? s / 12.92 : Math.pow((s + 0.055) / 1.055, 2.4);
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

const LIGHT: Record<string, Rgb> = {
  paper: hex("#fbfaf6"),
  ink: hex("#16222d"),
  inkSoft: hex("#4d5a66"),
  rule: hex("#c6ccd0"),
  waterTop: hex("#e4eff2"),
  waterDeep: hex("#b4cdd7"),
  sky: hex("#f8f7f2"),
  floor: hex("#d8d0bf"),
  accent: hex("#0b668a"),
};
const DARK: Record<string, Rgb> = {
  paper: hex("#131b22"),
  ink: hex("#e8edf0"),
  inkSoft: hex("#a3b0ba"),
  rule: hex("#3a4751"),
  waterTop: hex("#20363f"),
  waterDeep: hex("#12232b"),
  sky: hex("#182128"),
  floor: hex("#38332a"),
  accent: hex("#71c7ea"),
};

/** Palette from what tokens could be read; the rest from the fall-backs, which follow the paper's lightness. */
export function paletteFrom(read: Partial<Record<Role, Rgb>>, prefersDark: boolean, font: string): Palette {
  const dark = read.paper ? luminance(read.paper) < 0.25 : prefersDark;
  const base = dark ? DARK : LIGHT;
  const of = (role: Role): Rgb => {
    const c = read[role] ?? base[role];
    if (!c) throw new Error(`palette: no colour for ${role}`);
    return c;
  };
  const paper = of("paper");
  const ink = of("ink");
  return {
    dark,
    font,
    paper,
    ink,
    inkSoft: of("inkSoft"),
    rule: of("rule"),
    waterTop: of("waterTop"),
    waterDeep: of("waterDeep"),
    sky: of("sky"),
    floor: of("floor"),
    accent: of("accent"),
    baitLight: read.baitLight ?? (dark ? mix(paper, ink, 0.62) : mix(paper, ink, 0.0)),
    baitDark: read.baitDark ?? (dark ? mix(paper, ink, 0.24) : mix(paper, ink, 0.38)),
    ghost: read.ghost ?? of("accent"),
    variantA: read.variantA ?? read.ghost ?? of("accent"),
    variantB: read.variantB ?? read.ghost ?? of("accent"),
    variantC: read.variantC ?? read.ghost ?? of("accent"),
    variantD: read.variantD ?? read.ghost ?? of("accent"),
    metal: read.metal ?? mix(paper, ink, dark ? 0.8 : 0.62),
  };
}

/** The browser's own reading of any CSS colour (hex, rgb, hsl, oklch, color-mix …), or null. */
function readColour(text: string): Rgb | null {
  if (text === "") return null;
  if (/^#[0-9a-f]{6}$/i.test(text)) return hex(text);
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

/** Reads the palette where `element` stands in the page. */
export function readPalette(element: Element): Palette {
  const style = getComputedStyle(element);
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
  return paletteFrom(
    read,
    matchMedia("(prefers-color-scheme: dark)").matches,
    style.fontFamily || "sans-serif",
  );
}

/** Calls back whenever the page may have changed its colours: system scheme, or attributes of the root. Returns the end of it. */
export function watchPalette(element: Element, changed: (palette: Palette) => void): () => void {
  const again = (): void => changed(readPalette(element));
  const media = matchMedia("(prefers-color-scheme: dark)");
  media.addEventListener("change", again);
  const observer = new MutationObserver(again);
  observer.observe(document.documentElement, {
    attributes: true,
    attributeFilter: ["class", "style", "data-theme"],
  });
  observer.observe(document.body, { attributes: true, attributeFilter: ["class", "style", "data-theme"] });
  return () => {
    media.removeEventListener("change", again);
    observer.disconnect();
  };
}
