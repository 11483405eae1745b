import { gaussLegendre } from "../base";
import type { Edges, Section } from "./types";
import { sectionAt, stationOfPhi } from "./edges";
import { panelEnds, panelOf } from "./integrals";
import { sectionIntegrals } from "./section";

/**
 * The skin, ∫∫ |∂r/∂φ × ∂r/∂α| dα dφ over the drawn surface (docs/model.md §2), each section run by its polar angle:
 *   y = hw ρ cos α,  z = widest ± h ρ sin α,  ρ = (|cos α|ⁿ + |sin α|ⁿ)^(−1/n),  α from 0 (widest) to π/2 (edge).
 *
 * Along each quadrature line φ the integral over α is kept as a running sum on a regular grid of α (a grid line falls on π/4,
 * where a blocky section has its corner), so that the skin below a waterline is a look-up. Between the lines of a panel the
 * sums are interpolated as polynomials in φ.
 */
export interface Skin {
  /** Whole skin with blunt faces: area (m²) and first moments ∫x dA, ∫z dA (m³). */
  readonly area: number;
  readonly momentX: number;
  readonly momentZ: number;
  /**
   * Adds to `sum` the skin (without faces) between φ = a and φ = b, both in one panel: whole, or with a cut the part
   * of it that is under the surface.
   */
  add(sum: SkinSum, a: number, b: number, cut: SkinCut | null): void;
  /** Blunt faces at nose and tail, if any. */
  readonly faces: readonly Section[];
  readonly panels: Float64Array;
}

export interface SkinSum {
  area: number;
  momentX: number;
  momentZ: number;
}

/** The surface for a partial sum: height of the water at a station is (level + s·sin)/cos. */
export interface SkinCut {
  readonly sin: number;
  readonly cos: number;
  readonly level: number;
}

/** Intervals of α on a quarter, and Gauss points on each. */
const INTERVALS = 24;
const POINTS = 3;
/** Quadrature lines φ in a panel. */
const LINES = 6;

const STEP = Math.PI / 2 / INTERVALS;
/** Numbers kept per grid line of α: sum of area, sum of z-moment, and their densities there. */
const KEPT = 4;
const QUARTER = (INTERVALS + 1) * KEPT;

/** ρ and its derivatives by α and n on the α grid (grid lines and Gauss points in turn), for one exponent. */
interface Polar {
  readonly n: number;
  readonly rho: Float64Array;
  readonly byAlpha: Float64Array;
  readonly byN: Float64Array;
}

const POLAR_POINTS = INTERVALS * (POINTS + 1) + 1;
const alphas = new Float64Array(POLAR_POINTS);
const sines = new Float64Array(POLAR_POINTS);
const cosines = new Float64Array(POLAR_POINTS);
{
  const gauss = gaussLegendre(POINTS);
  for (let i = 0; i <= INTERVALS; i++) {
    const k = i * (POINTS + 1);
    alphas[k] = i * STEP;
    if (i < INTERVALS)
      for (let j = 0; j < POINTS; j++) alphas[k + 1 + j] = (i + 0.5 + 0.5 * (gauss.x[j] as number)) * STEP;
  }
  for (let k = 0; k < POLAR_POINTS; k++) {
    sines[k] = Math.sin(alphas[k] as number);
    cosines[k] = k === POLAR_POINTS - 1 ? 0 : Math.cos(alphas[k] as number);
  }
}

// The last two exponents asked for: most bodies have one above and one below.
let recent: Polar | null = null;
let before: Polar | null = null;

function polar(n: number): Polar {
  if (recent?.n === n) return recent;
  [recent, before] = [before, recent];
  if (recent?.n === n) return recent;
  const rho = new Float64Array(POLAR_POINTS).fill(1);
  const byAlpha = new Float64Array(POLAR_POINTS);
  const byN = new Float64Array(POLAR_POINTS);
  for (let k = 0; k < POLAR_POINTS; k++) {
    const c = cosines[k] as number;
    const s = sines[k] as number;
    const lc = c > 0 ? Math.log(c) : -Infinity;
    const ls = s > 0 ? Math.log(s) : -Infinity;
    const cn = n === 2 ? c * c : Math.exp(n * lc);
    const sn = n === 2 ? s * s : Math.exp(n * ls);
    const sum = cn + sn; // ρ⁻ⁿ, between 2^(1−n/2) and 2
    const r = n === 2 ? 1 : Math.exp(-Math.log(sum) / n);
    rho[k] = r;
    // dρ/dα = −ρ·(sⁿ⁻¹c − cⁿ⁻¹s)/sum, dρ/dn = ρ·[ln(sum)/n² − (cⁿ ln c + sⁿ ln s)/(n·sum)]
    const sPart = s > 0 ? (sn / s) * c : n === 1 ? c : 0;
    const cPart = c > 0 ? (cn / c) * s : n === 1 ? s : 0;
    byAlpha[k] = (-r * (sPart - cPart)) / sum;
    byN[k] = r * (Math.log(sum) / (n * n) - ((cn > 0 ? cn * lc : 0) + (sn > 0 ? sn * ls : 0)) / (n * sum));
  }
  recent = { n, rho, byAlpha, byN };
  return recent;
}

export function makeSkin(edges: Edges): Skin {
  const L = edges.length;
  const panels = panelEnds(edges.breaks);
  const count = panels.length - 1;
  const gauss = gaussLegendre(LINES);
  /** [panel][line][half: above, below][α grid][KEPT] */
  const table = new Float64Array(count * LINES * 2 * QUARTER);
  const whole: SkinSum = { area: 0, momentX: 0, momentZ: 0 };
  for (let p = 0; p < count; p++) {
    const a = panels[p] as number;
    const half = ((panels[p + 1] as number) - a) / 2;
    for (let i = 0; i < LINES; i++) {
      const phi = a + half * (1 + (gauss.x[i] as number));
      const at = (p * LINES + i) * 2 * QUARTER;
      fillLine(edges, phi, table, at);
      const end = QUARTER - KEPT;
      const area = (table[at + end] as number) + (table[at + QUARTER + end] as number);
      const weight = half * (gauss.w[i] as number);
      whole.area += weight * area;
      whole.momentX -= weight * area * stationOfPhi(phi, L);
      whole.momentZ += weight * ((table[at + end + 1] as number) + (table[at + QUARTER + end + 1] as number));
    }
  }
  const faces = [0, Math.PI]
    .map((phi) => sectionAt(edges, phi))
    .filter((s) => s.halfBreadth > 0 && s.top > s.bottom);
  for (const face of faces) {
    const { area, momentZ } = sectionIntegrals(face);
    whole.area += area;
    whole.momentX -= area * face.s;
    whole.momentZ += momentZ;
  }

  /** Weights that carry the lines of a panel to a place t in (−1, 1) of it: Lagrange's basis. */
  const basis = new Float64Array(LINES);
  const bary = gauss.x.map((xi, i) => gauss.x.reduce((w, xj, j) => (i === j ? w : w / (xi - xj)), 1));
  const carry = (t: number): void => {
    let sum = 0;
    for (let i = 0; i < LINES; i++) {
      const d = t - (gauss.x[i] as number);
      if (d === 0) {
        basis.fill(0);
        basis[i] = 1;
        return;
      }
      const w = (bary[i] as number) / d;
      basis[i] = w;
      sum += w;
    }
    for (let i = 0; i < LINES; i++) basis[i] = (basis[i] as number) / sum;
  };
  let area = 0;
  let moment = 0;
  /** Running sums of one half up to α, carried over the lines of the panel; into `area`, `moment`. */
  const upTo = (panel: number, half: 0 | 1, alpha: number): void => {
    const place = Math.min(Math.max(alpha / STEP, 0), INTERVALS);
    const j = Math.min(Math.floor(place), INTERVALS - 1);
    const t = place - j;
    const h00 = (1 + 2 * t) * (1 - t) * (1 - t);
    const h01 = 1 - h00;
    const h10 = t * (1 - t) * (1 - t) * STEP;
    const h11 = t * t * (t - 1) * STEP;
    area = 0;
    moment = 0;
    for (let i = 0; i < LINES; i++) {
      const k = ((panel * LINES + i) * 2 + half) * QUARTER + j * KEPT;
      const w = basis[i] as number;
      area +=
        w *
        (h00 * (table[k] as number) +
          h01 * (table[k + 4] as number) +
          h10 * (table[k + 2] as number) +
          h11 * (table[k + 6] as number));
      moment +=
        w *
        (h00 * (table[k + 1] as number) +
          h01 * (table[k + 5] as number) +
          h10 * (table[k + 3] as number) +
          h11 * (table[k + 7] as number));
    }
  };

  return {
    area: whole.area,
    momentX: whole.momentX,
    momentZ: whole.momentZ,
    faces,
    panels,
    add(sum, from, to, cut) {
      const middle = (from + to) / 2;
      const p = panelOf(panels, middle);
      const a = panels[p] as number;
      const width = (panels[p + 1] as number) - a;
      const scale = (to - from) / 2;
      for (let i = 0; i < LINES; i++) {
        const phi = middle + scale * (gauss.x[i] as number);
        const weight = scale * (gauss.w[i] as number);
        carry((2 * (phi - a)) / width - 1);
        let lineArea: number;
        let lineMoment: number;
        if (!cut) {
          upTo(p, 0, Math.PI / 2);
          lineArea = area;
          lineMoment = moment;
          upTo(p, 1, Math.PI / 2);
          lineArea += area;
          lineMoment += moment;
        } else {
          const s = sectionAt(edges, phi);
          const z = (cut.level + s.s * cut.sin) / cut.cos;
          const above = z >= s.widest;
          const h = above ? s.top - s.widest : s.widest - s.bottom;
          const alpha = cutAngle(
            h > 0 ? Math.abs(z - s.widest) / h : 1,
            above ? s.exponentAbove : s.exponentBelow,
          );
          // what lies between the widest line and the surface, then the whole half on its other side
          upTo(p, above ? 0 : 1, alpha);
          const partArea = area;
          const partMoment = moment;
          if (above === cut.cos > 0) {
            upTo(p, above ? 1 : 0, Math.PI / 2);
            lineArea = area + partArea;
            lineMoment = moment + partMoment;
          } else {
            upTo(p, above ? 0 : 1, Math.PI / 2);
            lineArea = area - partArea;
            lineMoment = moment - partMoment;
          }
        }
        sum.area += weight * lineArea;
        sum.momentX -= weight * lineArea * stationOfPhi(phi, L);
        sum.momentZ += weight * lineMoment;
      }
    },
  };
}

/** Polar angle of the point of a quarter at relative height u. */
function cutAngle(u: number, n: number): number {
  if (u >= 1) return Math.PI / 2;
  if (!(u > 0)) return 0;
  const y = n === 2 ? Math.sqrt((1 - u) * (1 + u)) : Math.pow(-Math.expm1(n * Math.log(u)), 1 / n);
  return Math.atan2(u, y);
}

/** Step of the central difference that gives the edges' slopes in φ: error ~ 1e-10 of the curves' third derivative. */
const D = 1e-5;

/** Running sums over α of both halves of the line at φ, both sides of the body together. */
function fillLine(edges: Edges, phi: number, table: Float64Array, at: number): void {
  const s = sectionAt(edges, phi);
  const low = sectionAt(edges, phi - D);
  const high = sectionAt(edges, phi + D);
  const slope = (key: keyof Section): number => (high[key] - low[key]) / (2 * D);
  const along = (edges.length / 2) * Math.sin(phi); // ds/dφ
  const hw = s.halfBreadth;
  const dhw = slope("halfBreadth");
  const dWidest = slope("widest");
  for (const half of [0, 1] as const) {
    const sign = half === 0 ? 1 : -1;
    const h = half === 0 ? s.top - s.widest : s.widest - s.bottom;
    const dh = half === 0 ? slope("top") - dWidest : dWidest - slope("bottom");
    const dn = slope(half === 0 ? "exponentAbove" : "exponentBelow");
    const { rho, byAlpha, byN } = polar(half === 0 ? s.exponentAbove : s.exponentBelow);
    let sumArea = 0;
    let sumMoment = 0;
    let k = at + half * QUARTER;
    let j = 0;
    for (let i = 0; i <= INTERVALS; i++) {
      for (let g = 0; g <= (i < INTERVALS ? POINTS : 0); g++, j++) {
        const c = cosines[j] as number;
        const n = sines[j] as number;
        const r = rho[j] as number;
        const rA = byAlpha[j] as number;
        const rN = dn * (byN[j] as number);
        const yA = hw * (rA * c - r * n);
        const zA = sign * h * (rA * n + r * c);
        const yPhi = (dhw * r + hw * rN) * c;
        const zPhi = dWidest + sign * (dh * r + h * rN) * n;
        // |r_φ × r_α| with r_φ = (−s′, y_φ, z_φ), r_α = (0, y_α, z_α); twice for the two sides
        const cross = yPhi * zA - zPhi * yA;
        const density = 2 * Math.sqrt(cross * cross + along * along * (yA * yA + zA * zA));
        const z = s.widest + sign * h * r * n;
        if (g === 0) {
          table[k] = sumArea;
          table[k + 1] = sumMoment;
          table[k + 2] = density;
          table[k + 3] = density * z;
          k += KEPT;
        } else {
          const w = ((gaussLegendre(POINTS).w[g - 1] as number) * STEP) / 2;
          sumArea += w * density;
          sumMoment += w * density * z;
        }
      }
    }
  }
}
