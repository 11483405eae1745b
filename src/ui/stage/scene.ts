import { add, distance, lerp, scale, type Vec } from "../../model/base";
import type { Bait, BibSpec, WireSpec } from "../../model/bait";
import type { Tackle } from "../../model/line";
import { insideOutline, outline, outlineCrossings, type Section, type Shape } from "../../model/shape";
import { boxOf } from "./geometry";
import { hangingLength } from "./marks";
import type { Scene, SceneHanger, SceneWire } from "./types";

/** Points of the side outline: at 1000 px of length a chord then leaves the curve by well under a pixel. */
const OUTLINE_POINTS = 160;
/** Bands of shading from roof to belly. */
const BANDS = 28;
const STATIONS = 56;

const AT_REST = { end: "mid", face: "floor" } as const;

/**
 * Geometry for drawing an assembled bait. Pure; body frame, m.
 * @param depth m of water (Infinity where the bottom plays no part)
 * @throws RangeError where the depth is not above 0
 */
export function sceneOf(bait: Bait, tackle: Tackle | null, depth: number): Scene {
  if (!(depth > 0)) throw new RangeError(`sceneOf: depth ${depth} m must be above 0`);
  const { spec, drawn } = bait;
  const side = outline(drawn, OUTLINE_POINTS);
  const bib = spec.bib ? plateOf(spec.bib) : null;
  const wires = spec.wires.map((wire) => splitForDrawing(wire, drawn));
  const hangers = spec.hangers.map((h): SceneHanger => ({
    name: h.name,
    at: h.at,
    ringRadius: h.ring && h.ring.mass > 0 ? ringAcross(h.ring.mass) / 2 : null,
    hookLength: h.hook && h.hook.mass > 0 ? trebleLength(h.hook.mass) : null,
  }));
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
    rod: tackle ? { tip: tackle.rodTip, lineOut: tackle.lineOut, lineDiameter: tackle.line.diameter } : null,
    length: drawn.length,
    outline: side,
    tones: tonesOf(drawn),
    bib,
    wires,
    ballast: spec.ballast.map((b) => ({
      name: b.name,
      at: b.at,
      radius: sphereRadius(b.mass / b.stuff.density),
      hole: b.hole === null ? null : sphereRadius(b.hole),
      where: b.where,
    })),
    chambers: spec.chambers.map((c) => ({
      name: c.name,
      box: [
        { x: -c.from, z: c.height + c.tall / 2 },
        { x: -c.to, z: c.height + c.tall / 2 },
        { x: -c.to, z: c.height - c.tall / 2 },
        { x: -c.from, z: c.height - c.tall / 2 },
      ],
    })),
    balls: centres.map((at, i) => ({ at, radius: radii[i] ?? 0 })),
    hangers,
    fittings: spec.fittings.map((f) => ({
      name: f.name,
      at: f.at,
      radius: sphereRadius(f.mass / f.stuff.density),
      where: f.where,
      looksLikeEye: /\beyes?\b/i.test(f.name),
    })),
    tie: spec.tie,
    G: whole.G,
    B: whole.B,
    extent: boxOf([
      ...side,
      ...(bib ? bib.plate : []),
      ...wires.flatMap((w) => w.outside.flat()),
      spec.tie,
      ...hangers.flatMap((h) => [h.at, { x: h.at.x, z: h.at.z - hangingLength(h) }]),
    ]),
  };
}

/** Radius of the sphere of a volume (m³), m: V = 4/3 π r³. */
const sphereRadius = (volume: number): number => Math.cbrt((3 * volume) / (4 * Math.PI));

/**
 * Sizes of the hooks as drawn, from their masses by the cube root: the same two figures as the swinging hooks of
 * the motion room (from memory: a treble of 0.37 g is about 17 mm long, a split ring of 0.10 g about 6 mm across).
 */
const trebleLength = (mass: number): number => 17e-3 * Math.cbrt(mass / 0.37e-3);
const ringAcross = (mass: number): number => 6e-3 * Math.cbrt(mass / 0.1e-3);

/** The bib seen from the side: its plate edge on, outside and in the slot. */
function plateOf(bib: BibSpec): { plate: Vec[]; tongue: Vec[] } {
  const along = { x: Math.cos(bib.angle), z: -Math.sin(bib.angle) };
  const across = { x: -along.z, z: along.x };
  const half = bib.thickness / 2;
  const slab = (from: number, to: number): Vec[] =>
    [
      [from, half],
      [to, half],
      [to, -half],
      [from, -half],
    ].map(([a, c]) => add(bib.root, add(scale(along, a ?? 0), scale(across, c ?? 0))));
  return { plate: slab(0, bib.length), tongue: bib.slot > 0 ? slab(-bib.slot, 0) : [] };
}

/** A wire's path cut where it crosses the outline; neighbouring pieces of one side joined to one path. */
function splitForDrawing(wire: WireSpec, shape: Shape): SceneWire {
  const sides: { readonly inside: Vec[][]; readonly outside: Vec[][] } = { inside: [], outside: [] };
  let side: "inside" | "outside" | null = null;
  for (let i = 1; i < wire.path.length; i++) {
    const a = wire.path[i - 1];
    const b = wire.path[i];
    if (!a || !b || distance(a, b) === 0) continue;
    const crossings = outlineCrossings(shape, a, b).filter((t) => t > 0 && t < 1);
    const cuts = [0, ...crossings.sort((p, q) => p - q), 1];
    for (let k = 1; k < cuts.length; k++) {
      const from = cuts[k - 1] ?? 0;
      const to = cuts[k] ?? 1;
      if (to <= from) continue;
      const here = insideOutline(shape, lerp(a, b, (from + to) / 2)) ? "inside" : "outside";
      if (here !== side) sides[here].push([lerp(a, b, from)]);
      sides[here].at(-1)?.push(lerp(a, b, to));
      side = here;
    }
  }
  return { name: wire.name, diameter: wire.diameter, ...sides };
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
