import { footOn, gaussLegendre, heightAbove, type SurfacePlane, type Vec } from "../base";
import type { Edges, Immersion, SectionImmersion } from "./types";
import { phiOfStation, sectionAt, stationOfPhi } from "./edges";
import { lineCrossings } from "./grid";
import { addWhole, inPanels, type Prefix, type VolumeSum } from "./integrals";
import { halfBreadthAt, immersedSection } from "./section";
import type { Skin, SkinSum } from "./skin";

/** Widest panel where the surface cuts the sections, rad, and Gauss points on it: 1e-8 of the volume on blunt and round bodies. */
const CUT_PANEL = 0.6;
const CUT_POINTS = 8;
/** Below this |cos(pitch)| the waterplane is run along the surface itself, not by stations. */
const STEEP = 1e-3;

/** What an immersion needs of a body. */
export interface Immersable {
  readonly edges: Edges;
  readonly prefix: Prefix;
  readonly centroid: Vec;
  readonly skin: Skin;
}

/**
 * A range of φ that is wholly under water or cut by the surface. An end that is a crossing of the surface with the top or
 * bottom edge is marked: there the immersed area goes like d^(1 + 1/n), and nodes are drawn towards it.
 */
interface Range {
  readonly a: number;
  readonly b: number;
  readonly cut: boolean;
  readonly crossingA: boolean;
  readonly crossingB: boolean;
}

// Scratch of one call.
const found: number[] = [];
const part: SectionImmersion = { area: 0, momentZ: 0, waterHalfBreadth: 0 };

/** Lengths below this share of the body's are round-off. */
const dead = (edges: Edges): number => 1e-13 * edges.length;

function sortedCrossings(edges: Edges, { sin, cos, level }: SurfacePlane): number[] {
  let n = lineCrossings(edges, "top", sin, cos, level, dead(edges), found, 0);
  n = lineCrossings(edges, "bottom", sin, cos, level, dead(edges), found, n);
  return found.slice(0, n).sort((p, q) => p - q);
}

/** The ranges of the body that have something under water. */
function wetRanges(edges: Edges, surface: SurfacePlane): Range[] {
  const { sin, cos, level } = surface;
  const crossings = sortedCrossings(edges, surface);
  const ranges: Range[] = [];
  for (let k = 0; k <= crossings.length; k++) {
    const a = k === 0 ? 0 : (crossings[k - 1] as number);
    const b = k === crossings.length ? Math.PI : (crossings[k] as number);
    if (!(b - a > 1e-14)) continue;
    const mid = (a + b) / 2;
    const reach = stationOfPhi(mid, edges.length) * sin + level - dead(edges); // z is under where z·cos < reach
    const top = edges.top(mid) * cos < reach;
    const bottom = edges.bottom(mid) * cos < reach;
    if (top || bottom)
      ranges.push({ a, b, cut: !(top && bottom), crossingA: k > 0, crossingB: k < crossings.length });
  }
  return ranges;
}

/** The immersed part of a body. Skin is worked out when it is asked for. */
export class Immersed implements Immersion {
  readonly volume: number;
  readonly centroid: Vec;
  readonly waterplaneIT: number;
  readonly waterplaneArea: number;
  private skinUnder: { readonly fraction: number; readonly centroid: Vec } | null = null;

  constructor(
    private readonly body: Immersable,
    private readonly surface: SurfacePlane,
  ) {
    const { sin, cos, level } = surface;
    if (!(Math.abs(sin * sin + cos * cos - 1) < 1e-9 && Number.isFinite(level)))
      throw new RangeError(
        `surface with sin ${sin}, cos ${cos}, level ${level}: give the sine and cosine of one angle and a finite level`,
      );
    const { edges, prefix } = body;
    const sum: VolumeSum & Waterplane = { volume: 0, momentX: 0, momentZ: 0, area: 0, IT: 0 };
    for (const range of wetRanges(edges, surface)) {
      if (range.cut) addCut(edges, surface, range, sum);
      else addWhole(edges, prefix, range.a, range.b, sum);
    }
    const plane = Math.abs(cos) < STEEP ? steepWaterplane(edges, surface) : sum;
    this.volume = sum.volume;
    this.centroid =
      sum.volume > 0
        ? { x: sum.momentX / sum.volume, z: sum.momentZ / sum.volume }
        : footOn(surface, body.centroid);
    this.waterplaneArea = plane.area;
    this.waterplaneIT = plane.IT;
  }

  get skinFraction(): number {
    return this.wetSkin().fraction;
  }

  get skinCentroid(): Vec {
    return this.wetSkin().centroid;
  }

  private wetSkin(): { readonly fraction: number; readonly centroid: Vec } {
    return (this.skinUnder ??= wetSkin(this.body, this.surface));
  }
}

/** Waterplane area, m², and its transverse second moment ∫(2/3)y³ dl, m⁴. */
interface Waterplane {
  area: number;
  IT: number;
}

/** Adds the part under water of the sections in a cut range, and the waterplane along them. */
function addCut(edges: Edges, surface: SurfacePlane, range: Range, sum: VolumeSum & Waterplane): void {
  const { sin, cos, level } = surface;
  const { a, b } = range;
  const under = cos > 0 ? "below" : "above";
  const { x, w } = gaussLegendre(CUT_POINTS);
  const n = lineCrossings(edges, "widest", sin, cos, level, dead(edges), found, 0);
  const stops = found
    .slice(0, n)
    .concat(edges.breaks)
    .filter((phi) => phi > a && phi < b);
  stops.sort((p, q) => p - q).push(b);
  let from = a;
  for (const stop of stops) {
    const start = from;
    const steps = Math.max(1, Math.ceil((stop - start) / CUT_PANEL));
    for (let j = 1; j <= steps; j++) {
      const to = j === steps ? stop : start + ((stop - start) * j) / steps;
      const drawA = range.crossingA && from === a;
      const drawB = range.crossingB && to === b;
      for (let i = 0; i < CUT_POINTS; i++) {
        const t = (1 + (x[i] as number)) / 2;
        // place in the panel (0 to 1), and its derivative by t
        const place = drawA ? (drawB ? t * t * (3 - 2 * t) : t * t) : drawB ? t * (2 - t) : t;
        const rate = drawA ? (drawB ? 6 * t * (1 - t) : 2 * t) : drawB ? 2 * (1 - t) : 1;
        const phi = from + (to - from) * place;
        const section = sectionAt(edges, phi);
        const ds = (edges.length / 2) * Math.sin(phi) * (to - from) * rate * ((w[i] as number) / 2);
        immersedSection(section, (level + section.s * sin) / cos, under, part);
        sum.volume += part.area * ds;
        sum.momentX -= part.area * section.s * ds;
        sum.momentZ += part.momentZ * ds;
        const dl = ds / Math.abs(cos); // along the surface
        const y = part.waterHalfBreadth;
        sum.area += 2 * y * dl;
        sum.IT += (2 / 3) * y * y * y * dl;
      }
      from = to;
    }
  }
}

/**
 * The waterplane of a surface that stands almost or wholly square to the datum line, run along the surface: the point at l
 * is (level·sin + l·cos, level·cos − l·sin).
 */
function steepWaterplane(edges: Edges, surface: SurfacePlane): Waterplane {
  const { sin, cos, level } = surface;
  const L = edges.length;
  const along = (z: number): number => (level * cos - z) / sin;
  const ends: number[] = [];
  for (const curve of ["top", "widest", "bottom"] as const) {
    const n = lineCrossings(edges, curve, sin, cos, level, dead(edges), found, 0);
    for (let i = 0; i < n; i++) ends.push(along(edges[curve](found[i] as number)));
  }
  if (cos !== 0)
    for (const phi of [0, Math.PI]) {
      const z = (level + stationOfPhi(phi, L) * sin) / cos;
      if (z > edges.bottom(phi) && z < edges.top(phi)) ends.push(along(z));
    }
  ends.sort((p, q) => p - q);
  const breadth = (l: number): number => {
    const s = -(level * sin + l * cos);
    return s < 0 || s > L ? 0 : halfBreadthAt(sectionAt(edges, phiOfStation(s, L)), level * cos - l * sin);
  };
  const plane: Waterplane = { area: 0, IT: 0 };
  const { n, x, w } = gaussLegendre(16);
  for (let k = 0; k + 1 < ends.length; k++) {
    const a = ends[k] as number;
    const width = (ends[k + 1] as number) - a;
    for (let i = 0; i < n; i++) {
      const t = (1 + (x[i] as number)) / 2;
      const dl = width * 6 * t * (1 - t) * ((w[i] as number) / 2);
      const y = breadth(a + width * t * t * (3 - 2 * t));
      plane.area += 2 * y * dl;
      plane.IT += (2 / 3) * y * y * y * dl;
    }
  }
  return plane;
}

/** The skin under the surface: its share of the bare skin, and its centroid. */
function wetSkin(body: Immersable, surface: SurfacePlane): { fraction: number; centroid: Vec } {
  const { edges, skin } = body;
  const { sin, cos, level } = surface;
  const sum: SkinSum = { area: 0, momentX: 0, momentZ: 0 };
  for (const range of wetRanges(edges, surface))
    inPanels(skin.panels, range.a, range.b, (a, b) => {
      skin.add(sum, a, b, range.cut ? surface : null);
    });
  for (const face of skin.faces) {
    if (cos === 0) {
      // the surface is parallel to the face: all of it or nothing
      if (heightAbove(surface, { x: -face.s, z: 0 }) >= 0) continue;
      immersedSection(face, Infinity, "below", part);
    } else immersedSection(face, (level + face.s * sin) / cos, cos > 0 ? "below" : "above", part);
    sum.area += part.area;
    sum.momentX -= part.area * face.s;
    sum.momentZ += part.momentZ;
  }
  return {
    fraction: sum.area / skin.area,
    centroid:
      sum.area > 0
        ? { x: sum.momentX / sum.area, z: sum.momentZ / sum.area }
        : footOn(surface, { x: skin.momentX / skin.area, z: skin.momentZ / skin.area }),
  };
}
