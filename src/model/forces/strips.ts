import { cos, gaussLegendre, sin, type Vec } from "../base";
import { sectionArea, sectionCentroidZ, type Shape } from "../shape";
import { sectionFactor } from "./coefficients";
import type { EllipsoidCoefficients } from "./ellipsoid";
import type { Strip } from "./types";

/** Strips and the added mass they carry, over water density. */
export interface Strips {
  readonly strips: readonly Strip[];
  /** Σ a33′ds/ρ, m³. */
  readonly heave: number;
  /** The same with arms about the strips' centre x₃₃ (m forward of G), and the pitch value there, m⁵. */
  readonly centreX: number;
  readonly pitch: number;
}

/** Panels with fewer nodes than this are joined to a neighbour. */
const NODES_PER_PANEL = 4;

/**
 * Ends of the quadrature panels in φ: the shape's breaks (its knots), the nearest ones left out until at most `most`
 * panels are left. Between two breaks every curve is smooth.
 */
function panels(breaks: readonly number[], most: number): number[] {
  const ends = [...breaks];
  while (ends.length - 1 > most) {
    let drop = 1;
    let least = Infinity;
    for (let i = 1; i + 1 < ends.length; i++) {
      const span = (ends[i + 1] ?? 0) - (ends[i - 1] ?? 0);
      if (span < least) {
        least = span;
        drop = i;
      }
    }
    ends.splice(drop, 1);
  }
  return ends;
}

/** Nodes per panel, `total` in all, at least two each, the rest where nodes are farthest apart. */
function share(ends: readonly number[], total: number): number[] {
  const spans = ends.slice(1).map((e, i) => e - (ends[i] ?? 0));
  const counts = spans.map(() => 2);
  for (let left = total - 2 * spans.length; left > 0; left--) {
    let widest = 0;
    spans.forEach((span, i) => {
      if (span / (counts[i] ?? 1) > (spans[widest] ?? 0) / (counts[widest] ?? 1)) widest = i;
    });
    counts[widest] = (counts[widest] ?? 0) + 1;
  }
  return counts;
}

/**
 * Cuts the body into strips at Gauss nodes in φ (s = L(1 − cos φ)/2), places relative to G.
 *
 * The strips' volumes are tilted by a few parts in 1e5 and their centroids shifted so that volume and centroid add up
 * to the body's own exactly. Heave added mass by strips: a33′ = ρπ·hw²·C_w, C_w = k_z r_z/r_y; in pitch about the strips'
 * centre C₅ Σ a33′(x − x₃₃)², C₅ = 5P/(k_z ρV r_x²) (docs/model.md §6.3), which is the same as moving each strip's arm
 * about x₃₃ by √C₅: `addedX`. So the whole is a sum of squares, and stays positive when strips leave the water.
 *
 * @param G of the rigid set, body frame
 */
export function cutStrips(shape: Shape, count: number, G: Vec, ellipsoid: EllipsoidCoefficients): Strips {
  if (!Number.isInteger(count) || count < 8 || count > 256)
    throw new RangeError(`${count} strips along the body: give a whole number from 8 to 256`);
  const { length: L, edges } = shape;
  const ends = panels(edges.breaks, Math.max(1, Math.floor(count / NODES_PER_PANEL)));
  const counts = share(ends, count);
  const rx = L / 2;
  const ry = shape.maxHalfBreadth;
  const rz = shape.maxHeight / 2;
  const cw = (ellipsoid.kZ * rz) / ry;
  const c5 = (5 * ellipsoid.pitchPerVolume) / (ellipsoid.kZ * rx * rx);

  const raw: Strip[] = [];
  counts.forEach((n, panel) => {
    const from = ends[panel] ?? 0;
    const half = ((ends[panel + 1] ?? 0) - from) / 2;
    const rule = gaussLegendre(n);
    for (let i = 0; i < n; i++) {
      const phi = from + half * (1 + (rule.x[i] ?? 0));
      const s = (L * (1 - cos(phi))) / 2;
      const ds = (L / 2) * sin(phi) * half * (rule.w[i] ?? 0);
      const at = shape.section(Math.min(L, Math.max(0, s)));
      const height = at.top - at.bottom;
      const area = sectionArea(at);
      raw.push({
        x: -s - G.x,
        ds,
        halfBreadth: at.halfBreadth,
        top: at.top - G.z,
        bottom: at.bottom - G.z,
        widest: at.widest - G.z,
        exponentAbove: at.exponentAbove,
        exponentBelow: at.exponentBelow,
        area,
        centroidZ: sectionCentroidZ(at) - G.z,
        // where a section has no height left, the ratio's limit is that of an edge across the flow
        shapeFactor:
          at.halfBreadth > 0 ? sectionFactor(height > 0 ? (2 * at.halfBreadth) / height : Infinity) : 0,
        volume: area * ds,
        added: Math.PI * at.halfBreadth ** 2 * cw * ds,
        addedX: 0,
      });
    }
  });

  const heave = raw.reduce((sum, p) => sum + p.added, 0);
  const centreX = raw.reduce((sum, p) => sum + p.added * p.x, 0) / heave;
  const pitch = c5 * raw.reduce((sum, p) => sum + p.added * (p.x - centreX) ** 2, 0);
  const reach = Math.sqrt(c5);
  const exact = fit(raw, shape, G);
  return {
    strips: raw.map((p) => {
      const volume = p.volume * (exact.level + exact.tilt * (p.x - exact.about));
      return { ...p, volume, centroidZ: p.centroidZ + exact.lift, addedX: centreX + reach * (p.x - centreX) };
    }),
    heave,
    centreX,
    pitch,
  };
}

/**
 * Factor level + tilt·(x − about) on volumes along the body, and lift of their centroids, that make the sums the body's
 * own. Places relative to G.
 *
 * @throws RangeError where that takes more than 2 %: too few strips for this drawing
 */
export function fit(
  strips: readonly { readonly x: number; readonly volume: number; readonly centroidZ: number }[],
  shape: Shape,
  G: Vec,
): { level: number; tilt: number; about: number; lift: number } {
  const v = strips.reduce((sum, p) => sum + p.volume, 0);
  const about = strips.reduce((sum, p) => sum + p.volume * p.x, 0) / v;
  const spread = strips.reduce((sum, p) => sum + p.volume * (p.x - about) ** 2, 0);
  const level = shape.volume / v;
  const tilt = (shape.volume * (shape.centroid.x - G.x - about)) / spread;
  if (!(Math.abs(level - 1) < 0.02 && Math.abs(tilt) * shape.length < 0.05))
    throw new RangeError(
      `${strips.length} strips miss the body's volume by a factor ${level}: raise the number of strips`,
    );
  const moment = strips.reduce((sum, p) => sum + p.volume * (level + tilt * (p.x - about)) * p.centroidZ, 0);
  return { level, tilt, about, lift: shape.centroid.z - G.z - moment / shape.volume };
}
