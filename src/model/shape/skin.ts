import { footOn, gaussLegendre, heightAbove, type SurfacePlane, type Vec } from "../base";
import type { Edges, Section, SectionImmersion } from "./types";
import { sectionAt } from "./edges";
import { drawNodes, nearCrossing, nodes, type WetRange } from "./nodes";
import { polar, STEPS, tauOf } from "./polar";
import { immersedSection, newHalves, sectionIntegrals, type Halves } from "./section";
import { POINTS, type SectionTable } from "./table";

/** Area (m²) and first moments ∫x dA, ∫z dA (m³). */
export interface SkinSum {
  area: number;
  momentX: number;
  momentZ: number;
}

/** Numbers kept per grid line of τ: running sums of area and of its z-moment, and the densities of both there. */
const KEPT = 4;
const HALF = (STEPS + 1) * KEPT;
const STATION = 2 * HALF;
/** Offset of the last grid line: the whole half. */
const END = STEPS * KEPT;

// Scratch of one call: what `Skin.half` found, per radian of φ.
let area = 0;
let moment = 0;
const weights = new Float64Array(POINTS);
const here = newHalves();

/**
 * The skin, ∫∫ |∂r/∂φ × ∂r/∂α| dα dφ over the drawn surface (docs/model.md §2), each section run by its polar angle:
 *   y = hw ρ cos α,  z = widest ± h ρ sin α,  α from 0 (widest) to π/2 (edge).
 *
 * At each station of the table the integral over α is kept as a running sum (see `polar.ts`), so that the skin below a
 * waterline is a look-up. Between the stations of a panel the sums are interpolated as polynomials in φ.
 */
export class Skin {
  /** Whole skin with blunt faces, m², m³. */
  readonly area: number;
  readonly momentX: number;
  readonly momentZ: number;
  /** Blunt faces at nose and tail, if any. */
  readonly faces: readonly Section[];
  /** [station][half: up, down][grid line of τ][KEPT] */
  private readonly sums: Float64Array;
  /** For each panel and half, whether its α grid is drawn to the ends. */
  private readonly graded: readonly boolean[];
  /** From the nose to each panel end, without faces. */
  private readonly prefix: readonly SkinSum[];

  constructor(readonly table: SectionTable) {
    const { edges, panels, phi, halves } = table;
    this.sums = new Float64Array(panels * POINTS * STATION);
    const graded: boolean[] = [];
    const sum: SkinSum = { area: 0, momentX: 0, momentZ: 0 };
    const prefix: SkinSum[] = [{ ...sum }];
    for (let p = 0; p < panels; p++) {
      const lines = halves.slice(p * POINTS, (p + 1) * POINTS);
      graded.push(
        lines.some((h) => h.nUp < 2),
        lines.some((h) => h.nDown < 2),
      );
      for (let i = p * POINTS; i < (p + 1) * POINTS; i++) {
        const slopes = slopesAt(edges, phi[i] as number);
        const section = table.sections[i] as Section;
        fillHalf(section, slopes, true, graded[2 * p] === true, this.sums, i * STATION);
        fillHalf(section, slopes, false, graded[2 * p + 1] === true, this.sums, i * STATION + HALF);
      }
      this.graded = graded;
      this.addPanel(p, null, sum);
      prefix.push({ ...sum });
    }
    this.graded = graded;
    this.prefix = prefix;
    this.faces = [0, Math.PI]
      .map((end) => sectionAt(edges, end))
      .filter((s) => s.halfBreadth > 0 && s.top > s.bottom);
    for (const face of this.faces) {
      const whole = sectionIntegrals(face);
      sum.area += whole.area;
      sum.momentX -= whole.area * face.s;
      sum.momentZ += whole.momentZ;
    }
    this.area = sum.area;
    this.momentX = sum.momentX;
    this.momentZ = sum.momentZ;
  }

  /** Adds the skin (without faces) of a range of φ: whole, or what is under a surface that cuts it. */
  addRange(range: WetRange, surface: SurfacePlane, sum: SkinSum): void {
    const { ends, panels } = this.table;
    let from = range.a;
    for (let p = this.table.panelOf(from); p < panels && from < range.b; p++) {
      const to = Math.min(ends[p + 1] as number, range.b);
      const cut = range.cut ? surface : null;
      if (from === ends[p] && to === ends[p + 1] && !nearCrossing(range, from, to)) {
        if (cut) this.addPanel(p, cut, sum);
        else {
          const after = this.prefix[p + 1] as SkinSum;
          const before = this.prefix[p] as SkinSum;
          sum.area += after.area - before.area;
          sum.momentX += after.momentX - before.momentX;
          sum.momentZ += after.momentZ - before.momentZ;
        }
      } else this.addPiece(p, from, to, range, cut, sum);
      from = to;
    }
  }

  /** A whole panel, by its own stations. */
  private addPanel(p: number, cut: SurfacePlane | null, sum: SkinSum): void {
    const { w } = gaussLegendre(POINTS);
    const half = ((this.table.ends[p + 1] as number) - (this.table.ends[p] as number)) / 2;
    for (let i = 0; i < POINTS; i++) {
      weights.fill(0);
      weights[i] = 1;
      const station = p * POINTS + i;
      const h = this.table.halves[station] as Halves;
      this.addLine(p, i, i + 1, h, this.table.phi[station] as number, half * (w[i] as number), cut, sum);
    }
  }

  /** Part of a panel; nodes drawn to the crossings, where the wet part of a line goes like d^(1/n). */
  private addPiece(
    p: number,
    from: number,
    to: number,
    range: WetRange,
    cut: SurfacePlane | null,
    sum: SkinSum,
  ): void {
    const a = this.table.ends[p] as number;
    const panel = (this.table.ends[p + 1] as number) - a;
    const count = drawNodes(range, from, to, POINTS);
    for (let i = 0; i < count; i++) {
      const phi = nodes.phi[i] as number;
      this.table.at(p, phi, here);
      carry((2 * (phi - a)) / panel - 1);
      this.addLine(p, 0, POINTS, here, phi, nodes.weight[i] as number, cut, sum);
    }
  }

  /** Adds the line at φ, put together from the panel's stations `first` to `last` − 1 by `weights`. */
  private addLine(
    p: number,
    first: number,
    last: number,
    h: Halves,
    phi: number,
    weight: number,
    cut: SurfacePlane | null,
    sum: SkinSum,
  ): void {
    const x = this.table.x(phi);
    let wetArea: number;
    let wetMoment: number;
    let level = Infinity; // height of the surface above the widest line, and which side of it is wet
    let keelDown = true;
    if (cut) {
      level = (cut.level - x * cut.sin) / cut.cos - h.widest;
      keelDown = cut.cos > 0;
    }
    const up = level >= 0;
    // the half that the surface passes: from the widest line to the surface
    const size = up ? h.up : h.down;
    const n = up ? h.nUp : h.nDown;
    const u = Math.abs(level) < size ? Math.abs(level) / size : 1;
    this.half(p, first, last, up ? 0 : 1, u < 1 ? polarAngle(u, n) : Math.PI / 2);
    const partArea = area;
    const partMoment = moment;
    if (up === keelDown) {
      // wet: that part, and the other half whole
      this.half(p, first, last, up ? 1 : 0, Math.PI / 2);
      wetArea = area + partArea;
      wetMoment = moment + partMoment;
    } else {
      // wet: what is left of the same half
      this.half(p, first, last, up ? 0 : 1, Math.PI / 2);
      wetArea = area - partArea;
      wetMoment = moment - partMoment;
    }
    sum.area += weight * wetArea;
    sum.momentX += weight * wetArea * x;
    sum.momentZ += weight * wetMoment;
  }

  /** Running sums of one half from the widest line to a polar angle, into `area` and `moment`. */
  private half(p: number, first: number, last: number, side: 0 | 1, alpha: number): void {
    const sums = this.sums;
    area = 0;
    moment = 0;
    const start = p * POINTS * STATION + side * HALF;
    if (alpha >= Math.PI / 2) {
      for (let i = first; i < last; i++) {
        const k = start + i * STATION + END;
        area += (weights[i] as number) * (sums[k] as number);
        moment += (weights[i] as number) * (sums[k + 1] as number);
      }
      return;
    }
    const place = tauOf(alpha, this.graded[2 * p + side] === true) * STEPS;
    const j = Math.min(Math.floor(place), STEPS - 1);
    const t = place - j;
    const h01 = t * t * (3 - 2 * t);
    const h00 = 1 - h01;
    const h10 = (t * (1 - t) * (1 - t)) / STEPS;
    const h11 = (t * t * (t - 1)) / STEPS;
    for (let i = first; i < last; i++) {
      const k = start + i * STATION + j * KEPT;
      const w = weights[i] as number;
      area +=
        w *
        (h00 * (sums[k] as number) +
          h01 * (sums[k + 4] as number) +
          h10 * (sums[k + 2] as number) +
          h11 * (sums[k + 6] as number));
      moment +=
        w *
        (h00 * (sums[k + 1] as number) +
          h01 * (sums[k + 5] as number) +
          h10 * (sums[k + 3] as number) +
          h11 * (sums[k + 7] as number));
    }
  }
}

/** Barycentric weights of the stations of a panel (Berrut & Trefethen 2004, SIAM Rev. 46:501–517, eq. 3.2). */
const barycentric = ((): Float64Array => {
  const { x } = gaussLegendre(POINTS);
  return x.map((xi, i) => x.reduce((product, xj, j) => (i === j ? product : product / (xi - xj)), 1));
})();

/** Lagrange's weights that carry values at a panel's stations to its place t in [−1, 1], into `weights`. */
function carry(t: number): void {
  const { x } = gaussLegendre(POINTS);
  let sum = 0;
  for (let i = 0; i < POINTS; i++) {
    const d = t - (x[i] as number);
    if (d === 0) {
      weights.fill(0);
      weights[i] = 1;
      return;
    }
    const w = (barycentric[i] as number) / d;
    weights[i] = w;
    sum += w;
  }
  for (let i = 0; i < POINTS; i++) weights[i] = (weights[i] as number) / sum;
}

/** Polar angle of the point of a quarter at relative height u. */
function polarAngle(u: number, n: number): number {
  if (n === 2) return Math.asin(u);
  return Math.atan2(u, Math.pow(1 - Math.pow(u, n), 1 / n));
}

/** Derivatives of a section by φ; s is ds/dφ. */
type Slopes = Section;

/** Central differences with a step of 1e-5 rad: error about 2e-11 of the curves' third derivatives, round-off 1e-11. */
function slopesAt(edges: Edges, phi: number): Slopes {
  const d = 1e-5;
  const low = sectionAt(edges, phi - d);
  const high = sectionAt(edges, phi + d);
  const slope = (key: keyof Section): number => (high[key] - low[key]) / (2 * d);
  return {
    s: (edges.length / 2) * Math.sin(phi),
    top: slope("top"),
    bottom: slope("bottom"),
    widest: slope("widest"),
    halfBreadth: slope("halfBreadth"),
    exponentAbove: slope("exponentAbove"),
    exponentBelow: slope("exponentBelow"),
  };
}

/** Running sums over one half of a station's line, both sides of the body together, by Simpson's rule on each step of τ. */
function fillHalf(
  section: Section,
  d: Slopes,
  up: boolean,
  graded: boolean,
  out: Float64Array,
  at: number,
): void {
  const sign = up ? 1 : -1;
  const hw = section.halfBreadth;
  const h = up ? section.top - section.widest : section.widest - section.bottom;
  const dh = up ? d.top - d.widest : d.widest - d.bottom;
  const dn = up ? d.exponentAbove : d.exponentBelow;
  const p = polar(up ? section.exponentAbove : section.exponentBelow, graded);
  let sumArea = 0;
  let sumMoment = 0;
  let startArea = 0; // densities at the start and middle of the step
  let startMoment = 0;
  let midArea = 0;
  let midMoment = 0;
  for (let j = 0; j <= 2 * STEPS; j++) {
    const y = p.y[j] as number;
    const z = p.z[j] as number;
    const yTau = hw * (p.yByTau[j] as number);
    const zTau = sign * h * (p.zByTau[j] as number);
    const yPhi = d.halfBreadth * y + hw * dn * (p.yByN[j] as number);
    const zPhi = d.widest + sign * (dh * z + h * dn * (p.zByN[j] as number));
    // |r_φ × r_τ| with r_φ = (−s′, y_φ, z_φ), r_τ = (0, y_τ, z_τ); twice for the two sides
    const cross = yPhi * zTau - zPhi * yTau;
    const density = 2 * Math.sqrt(cross * cross + d.s * d.s * (yTau * yTau + zTau * zTau));
    const momentDensity = density * (section.widest + sign * h * z);
    if (j % 2 === 1) {
      midArea = density;
      midMoment = momentDensity;
      continue;
    }
    if (j > 0) {
      sumArea += (startArea + 4 * midArea + density) / (6 * STEPS);
      sumMoment += (startMoment + 4 * midMoment + momentDensity) / (6 * STEPS);
    }
    const k = at + (j / 2) * KEPT;
    out[k] = sumArea;
    out[k + 1] = sumMoment;
    out[k + 2] = density;
    out[k + 3] = momentDensity;
    startArea = density;
    startMoment = momentDensity;
  }
}

const part: SectionImmersion = { area: 0, momentZ: 0, waterHalfBreadth: 0 };

/** The skin under a surface: its share of the bare skin, and its centroid. */
export function wetSkin(
  skin: Skin,
  ranges: readonly WetRange[],
  surface: SurfacePlane,
): { readonly fraction: number; readonly centroid: Vec } {
  const { sin, cos, level } = surface;
  const sum: SkinSum = { area: 0, momentX: 0, momentZ: 0 };
  for (const range of ranges) skin.addRange(range, surface, sum);
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
