import type { Vec } from "../model/base";
import type { Bait, HangerSpec } from "../model/bait";
import type { Tackle } from "../model/line";
import { ballRadius, holeAcross, hookLength, sketches } from "../model/parts";
import type { EntrySketch, Figure } from "../model/parts";
import type { Section, Shape } from "../model/shape";
import { sideCurve } from "./curves";
import { boxOf } from "./geometry";
import { hangingLength, RING_TAKES } from "./marks";
import type { Scene, SceneFigure, SceneHanger } from "./types";

/** Bands of shading from roof to belly. */
const BANDS = 28;
const STATIONS = 56;

const AT_REST = { end: "mid", face: "floor" } as const;

/**
 * Geometry for drawing an assembled bait. Pure; body frame, m.
 * @param depth m of water (Infinity where the bottom plays no part)
 * @param inWater what the water holds beside the bait: weed and the strike zone
 * @throws RangeError where the depth is not above 0
 */
export function sceneOf(
  bait: Bait,
  tackle: Tackle | null,
  depth: number,
  inWater: Partial<Pick<Scene, "weed" | "zone">> = {},
): Scene {
  const { weed = null, zone = null } = inWater;
  if (!(depth > 0)) throw new RangeError(`sceneOf: depth ${depth} m must be above 0`);
  const { spec, drawn } = bait;
  const side = sideCurve(drawn);
  const parts = sketches(spec, bait);
  const figures = figuresOf(parts);
  /** Figures of one entry in a layer. */
  const own = (path: string, layer: SceneFigure["layer"]): readonly Figure[] =>
    parts.find((one) => one.path === path)?.figures.filter((f) => f.layer === layer) ?? [];
  const polygonOf = (key: string, layer: SceneFigure["layer"]): readonly Vec[] =>
    own(`bait.${key}`, layer).flatMap((f) => (f.is === "polygon" ? f.points : []));
  const pathsOf = (index: number, layer: SceneFigure["layer"]): readonly (readonly Vec[])[] =>
    own(`bait.wires[${index}]`, layer).flatMap((f) => (f.is === "path" ? [f.points] : []));
  const boxOfChamber = (index: number): readonly Vec[] => polygonOf(`chambers[${index}]`, "inside");
  const hangers = spec.hangers.map(hangerOf);
  const whole = bait.rigid(AT_REST);
  const centres = bait.ballCentres(AT_REST);
  const radii = spec.chambers.flatMap((c) =>
    c.balls ? Array<number>(c.balls.count).fill(c.balls.diameter / 2) : [],
  );
  if (centres.length !== radii.length)
    throw new Error(
      `sceneOf: ${centres.length} ball centres for ${radii.length} balls; the chambers' lists must agree`,
    );
  return {
    name: spec.name,
    depth,
    weed,
    zone,
    rod: tackle ? { tip: tackle.rodTip, lineOut: tackle.lineOut, lineDiameter: tackle.line.diameter } : null,
    length: drawn.length,
    outline: side,
    body: spec.body.kind === "wood" ? "wood" : "other",
    coats: spec.coats.map(({ name, thickness }) => ({ name, thickness })),
    tones: tonesOf(drawn),
    figures,
    bib: spec.bib ? { plate: polygonOf("bib", "behind"), tongue: polygonOf("bib", "inside") } : null,
    wires: spec.wires.map(({ name, diameter }, i) => ({
      name,
      diameter,
      inside: pathsOf(i, "inside"),
      outside: pathsOf(i, "behind"),
    })),
    ballast: spec.ballast.map((b) => ({
      name: b.name,
      at: b.at,
      radius: ballRadius(b.mass / b.stuff.density),
      hole: b.hole === null ? null : holeAcross(b.hole),
      where: b.where,
    })),
    chambers: spec.chambers.map(({ name }, i) => ({ name, box: boxOfChamber(i) })),
    balls: centres.map((at, i) => ({ at, radius: radii[i] ?? 0 })),
    hangers,
    fittings: spec.fittings.map((f) => ({
      name: f.name,
      at: f.at,
      radius: ballRadius(f.mass / f.stuff.density),
      where: f.where,
      looksLikeEye: /\beyes?\b/i.test(f.name),
    })),
    tie: spec.tie,
    G: whole.G,
    B: whole.B,
    extent: boxOf([
      ...side,
      ...figures.flatMap((f) => (f.layer === "behind" ? pointsOf(f) : [])),
      spec.tie,
      ...hangers.flatMap((h) => [h.at, { x: h.at.x, z: h.at.z - hangingLength(h) }]),
    ]),
  };
}

/** Points that a figure reaches to. */
const pointsOf = (f: SceneFigure): readonly Vec[] =>
  f.is === "circle"
    ? [
        { x: f.at.x - f.radius, z: f.at.z - f.radius },
        { x: f.at.x + f.radius, z: f.at.z + f.radius },
      ]
    : f.points;

/** A split ring of 0.10 g is about 6 mm across (from memory), others by the cube root of their mass, m. */
const ringAcross = (mass: number): number => 6e-3 * Math.cbrt(mass / 0.1e-3);

/** A hook is as long as the file says; else it hangs as far below its eye as the model has it, its ring included. */
function hangerOf({ name, at, ring, hook }: HangerSpec): SceneHanger {
  const ringMass = ring?.mass ?? 0;
  const hookMass = hook?.mass ?? 0;
  const ringRadius = ringMass > 0 ? ringAcross(ringMass) / 2 : null;
  return {
    name,
    at,
    ringRadius,
    hookLength:
      hookMass > 0
        ? (hook?.length ?? hookLength(hookMass + ringMass) - RING_TAKES * (ringRadius ?? 0))
        : null,
    gape: hook?.gape ?? null,
  };
}

/** Figures of a layer in the order in which they are drawn: those named first lie behind. */
const ORDER: readonly (readonly [SceneFigure["layer"], SceneFigure["role"], SceneFigure["is"] | "any"])[] = [
  ["behind", "metal", "any"],
  ["behind", "plate", "any"],
  ["inside", "plate", "any"],
  ["inside", "void", "any"],
  ["inside", "metal", "path"],
  ["front", "metal", "any"],
  ["front", "pad", "any"],
];

/** Place in the order; what is not named lies before what is, each in the order of the account. */
function place({ layer, role, is }: SceneFigure): number {
  const like = role === "pupil" ? "pad" : role; // a pupil lies on its own pad
  const found = ORDER.findIndex(([l, r, i]) => l === layer && r === like && (i === "any" || i === is));
  return found < 0 ? ORDER.length : found;
}

/** Figures of all parts, each with what it belongs to. */
function figuresOf(parts: readonly EntrySketch[]): SceneFigure[] {
  return parts
    .flatMap(({ what, figures }) => figures.map((figure): SceneFigure => ({ ...figure, what })))
    .sort((a, b) => place(a) - place(b));
}

/** The light of the drawing: from above and from the reader's side. Unit vector (towards the reader, up). */
const LIGHT = { y: 0.5, z: Math.sqrt(0.75) };

/**
 * Shading of the skin: bands of equal share of the section's height, each as bright as its slope at the fullest
 * section faces the light (Lambert's cosine law). With a half superellipse |y/hw|ⁿ + |ζ/h|ⁿ = 1 the normal is
 * along (|y/hw|ⁿ⁻¹/hw, |ζ/h|ⁿ⁻¹/h).
 */
function tonesOf(shape: Shape): Scene["tones"] {
  const sections: Section[] = [];
  for (let i = 0; i <= STATIONS; i++)
    sections.push(shape.section((shape.length * (1 - Math.cos((Math.PI * i) / STATIONS))) / 2));
  const fullest = sections.reduce((a, b) => (b.top - b.bottom > a.top - a.bottom ? b : a));
  const height = (s: Section, a: number): number =>
    a >= 0 ? s.widest + a * (s.top - s.widest) : s.widest + a * (s.widest - s.bottom);
  const light = (a: number): number => {
    const n = a >= 0 ? fullest.exponentAbove : fullest.exponentBelow;
    const h = a >= 0 ? fullest.top - fullest.widest : fullest.widest - fullest.bottom;
    const t = Math.abs(a);
    const y = Math.pow(Math.max(0, 1 - Math.pow(t, n)), 1 / n);
    const ny = Math.pow(y, n - 1) / Math.max(fullest.halfBreadth, 1e-9);
    const nz = (Math.sign(a) * Math.pow(t, n - 1)) / Math.max(h, 1e-9);
    const size = Math.hypot(ny, nz);
    return size > 0 ? Math.max(0, (ny * LIGHT.y + nz * LIGHT.z) / size) : 0;
  };
  const edges = Array.from({ length: BANDS + 1 }, (_, j) => Math.sin((Math.PI / 2) * (1 - (2 * j) / BANDS)));
  return edges.slice(1).map((low, j) => {
    const high = edges[j] ?? 1;
    // A band reaches under the next one by a hair, so that no seam shows between them.
    const under = Math.max(-1, low - 0.02);
    return {
      polygon: [
        ...sections.map((s): Vec => ({ x: -s.s, z: height(s, high) })),
        ...[...sections].reverse().map((s): Vec => ({ x: -s.s, z: height(s, under) })),
      ],
      light: light((high + low) / 2),
    };
  });
}
