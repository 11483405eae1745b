import { footOn, gaussLegendre, pow, type SurfacePlane, type Vec } from "../base";
import {
  addWhole,
  type Edges,
  halfBreadthAt,
  type Halves,
  immersedHalves,
  lineCrossings,
  newHalves,
  newHalvesImmersion,
  phiOfStation,
  sectionAt,
  type SectionTable,
  type Shape,
  type Skin,
  type Solid,
  stationOfPhi,
  type VolumeSum,
} from "../shape";
import { drawNodes, nearCrossing, nodes, type WetRange } from "./nodes";
import { type SkinUnder, type WetSkin, wetSkin } from "./wet-skin";

/**
 * Gauss points on a piece of a panel that the surface cuts. Error on an ellipsoid: 5e-9 of the volume, 1e-7 of the
 * waterplane.
 */
const CUT_POINTS = 6;
/** Below this |cos(pitch)| the waterplane is integrated along the surface itself, not by stations. */
const STEEP = 1e-3;

/** Lengths below this share of the body's are round-off. */
const dead = (length: number): number => 1e-13 * length;

// Scratch of one call.
const found: number[] = [];
const here = newHalves();
const part = newHalvesImmersion();

/** The ranges of the body that have something under water, from nose to tail. */
function wetRanges(edges: Edges, surface: SurfacePlane): WetRange[] {
  const { sin, cos, level } = surface;
  const { length } = edges;
  let n = lineCrossings(edges, "top", sin, cos, level, dead(length), found, 0);
  n = lineCrossings(edges, "bottom", sin, cos, level, dead(length), found, n);
  const crossings = found.slice(0, n).sort((p, q) => p - q);
  const ranges: WetRange[] = [];
  for (let k = 0; k <= n; k++) {
    const a = k === 0 ? 0 : (crossings[k - 1] as number);
    const b = k === n ? Math.PI : (crossings[k] as number);
    if (!(b - a > 1e-14)) continue;
    const mid = (a + b) / 2;
    const reach = stationOfPhi(mid, length) * sin + level - dead(length); // z is under where z·cos < reach
    const top = edges.top(mid) * cos < reach;
    const bottom = edges.bottom(mid) * cos < reach;
    if (top || bottom) ranges.push({ a, b, cut: !(top && bottom), crossingA: k > 0, crossingB: k < n });
  }
  return ranges;
}

/** What lies under the surface of the whole body. */
export interface Immersion {
  /** m³. */
  readonly volume: number;
  /** Centroid of the immersed volume, body frame; the surface point nearest to it where volume is 0. */
  readonly centroid: Vec;
  /** Transverse second moment of the waterplane about the centre plane, ∫(2/3)y³ dl, m⁴, l along the surface. */
  readonly waterplaneIT: number;
  /** Area of the waterplane, m². */
  readonly waterplaneArea: number;
  /** ∫X dA (m³) and ∫X² dA (m⁴) over the waterplane, X forward along the surface from the nose tip's vertical. */
  readonly waterplaneMoment: number;
  readonly waterplaneSecond: number;
  /** Share of the bare skin under water (0–1) and that part's centroid in the body frame. */
  readonly skinFraction: number;
  readonly skinCentroid: Vec;
  /**
   * How fast skin goes under as the surface rises, dS/dl (m), and ∫X dS/dl, ∫X² dS/dl (m², m³). The skin's slope along the
   * body is left out: so the value is up to a tenth too small on a rounded body, a quarter on a blunt one. Use it for steps
   * towards a balance, not for results.
   */
  readonly skinCut: number;
  readonly skinCutMoment: number;
  readonly skinCutSecond: number;
}

/**
 * What lies under a surface, to 1e-5 of the body's volume at any trim. The part of its skin is computed when it is asked
 * for, or at once (`skin`).
 */
export function immersion(
  shape: Shape,
  surface: SurfacePlane,
  options?: { readonly skin?: boolean },
): Immersion {
  const drawn = new Immersed(shape.solid, surface, options?.skin === true);
  return shape.breadthFactor === 1 ? drawn : new Broadened(drawn, shape.breadthFactor);
}

/**
 * The immersion of a body that is `factor` times as broad as drawn, by powers of the factor; the skin is that of the
 * drawing.
 */
class Broadened implements Immersion {
  readonly volume: number;
  readonly centroid: Vec;
  readonly waterplaneIT: number;
  readonly waterplaneArea: number;
  readonly waterplaneMoment: number;
  readonly waterplaneSecond: number;

  constructor(
    private readonly drawn: Immersion,
    factor: number,
  ) {
    this.volume = factor * drawn.volume;
    this.centroid = drawn.centroid;
    this.waterplaneIT = factor * factor * factor * drawn.waterplaneIT;
    this.waterplaneArea = factor * drawn.waterplaneArea;
    this.waterplaneMoment = factor * drawn.waterplaneMoment;
    this.waterplaneSecond = factor * drawn.waterplaneSecond;
  }

  get skinFraction(): number {
    return this.drawn.skinFraction;
  }

  get skinCentroid(): Vec {
    return this.drawn.skinCentroid;
  }

  get skinCut(): number {
    return this.drawn.skinCut;
  }

  get skinCutMoment(): number {
    return this.drawn.skinCutMoment;
  }

  get skinCutSecond(): number {
    return this.drawn.skinCutSecond;
  }
}

class Immersed implements Immersion {
  readonly volume: number;
  readonly centroid: Vec;
  readonly waterplaneIT: number;
  readonly waterplaneArea: number;
  readonly waterplaneMoment: number;
  readonly waterplaneSecond: number;
  private skinUnder: WetSkin | null = null;

  constructor(
    private readonly body: Solid,
    private readonly surface: SurfacePlane,
    withSkin: boolean,
  ) {
    const { sin, cos, level } = surface;
    if (!(Math.abs(sin * sin + cos * cos - 1) < 1e-9 && Number.isFinite(level)))
      throw new RangeError(
        `surface with sin ${sin}, cos ${cos}, level ${level}: give the sine and cosine of one angle and a finite level`,
      );
    const { table, prefix } = body;
    const skin = withSkin ? body.skin : null;
    const sum = newSum();
    for (const range of wetRanges(table.edges, surface)) {
      if (range.cut) addCut(table, skin, surface, range, sum);
      else {
        addWhole(table, prefix, range.a, range.b, sum);
        skin?.addWhole(range.a, range.b, sum.skin);
      }
    }
    const plane = Math.abs(cos) < STEEP ? steepWaterplane(table.edges, surface) : sum;
    this.volume = sum.volume;
    this.centroid =
      sum.volume > 0
        ? { x: sum.momentX / sum.volume, z: sum.momentZ / sum.volume }
        : footOn(surface, body.centroid);
    this.waterplaneArea = plane.area;
    this.waterplaneMoment = plane.moment;
    this.waterplaneSecond = plane.second;
    this.waterplaneIT = plane.IT;
    if (skin) this.skinUnder = wetSkin(skin, sum.skin, surface);
  }

  get skinFraction(): number {
    return this.wetSkin().fraction;
  }

  get skinCentroid(): Vec {
    return this.wetSkin().centroid;
  }

  get skinCut(): number {
    return this.wetSkin().cut;
  }

  get skinCutMoment(): number {
    return this.wetSkin().cutMoment;
  }

  get skinCutSecond(): number {
    return this.wetSkin().cutSecond;
  }

  private wetSkin(): WetSkin {
    return (this.skinUnder ??= new Immersed(this.body, this.surface, true).wetSkin());
  }
}

/** Waterplane area, m², its moments ∫X dA and ∫X² dA, m³ and m⁴, and its transverse second moment ∫(2/3)y³ dl, m⁴. */
interface Waterplane {
  area: number;
  moment: number;
  second: number;
  IT: number;
}

interface CutSum extends VolumeSum, Waterplane {
  readonly skin: SkinUnder;
}

const newSum = (): CutSum => ({
  volume: 0,
  momentX: 0,
  momentZ: 0,
  area: 0,
  moment: 0,
  second: 0,
  IT: 0,
  skin: { area: 0, momentX: 0, momentZ: 0, cut: 0, cutMoment: 0, cutSecond: 0 },
});

/**
 * Adds the part under water of the sections in a cut range, the waterplane along them, and their skin where it is asked
 * for. Whole panels use their stored stations. Some pieces get stations of their own: those that end at or near a crossing,
 * and those in which the surface passes the widest line.
 */
function addCut(
  table: SectionTable,
  skin: Skin | null,
  surface: SurfacePlane,
  range: WetRange,
  sum: CutSum,
): void {
  const { sin, cos, level } = surface;
  const keelDown = cos > 0;
  const { points } = table.rule;
  const n = lineCrossings(table.edges, "widest", sin, cos, level, dead(table.length), found, 0);
  found.length = n;
  found.sort((p, q) => p - q);
  let next = 0;
  let from = range.a;
  for (let p = table.panelOf(range.a); p < table.panels && from < range.b; p++) {
    const end = Math.min(table.ends[p + 1] as number, range.b);
    while (from < end) {
      while (next < n && (found[next] as number) <= from) next++;
      const to = next < n && (found[next] as number) < end ? (found[next] as number) : end;
      if (from === table.ends[p] && to === table.ends[p + 1] && !nearCrossing(range, from, to))
        for (let i = p * points; i < (p + 1) * points; i++) {
          const x = table.x[i] as number;
          const ds = table.ds[i] as number;
          const h = table.halves[i] as Halves;
          addSlice(h, x, ds, surface, sum);
          if (!skin) continue;
          skin.addStation(i, x, table.dPhi[i] as number, part, keelDown, sum.skin);
          addSkinCut(h, x, ds, surface, sum.skin);
        }
      else {
        const count = drawNodes(range, from, to, CUT_POINTS);
        for (let i = 0; i < count; i++) {
          const phi = nodes.phi[i] as number;
          const dPhi = nodes.weight[i] as number;
          const x = table.xAt(phi);
          table.at(p, phi, here);
          const ds = table.slope(phi) * dPhi;
          addSlice(here, x, ds, surface, sum);
          if (!skin) continue;
          skin.addBetween(p, phi, x, dPhi, part, keelDown, sum.skin);
          addSkinCut(here, x, ds, surface, sum.skin);
        }
      }
      from = to;
    }
  }
}

/** Adds one slice; leaves where the surface passes it in `part`. */
function addSlice(h: Halves, x: number, ds: number, surface: SurfacePlane, sum: CutSum): void {
  const { sin, cos, level } = surface;
  immersedHalves(h, (level - x * sin) / cos, cos > 0, part);
  const dV = part.area * ds;
  sum.volume += dV;
  sum.momentX += dV * x;
  sum.momentZ += part.momentZ * ds;
  const y = part.waterHalfBreadth;
  const dl = ds / Math.abs(cos); // along the surface
  const X = (x - level * sin) / cos;
  const dA = 2 * y * dl;
  sum.area += dA;
  sum.moment += X * dA;
  sum.second += X * X * dA;
  sum.IT += (2 / 3) * y * y * y * dl;
}

/** Adds the skin that goes under of the slice in `part`, with the contour's slope dy/dz = −(hw/h)(u/y)ⁿ⁻¹. */
function addSkinCut(h: Halves, x: number, ds: number, surface: SurfacePlane, sum: SkinUnder): void {
  const { u, y, inUpper } = part;
  if (!(y > 0)) return;
  const n = inUpper ? h.nUp : h.nDown;
  const ratio = u / y;
  const slope = (h.halfBreadth / (inUpper ? h.up : h.down)) * (n === 2 ? ratio : pow(ratio, n - 1));
  const { sin, cos, level } = surface;
  const dS = (2 * Math.sqrt(1 + slope * slope) * ds) / Math.abs(cos);
  const X = (x - level * sin) / cos;
  sum.cut += dS;
  sum.cutMoment += X * dS;
  sum.cutSecond += X * X * dS;
}

/**
 * The waterplane of a surface that stands almost or wholly square to the datum line, integrated along the surface. The
 * point at l is (level·sin + l·cos, level·cos − l·sin).
 */
function steepWaterplane(edges: Edges, surface: SurfacePlane): Waterplane {
  const { sin, cos, level } = surface;
  const L = edges.length;
  const along = (z: number): number => (level * cos - z) / sin;
  const ends: number[] = [];
  for (const curve of ["top", "widest", "bottom"] as const) {
    const n = lineCrossings(edges, curve, sin, cos, level, dead(L), found, 0);
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
  const plane: Waterplane = { area: 0, moment: 0, second: 0, IT: 0 };
  const { n, x, w } = gaussLegendre(16);
  for (let k = 0; k + 1 < ends.length; k++) {
    const a = ends[k] as number;
    const width = (ends[k + 1] as number) - a;
    for (let i = 0; i < n; i++) {
      const t = (1 + (x[i] as number)) / 2;
      const dl = width * 6 * t * (1 - t) * ((w[i] as number) / 2);
      const X = a + width * t * t * (3 - 2 * t);
      const y = breadth(X);
      plane.area += 2 * y * dl;
      plane.moment += 2 * y * X * dl;
      plane.second += 2 * y * X * X * dl;
      plane.IT += (2 / 3) * y * y * y * dl;
    }
  }
  return plane;
}
