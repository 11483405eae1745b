/**
 * Colours of the drawings. On the page they come from its design tokens (CSS custom properties), read where the
 * drawing stands, so that light and dark follow the page:
 *
 *   --paper --ink --ink-soft --rule --water-top --water-deep --sky --floor --accent     asked for
 *   --bait-light --bait-dark --wood-light --wood-dark --coat-light --coat-dark --weed --good
 *   --metal --ghost --variant-a … --variant-d                                          optional, else from here
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
  /** A body of plastic or other stuff, bright and in shade. */
  | "baitLight"
  | "baitDark"
  /** A wooden body, bright and in shade. */
  | "woodLight"
  | "woodDark"
  /** What is painted over the body, bright and in shade. */
  | "coatLight"
  | "coatDark"
  | "weed"
  | "zone"
  /** Round coloured arrows: always dark, so that yellow too stands out from paper and water. */
  | "edge"
  | "metal"
  | "ghost"
  | "variantA"
  | "variantB"
  | "variantC"
  | "variantD";

export type Palette = Readonly<Record<Role, Rgb>> & { readonly dark: boolean; readonly font: string };

export const TOKENS: readonly (readonly [Role, string])[] = [
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
  ["woodLight", "--wood-light"],
  ["woodDark", "--wood-dark"],
  ["coatLight", "--coat-light"],
  ["coatDark", "--coat-dark"],
  ["weed", "--weed"],
  ["zone", "--good"],
  ["metal", "--metal"],
  ["ghost", "--ghost"],
  ["variantA", "--variant-a"],
  ["variantB", "--variant-b"],
  ["variantC", "--variant-c"],
  ["variantD", "--variant-d"],
];

/** A colour written as #rrggbb. */
export const rgbOf = (s: string): Rgb => {
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
  paper: rgbOf("#fbfaf6"),
  ink: rgbOf("#16222d"),
  inkSoft: rgbOf("#4d5a66"),
  rule: rgbOf("#c6ccd0"),
  waterTop: rgbOf("#e4eff2"),
  waterDeep: rgbOf("#b4cdd7"),
  sky: rgbOf("#f8f7f2"),
  floor: rgbOf("#d8d0bf"),
  accent: rgbOf("#0b668a"),
  woodLight: rgbOf("#f4e4c8"),
  woodDark: rgbOf("#b98f5c"),
  coatLight: rgbOf("#e4ebe2"),
  coatDark: rgbOf("#7c968b"),
  weed: rgbOf("#4c7a3f"),
  zone: rgbOf("#1d6142"),
};
const DARK: Record<string, Rgb> = {
  paper: rgbOf("#131b22"),
  ink: rgbOf("#e8edf0"),
  inkSoft: rgbOf("#a3b0ba"),
  rule: rgbOf("#3a4751"),
  waterTop: rgbOf("#20363f"),
  waterDeep: rgbOf("#12232b"),
  sky: rgbOf("#182128"),
  floor: rgbOf("#38332a"),
  accent: rgbOf("#71c7ea"),
  woodLight: rgbOf("#c8a878"),
  woodDark: rgbOf("#6a4e2e"),
  coatLight: rgbOf("#a8bfb3"),
  coatDark: rgbOf("#3f564d"),
  weed: rgbOf("#7fae6a"),
  zone: rgbOf("#7fd0a4"),
};

/** Palette from the tokens that could be read; the rest are fall-backs, which follow the paper's lightness. */
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
    woodLight: of("woodLight"),
    woodDark: of("woodDark"),
    coatLight: of("coatLight"),
    coatDark: of("coatDark"),
    weed: of("weed"),
    zone: of("zone"),
    edge: dark ? paper : ink,
    ghost: read.ghost ?? of("accent"),
    variantA: read.variantA ?? read.ghost ?? of("accent"),
    variantB: read.variantB ?? read.ghost ?? of("accent"),
    variantC: read.variantC ?? read.ghost ?? of("accent"),
    variantD: read.variantD ?? read.ghost ?? of("accent"),
    metal: read.metal ?? mix(paper, ink, dark ? 0.8 : 0.62),
  };
}

/** The system's own colours, as the browser names them: the page's ground, its text, its links. */
export interface SystemColours {
  readonly canvas: Rgb;
  readonly text: Rgb;
  readonly link: Rgb;
}

/**
 * Palette for those who have the system choose the colours (forced colours): ground and ink are the system's, what
 * stands out is its link colour, and the few tones between are mixed of ground and ink. Shapes, dashes, hatching and
 * letters tell things apart, as they do everywhere.
 */
export function forcedPalette({ canvas, text, link }: SystemColours, font: string): Palette {
  const tone = (t: number): Rgb => mix(canvas, text, t);
  return {
    dark: luminance(canvas) < luminance(text),
    font,
    paper: canvas,
    ink: text,
    inkSoft: text,
    rule: tone(0.5),
    waterTop: canvas,
    waterDeep: tone(0.06),
    sky: canvas,
    floor: tone(0.2),
    accent: link,
    baitLight: canvas,
    baitDark: tone(0.25),
    woodLight: canvas,
    woodDark: tone(0.25),
    coatLight: tone(0.1),
    coatDark: tone(0.35),
    weed: text,
    zone: link,
    edge: luminance(canvas) < luminance(text) ? canvas : text,
    metal: tone(0.6),
    ghost: link,
    variantA: link,
    variantB: link,
    variantC: link,
    variantD: link,
  };
}
