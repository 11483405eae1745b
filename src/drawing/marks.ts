import type { Vec } from "../model/base";
import { RING_TAKES } from "../model/parts";
import { BOLD, figureMarks, HAIR, THIN } from "./figures";
import { boxOf, hatch } from "./geometry";
import type { Mark, Stroke } from "./mark";
import type { Role } from "./palette";
import type { Scene, SceneFigure } from "./types";

/**
 * The bait as a list of marks: one list is drawn by the moving stage and by the still SVG alike, and is what a
 * pointer picks from. Body frame, metres; strokes in pixels.
 */

/** Least width of the rim that stands for a coat, px; half of it lies outside the outline. */
const RIM = 5;

/** Colours of a skin, from shade to light. */
const SKINS = {
  wood: { role: "woodDark", to: "woodLight" },
  coat: { role: "coatDark", to: "coatLight" },
  other: { role: "baitDark", to: "baitLight" },
} as const;

const outlineStroke: Stroke = { role: "ink", px: BOLD };

/** Marks fixed to the body, from back to front. */
export function bodyMarks(scene: Scene, xray: boolean): Mark[] {
  const marks: Mark[] = [];
  const layer = (which: SceneFigure["layer"]): Mark[] =>
    scene.figures.filter((f) => f.layer === which).flatMap(figureMarks);
  marks.push(...layer("behind"));
  // When one sees into it, the body shows its wood, and its coats are a rim; from outside the coats hide the wood.
  const skin =
    scene.coats.length > 0 && !xray ? SKINS.coat : scene.body === "wood" ? SKINS.wood : SKINS.other;
  for (const tone of scene.tones)
    marks.push({
      kind: "polygon",
      points: tone.polygon,
      what: "body",
      fill: { ...skin, t: xray ? 0.4 + 0.6 * tone.light : tone.light },
    });
  if (xray) marks.push(datumLine(scene), ...layer("inside"));
  for (const coat of scene.coats)
    marks.push({
      kind: "polygon",
      points: scene.outline,
      what: coat.what,
      stroke: { role: "coatDark", px: RIM, real: 2 * (coat.thickness ?? 0) },
    });
  marks.push({ kind: "polygon", points: scene.outline, what: "body", stroke: outlineStroke });
  marks.push(...layer("front"));
  marks.push({
    kind: "circle",
    at: scene.tie,
    radius: 0.0014,
    what: "tie",
    fill: { role: "paper" },
    stroke: { role: "ink", px: BOLD },
  });
  return marks;
}

/** The datum line: a chain line, as centre lines are drawn (ISO 128 line type 04). */
function datumLine(scene: Scene): Mark {
  const box = boxOf(scene.outline);
  const over = 0.05 * scene.length;
  return {
    kind: "lines",
    paths: chainLine({ x: box.minX - over, z: 0 }, { x: box.maxX + over, z: 0 }, scene.length),
    what: null,
    stroke: { role: "inkSoft", px: HAIR, alpha: 0.8 },
  };
}

/** Long dash, gap, dot, gap from a to b; lengths in proportion to the bait, so that it needs no scale. */
function chainLine(a: Vec, b: Vec, length: number): Vec[][] {
  const unit = 0.01 * length;
  const total = Math.hypot(b.x - a.x, b.z - a.z);
  const at = (d: number): Vec => ({ x: a.x + ((b.x - a.x) * d) / total, z: a.z + ((b.z - a.z) * d) / total });
  const out: Vec[][] = [];
  for (let d = 0; d < total; d += 9 * unit) {
    out.push([at(d), at(Math.min(total, d + 5.5 * unit))]);
    if (d + 7 * unit < total) out.push([at(d + 7 * unit), at(Math.min(total, d + 7.6 * unit))]);
  }
  return out;
}

/** Dashes of the pinned variant, px. */
const GHOST_DASH = [6, 4] as const;

/** Another variant: outlined with dashes and hatched, so that it can be told apart without its colour. */
export function ghostMarks(
  scene: Scene,
  role: Role = "ghost",
  dash: readonly [number, number] = GHOST_DASH,
): Mark[] {
  const marks: Mark[] = [
    { kind: "polygon", points: scene.outline, what: null, fill: { role: "paper", alpha: 0.35 } },
    {
      kind: "lines",
      paths: hatch(scene.outline, 0.028 * scene.length, Math.PI / 4),
      what: null,
      stroke: { role, px: HAIR, alpha: 0.55 },
    },
  ];
  const stroke: Stroke = { role, px: BOLD, dash };
  for (const f of scene.figures) {
    if (f.layer !== "behind") continue;
    if (f.is === "path")
      marks.push({ kind: "path", points: f.points, what: null, stroke: { role, px: THIN } });
    else if (f.is === "polygon") marks.push({ kind: "polygon", points: f.points, what: null, stroke });
    else marks.push({ kind: "circle", at: f.at, radius: f.radius, what: null, stroke });
  }
  marks.push({ kind: "polygon", points: scene.outline, what: null, stroke });
  return marks;
}

/** How far a hook hangs below its hanger's eye, ring included, m. */
export const hangingLength = (hanger: Scene["hangers"][number]): number =>
  RING_TAKES * (hanger.ringRadius ?? 0) + (hanger.hookLength ?? 0);

/**
 * A hook with its ring, hanging from its eye: own frame with the eye at the origin, hanging towards −z.
 * Drawn as a treble seen from the side: shank, two bends with their points, the third bend end on.
 */
export function hookMarks(hanger: Scene["hangers"][number], colour: Role = "ink"): Mark[] {
  const marks: Mark[] = [];
  const what = `hook:${hanger.name}`;
  const ring = hanger.ringRadius ?? 0;
  if (hanger.ringRadius !== null)
    marks.push({
      kind: "circle",
      at: { x: 0, z: -0.75 * ring },
      radius: ring,
      what,
      stroke: { role: colour === "ink" ? "metal" : colour, px: THIN, real: colour === "ink" ? 0.0006 : 0 },
    });
  const L = hanger.hookLength;
  if (L === null) return marks;
  const top = hanger.ringRadius === null ? 0 : -1.5 * ring;
  const stroke: Stroke = {
    role: colour === "ink" ? "metal" : colour,
    to: "ink",
    t: colour === "ink" ? 0.55 : 0,
    px: 1.3,
    real: (colour === "ink" ? 0.036 : 0.012) * L,
  };
  const eye = 0.06 * L;
  const bend = hanger.gape === null ? 0.155 * L : Math.min(0.4 * L, hanger.gape / 2);
  marks.push({ kind: "circle", at: { x: 0, z: top - 0.4 * eye }, radius: eye, what, stroke });
  const foot = top - L + bend;
  marks.push({
    kind: "path",
    points: [
      { x: 0, z: top - 1.4 * eye },
      { x: 0, z: foot - bend },
    ],
    what,
    stroke,
  });
  for (const side of [-1, 1]) {
    const points: Vec[] = [{ x: 0, z: foot }];
    for (let i = 1; i <= 10; i++) {
      const a = Math.PI + (i / 10) * Math.PI;
      points.push({ x: side * (bend + bend * Math.cos(a)), z: foot + bend * Math.sin(a) });
    }
    const tip = { x: side * 2.12 * bend, z: foot + 0.3 * L };
    points.push(tip);
    marks.push({ kind: "path", points, what, stroke });
    // The barb.
    marks.push({
      kind: "path",
      points: [
        { x: side * 2.09 * bend, z: foot + 0.2 * L },
        { x: side * 1.78 * bend, z: foot + 0.13 * L },
      ],
      what,
      stroke,
    });
  }
  return marks;
}

/** A rolling ball. */
export function ballMarks(radius: number, colour: Role = "ink"): Mark[] {
  return [
    {
      kind: "circle",
      at: { x: 0, z: 0 },
      radius,
      what: "balls",
      ...(colour === "ink" ? { fill: { role: "metal" as const } } : {}),
      stroke: { role: colour, px: THIN },
    },
    ...(colour === "ink"
      ? [
          {
            kind: "circle" as const,
            at: { x: -0.3 * radius, z: 0.35 * radius },
            radius: 0.22 * radius,
            what: null,
            fill: { role: "paper" as const, alpha: 0.9 },
          },
        ]
      : []),
  ];
}

const WORDS: Readonly<Record<string, string>> = {
  body: "body",
  bib: "bib",
  tie: "tie eye",
  balls: "loose balls",
};

/** A picked thing: the word for its kind, and the name that it has in the bait. */
export function thingOf(what: string): { readonly kind: string; readonly name: string | null } {
  const cut = what.indexOf(":");
  return cut < 0
    ? { kind: WORDS[what] ?? what, name: null }
    : { kind: what.slice(0, cut), name: what.slice(cut + 1) };
}
