import type { Vec } from "../../model/base";
import { boxOf, distanceToPath, hatch, insidePolygon, turned } from "./geometry";
import { mix, type Palette, type Rgb, type Role } from "./palette";
import type { Scene } from "./types";

/**
 * The bait as a list of marks: one list is drawn by the moving stage and by the still SVG alike, and is what a
 * pointer picks from. Body frame, metres; strokes in pixels.
 */

export interface Paint {
  readonly role: Role;
  /** Mixed towards this role by `t`. */
  readonly to?: Role;
  readonly t?: number;
  /** Default 1. */
  readonly alpha?: number;
}

export interface Stroke extends Paint {
  /** Least width, px. */
  readonly px: number;
  /** True width where the thing has one, m. */
  readonly real?: number;
  /** Dashes, px drawn and px left out. */
  readonly dash?: readonly [number, number];
}

export type Mark = {
  /** What a pointer finds here ("ballast:belly", "bib" …), or null for mere drawing. */
  readonly what: string | null;
  readonly fill?: Paint;
  readonly stroke?: Stroke;
} & (
  | { readonly kind: "polygon"; readonly points: readonly Vec[] }
  | { readonly kind: "path"; readonly points: readonly Vec[] }
  | { readonly kind: "circle"; readonly at: Vec; readonly radius: number }
);

export function colourOf(paint: Paint, palette: Palette): Rgb {
  return paint.to === undefined
    ? palette[paint.role]
    : mix(palette[paint.role], palette[paint.to], paint.t ?? 0);
}

const HAIR = 0.75;
const THIN = 1.1;
const BOLD = 1.7;

const outlineStroke: Stroke = { role: "ink", px: BOLD };

/** Marks fixed to the body, from back to front. */
export function bodyMarks(scene: Scene, xray: boolean): Mark[] {
  const marks: Mark[] = [];
  for (const wire of scene.wires)
    for (const points of wire.outside)
      marks.push({
        kind: "path",
        points,
        what: `wire:${wire.name}`,
        stroke: { role: "metal", px: BOLD, real: wire.diameter },
      });
  if (scene.bib)
    marks.push({
      kind: "polygon",
      points: scene.bib.plate,
      what: "bib",
      fill: { role: "paper", to: "accent", t: 0.3, alpha: 0.9 },
      stroke: { role: "ink", px: THIN },
    });
  for (const tone of scene.tones)
    marks.push({
      kind: "polygon",
      points: tone.polygon,
      what: "body",
      fill: xray
        ? { role: "baitDark", to: "baitLight", t: 0.4 + 0.6 * tone.light }
        : { role: "baitDark", to: "baitLight", t: tone.light },
    });
  if (xray) marks.push(...insideMarks(scene));
  marks.push({ kind: "polygon", points: scene.outline, what: "body", stroke: outlineStroke });
  for (const slug of scene.ballast)
    if (slug.where === "outside")
      marks.push({
        kind: "circle",
        at: slug.at,
        radius: slug.radius,
        what: `ballast:${slug.name}`,
        fill: { role: "metal" },
        stroke: { role: "ink", px: THIN },
      });
  for (const part of scene.fittings) if (part.where === "outside") marks.push(...fittingMarks(part));
  for (const hanger of scene.hangers)
    marks.push({
      kind: "circle",
      at: hanger.at,
      radius: 0.0011,
      what: `hanger:${hanger.name}`,
      fill: { role: "paper" },
      stroke: { role: "ink", px: THIN },
    });
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

function fittingMarks(part: Scene["fittings"][number]): Mark[] {
  const what = `fitting:${part.name}`;
  const marks: Mark[] = [
    {
      kind: "circle",
      at: part.at,
      radius: part.radius,
      what,
      fill: { role: "paper" },
      stroke: { role: "ink", px: THIN },
    },
  ];
  if (part.looksLikeEye)
    marks.push({ kind: "circle", at: part.at, radius: 0.5 * part.radius, what, fill: { role: "ink" } });
  return marks;
}

function insideMarks(scene: Scene): Mark[] {
  const marks: Mark[] = [];
  const box = boxOf(scene.outline);
  const over = 0.05 * scene.length;
  // The datum line: a chain line, as centre lines are drawn (ISO 128 line type 04).
  for (const points of chainLine({ x: box.minX - over, z: 0 }, { x: box.maxX + over, z: 0 }, scene.length))
    marks.push({ kind: "path", points, what: null, stroke: { role: "inkSoft", px: HAIR, alpha: 0.8 } });
  if (scene.bib && scene.bib.tongue.length > 0)
    marks.push({
      kind: "polygon",
      points: scene.bib.tongue,
      what: "bib",
      fill: { role: "paper", to: "accent", t: 0.3, alpha: 0.6 },
      stroke: { role: "ink", px: HAIR, dash: [4, 2.5] },
    });
  for (const chamber of scene.chambers)
    marks.push({
      kind: "polygon",
      points: chamber.box,
      what: `chamber:${chamber.name}`,
      fill: { role: "paper", alpha: 0.92 },
      stroke: { role: "ink", px: THIN },
    });
  for (const wire of scene.wires)
    for (const points of wire.inside) {
      marks.push({
        kind: "path",
        points,
        what: `wire:${wire.name}`,
        stroke: { role: "metal", px: BOLD, real: wire.diameter, alpha: 0.75 },
      });
    }
  for (const slug of scene.ballast) {
    if (slug.where !== "inside") continue;
    const what = `ballast:${slug.name}`;
    if (slug.hole !== null)
      marks.push({
        kind: "circle",
        at: slug.at,
        radius: slug.hole,
        what,
        fill: { role: "paper", alpha: 0.7 },
        stroke: { role: "ink", px: HAIR, dash: [3, 2] },
      });
    marks.push({
      kind: "circle",
      at: slug.at,
      radius: slug.radius,
      what,
      fill: { role: "metal" },
      stroke: { role: "ink", px: THIN },
    });
    const disc = Array.from({ length: 32 }, (_, i) => ({
      x: slug.at.x + slug.radius * Math.cos((i * Math.PI) / 16),
      z: slug.at.z + slug.radius * Math.sin((i * Math.PI) / 16),
    }));
    // Cut metal is hatched, as in a sectioned drawing.
    for (const [a, b] of hatch(disc, slug.radius / 2.5, Math.PI / 4))
      marks.push({ kind: "path", points: [a, b], what, stroke: { role: "paper", px: HAIR, alpha: 0.8 } });
  }
  for (const part of scene.fittings) if (part.where === "inside") marks.push(...fittingMarks(part));
  return marks;
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

/** The pinned variant: outlined with dashes and hatched, so that it is told apart without its colour. */
export function ghostMarks(scene: Scene, dash: readonly [number, number] = [6, 4]): Mark[] {
  const marks: Mark[] = [
    { kind: "polygon", points: scene.outline, what: null, fill: { role: "paper", alpha: 0.35 } },
    ...hatch(scene.outline, 0.028 * scene.length, Math.PI / 4).map(([a, b]): Mark => ({
      kind: "path",
      points: [a, b],
      what: null,
      stroke: { role: "ghost", px: HAIR, alpha: 0.55 },
    })),
  ];
  const stroke: Stroke = { role: "ghost", px: BOLD, dash };
  if (scene.bib) marks.push({ kind: "polygon", points: scene.bib.plate, what: null, stroke });
  for (const wire of scene.wires)
    for (const points of wire.outside)
      marks.push({ kind: "path", points, what: null, stroke: { role: "ghost", px: THIN } });
  marks.push({ kind: "polygon", points: scene.outline, what: null, stroke });
  return marks;
}

/** How far a hook hangs below its hanger's eye, ring included, m. */
export const hangingLength = (hanger: Scene["hangers"][number]): number =>
  1.5 * (hanger.ringRadius ?? 0) + (hanger.hookLength ?? 0);

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
  const bend = 0.155 * L;
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

/** The same marks turned and moved. */
export function movedMarks(marks: readonly Mark[], by: Vec, angle: number): Mark[] {
  const move = (p: Vec): Vec => {
    const t = turned(p, angle);
    return { x: t.x + by.x, z: t.z + by.z };
  };
  return marks.map((m) =>
    m.kind === "circle" ? { ...m, at: move(m.at) } : { ...m, points: m.points.map(move) },
  );
}

/** What lies under a point of the same frame as the marks, front first; `tolerance` in metres. */
export function pickFrom(marks: readonly Mark[], p: Vec, tolerance: number): string | null {
  for (let i = marks.length - 1; i >= 0; i--) {
    const m = marks[i];
    if (!m || m.what === null) continue;
    if (m.kind === "circle") {
      if (Math.hypot(p.x - m.at.x, p.z - m.at.z) <= m.radius + tolerance) return m.what;
    } else if (m.kind === "polygon" && m.fill) {
      if (insidePolygon(m.points, p)) return m.what;
    } else if (distanceToPath(p, m.points) <= tolerance + (m.stroke?.real ?? 0) / 2) return m.what;
  }
  return null;
}

const WORDS: Readonly<Record<string, string>> = {
  body: "body",
  bib: "bib",
  tie: "tie eye",
  balls: "loose balls",
};

/** A picked thing in plain words: "ballast:belly" → "ballast ‘belly’". */
export function wordsOf(what: string): string {
  const cut = what.indexOf(":");
  return cut < 0 ? (WORDS[what] ?? what) : `${what.slice(0, cut)} ‘${what.slice(cut + 1)}’`;
}
