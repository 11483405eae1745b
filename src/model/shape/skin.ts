import { atan2, sin } from "../base";
import type { Edges, Section } from "./types";
import { sectionAt } from "./edges";
import { polar, STEPS, tauOf } from "./polar";
import { newHalvesImmersion, sectionIntegrals, type HalvesImmersion } from "./section";
import { MOST_POINTS, type PanelRule } from "./panel-rule";
import type { SectionTable } from "./table";

/** Area (m²) and first moments ∫x dA, ∫z dA (m³). */
export interface SkinSum {
  area: number;
  momentX: number;
  momentZ: number;
}

/** Numbers kept per grid line of τ: running sums of area and of its z-moment, and the densities of both there. */
const KEPT = 4;
const HALF = (STEPS + 1) * KEPT;
/** Offset of the last grid line: the whole half. */
const END = STEPS * KEPT;

// Scratch of one call: area and moment per radian of φ, and the stations' shares in a line between them.
const line = new Float64Array(2); // cleared by `addLine`
const weights = new Float64Array(MOST_POINTS);
const spot = { at: 0, end: 0.5, startSlope: 0.5, endSlope: 0.5 };
/** A line that is wholly under. */
const wholly: Readonly<HalvesImmersion> = newHalvesImmersion();

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
    const { points } = table.rule;
    this.sums = new Float64Array(panels * points * 2 * HALF);
    const graded: boolean[] = [];
    this.graded = graded;
    const sum: SkinSum = { area: 0, momentX: 0, momentZ: 0 };
    const prefix: SkinSum[] = [{ ...sum }];
    for (let p = 0; p < panels; p++) {
      const lines = halves.slice(p * points, (p + 1) * points);
      graded.push(
        lines.some((h) => h.nUp < 2),
        lines.some((h) => h.nDown < 2),
      );
      for (let i = p * points; i < (p + 1) * points; i++) {
        const slopes = slopesAt(edges, phi[i] as number);
        const section = table.sections[i] as Section;
        fillHalf(section, slopes, true, graded[2 * p] === true, this.sums, 2 * i * HALF);
        fillHalf(section, slopes, false, graded[2 * p + 1] === true, this.sums, (2 * i + 1) * HALF);
      }
      for (let i = p * points; i < (p + 1) * points; i++)
        this.addStation(i, table.x[i] as number, table.dPhi[i] as number, wholly, true, sum);
      prefix.push({ ...sum });
    }
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

  /** Adds the whole skin (without faces) between φ = a and φ = b. */
  addWhole(a: number, b: number, sum: SkinSum): void {
    const { ends, panels, rule } = this.table;
    const { points, x, w } = rule;
    let from = a;
    for (let p = this.table.panelOf(a); p < panels && from < b; p++) {
      const to = Math.min(ends[p + 1] as number, b);
      if (from === ends[p] && to === ends[p + 1]) {
        const after = this.prefix[p + 1] as SkinSum;
        const before = this.prefix[p] as SkinSum;
        sum.area += after.area - before.area;
        sum.momentX += after.momentX - before.momentX;
        sum.momentZ += after.momentZ - before.momentZ;
      } else
        for (let i = 0; i < points; i++) {
          const half = (to - from) / 2;
          const phi = from + half * (1 + (x[i] as number));
          this.addBetween(p, phi, this.table.xAt(phi), half * (w[i] as number), wholly, true, sum);
        }
      from = to;
    }
  }

  /** Adds the wet part of a station's line; `cut` says where the surface passes it. */
  addStation(
    station: number,
    x: number,
    dPhi: number,
    cut: Readonly<HalvesImmersion>,
    keelDown: boolean,
    sum: SkinSum,
  ): void {
    this.locate(Math.floor(station / this.table.rule.points), cut);
    this.addWet(station, 1, cut, keelDown);
    addLine(sum, x, dPhi);
  }

  /** As `addStation`, for a line between the stations of a panel. */
  addBetween(
    panel: number,
    phi: number,
    x: number,
    dPhi: number,
    cut: Readonly<HalvesImmersion>,
    keelDown: boolean,
    sum: SkinSum,
  ): void {
    const a = this.table.ends[panel] as number;
    const b = this.table.ends[panel + 1] as number;
    const { rule } = this.table;
    const { points } = rule;
    carry(rule, (2 * phi - a - b) / (b - a));
    this.locate(panel, cut);
    for (let i = 0; i < points; i++) this.addWet(panel * points + i, weights[i] as number, cut, keelDown);
    addLine(sum, x, dPhi);
  }

  /**
   * Adds `weight` times a station's wet line to `line`: a whole half, and the part of the other half that the surface
   * leaves wet.
   */
  private addWet(station: number, weight: number, cut: Readonly<HalvesImmersion>, keelDown: boolean): void {
    const { inUpper } = cut;
    const passed = (2 * station + (inUpper ? 0 : 1)) * HALF;
    const other = (2 * station + (inUpper ? 1 : 0)) * HALF;
    if (inUpper === keelDown) {
      // wet: the other half whole, and the passed one from the widest line to the surface
      this.add(other + END, weight);
      this.addUpTo(passed, weight, cut);
    } else {
      // wet: what is left of the passed half beyond the surface
      this.add(passed + END, weight);
      this.addUpTo(passed, -weight, cut);
    }
  }

  private add(at: number, weight: number): void {
    line[0] = (line[0] as number) + weight * (this.sums[at] as number);
    line[1] = (line[1] as number) + weight * (this.sums[at + 1] as number);
  }

  /** Finds the step of τ in which the surface passes a half, and Hermite's weights there. */
  private locate(panel: number, cut: Readonly<HalvesImmersion>): void {
    if (cut.u >= 1) return;
    const graded = this.graded[2 * panel + (cut.inUpper ? 0 : 1)] === true;
    const place = tauOf(atan2(cut.u, cut.y), graded) * STEPS;
    const j = Math.min(Math.floor(place), STEPS - 1);
    const t = place - j;
    spot.at = j * KEPT;
    spot.end = t * t * (3 - 2 * t);
    spot.startSlope = (t * (1 - t) * (1 - t)) / STEPS;
    spot.endSlope = (t * t * (t - 1)) / STEPS;
  }

  /** Adds the running sums of a half from the widest line to the surface. */
  private addUpTo(half: number, weight: number, cut: Readonly<HalvesImmersion>): void {
    if (cut.u >= 1) {
      this.add(half + END, weight);
      return;
    }
    const k = half + spot.at;
    this.add(k, weight * (1 - spot.end));
    this.add(k + 4, weight * spot.end);
    this.add(k + 2, weight * spot.startSlope);
    this.add(k + 6, weight * spot.endSlope);
  }
}

/** Adds the line in `line` times dφ, and clears it. */
function addLine(sum: SkinSum, x: number, dPhi: number): void {
  const dA = (line[0] as number) * dPhi;
  sum.area += dA;
  sum.momentX += dA * x;
  sum.momentZ += (line[1] as number) * dPhi;
  line.fill(0);
}

/** Lagrange's weights that carry values at a panel's stations to its place t in [−1, 1], into `weights`. */
function carry({ points, x, barycentric }: PanelRule, t: number): void {
  let sum = 0;
  for (let i = 0; i < points; i++) {
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
  for (let i = 0; i < points; i++) weights[i] = (weights[i] as number) / sum;
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
    s: (edges.length / 2) * sin(phi),
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
  const { widest } = section;
  const { halfBreadth: dBreadth, widest: dWidest, s: ds } = d;
  // taken out of the object before the loop, which is faster so
  const {
    y: ys,
    z: zs,
    yByTau,
    zByTau,
    yByN,
    zByN,
  } = polar(up ? section.exponentAbove : section.exponentBelow, graded);
  let sumArea = 0;
  let sumMoment = 0;
  let startArea = 0; // densities at the start and middle of the step
  let startMoment = 0;
  let midArea = 0;
  let midMoment = 0;
  for (let j = 0; j <= 2 * STEPS; j++) {
    const y = ys[j] as number;
    const z = zs[j] as number;
    const yTau = hw * (yByTau[j] as number);
    const zTau = sign * h * (zByTau[j] as number);
    const yPhi = dBreadth * y + hw * dn * (yByN[j] as number);
    const zPhi = dWidest + sign * (dh * z + h * dn * (zByN[j] as number));
    // |r_φ × r_τ| with r_φ = (−s′, y_φ, z_φ), r_τ = (0, y_τ, z_τ); twice for the two sides
    const cross = yPhi * zTau - zPhi * yTau;
    const density = 2 * Math.sqrt(cross * cross + ds * ds * (yTau * yTau + zTau * zTau));
    const momentDensity = density * (widest + sign * h * z);
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
