import type { Vec } from "../model/base";
import type { Bait } from "../model/bait";
import type { Tackle } from "../model/line";
import { sketches } from "../model/parts";
import type { Section, Shape } from "../model/shape";
import { sideCurve } from "./curves";
import { figuresOf, inOrder, pointsOf } from "./figures";
import { boxOf } from "./geometry";
import { hangingLength } from "./marks";
import type { Scene } from "./types";

/** Bands of shading from roof to belly. */
const BANDS = 28;
const STATIONS = 56;

const AT_REST = { end: "mid", face: "floor" } as const;

/**
 * Geometry for drawing an assembled bait. Pure; body frame, m.
 * @param depth m of water (Infinity where the bottom plays no part)
 * @param more what the water holds beside the bait: weed and the strike zone; `flat`: the body without shading
 * @throws RangeError where the depth is not above 0
 */
export function sceneOf(
  bait: Bait,
  tackle: Tackle | null,
  depth: number,
  more: Partial<Pick<Scene, "weed" | "zone">> & { readonly flat?: boolean } = {},
): Scene {
  const { weed = null, zone = null, flat = false } = more;
  if (!(depth > 0)) throw new RangeError(`sceneOf: depth ${depth} m must be above 0`);
  const { spec, drawn } = bait;
  const side = sideCurve(drawn);
  const parts = sketches(spec, bait);
  const figures = inOrder(figuresOf(parts, (one) => one.figures));
  const hangers = parts.flatMap(({ hanging }) => hanging ?? []);
  const whole = bait.rigid(AT_REST);
  return {
    name: spec.name,
    depth,
    weed,
    zone,
    rod: tackle ? { tip: tackle.rodTip, lineOut: tackle.lineOut, lineDiameter: tackle.line.diameter } : null,
    length: drawn.length,
    outline: side,
    body: spec.body.kind === "wood" ? "wood" : "other",
    coats: parts.flatMap(({ what, cover }) => (cover === undefined ? [] : [{ what, thickness: cover }])),
    tones: flat ? flatTone(side) : tonesOf(drawn),
    figures,
    balls: bait.balls(AT_REST),
    hangers,
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

/** The light of the drawing: from above and from the reader's side. Unit vector (towards the reader, up). */
const LIGHT = { y: 0.5, z: Math.sqrt(0.75) };

/** The whole side view in one tone. */
export const flatTone = (outline: readonly Vec[]): Scene["tones"] => [{ polygon: outline, light: 0.85 }];

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
