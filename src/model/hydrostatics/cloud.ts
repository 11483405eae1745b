import { cos as cosine, pow, sin as sine } from "../base";
import type { Shape } from "../shape";
import type { Wettable } from "./wet";

/**
 * A fast estimate of the righting lever, for the scan over the whole circle. It takes the bait's displaced volume as a cloud of
 * points. At any trim one pass over the points gives the level, without solving an equation. The lever is right to a few
 * hundredths of a millimetre. Every equilibrium that the estimate points at is then found on the true geometry.
 */
export interface Cloud {
  /** Righting lever X_B − X_G (m) and level (m) at a trim, for an immersed volume (m³) and a bait whose G is at (Gx, Gz). */
  at(sin: number, cos: number, volume: number, Gx: number, Gz: number): { lever: number; level: number };
}

/**
 * How many points the body has. They are evenly spaced in φ, and their heights follow the golden ratio: so they are evenly spread
 * in every direction.
 */
const POINTS = 160;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** At every tenth of them the skin has points as well: at its top, bottom and sides. */
const SKIN_EVERY = 10;
const BINS = 96;

/** Points of the body and of its skin. They are made once for each shape. */
interface Cells {
  readonly body: Float64Array; // x, z, share of the volume
  readonly skin: Float64Array; // x, z, share of the skin
}

/** The middle of a range and half its width, m. */
interface Extent {
  readonly middle: number;
  readonly half: number;
}

const known = new WeakMap<Shape, Cells>();

/** Moves points so that their centroid is at a given place, and scales their weights so that these add up to 1. */
function settle(points: number[], at: { readonly x: number; readonly z: number }): Float64Array {
  let w = 0;
  let x = 0;
  let z = 0;
  for (let i = 0; i < points.length; i += 3) {
    const wi = points[i + 2] ?? 0;
    w += wi;
    x += wi * (points[i] ?? 0);
    z += wi * (points[i + 1] ?? 0);
  }
  const out = Float64Array.from(points);
  for (let i = 0; i < out.length; i += 3) {
    out[i] = (out[i] ?? 0) + at.x - x / w;
    out[i + 1] = (out[i + 1] ?? 0) + at.z - z / w;
    out[i + 2] = (out[i + 2] ?? 0) / w;
  }
  return out;
}

function cellsOf(shape: Shape): Cells {
  const found = known.get(shape);
  if (found) return found;
  const body: number[] = [];
  const skin: number[] = [];
  for (let i = 0; i < POINTS; i++) {
    // Evenly spaced in φ, with s = L(1 − cos φ)/2: closely spaced at the round ends.
    const phi = ((i + 0.5) * Math.PI) / POINTS;
    const ds = sine(phi); // up to a factor that `settle` takes out
    const s = shape.section((shape.length * (1 - cosine(phi))) / 2);
    if (!(s.top > s.bottom) || !(s.halfBreadth > 0)) continue;
    const z = s.bottom + (s.top - s.bottom) * ((i * GOLDEN) % 1);
    const up = z >= s.widest;
    const u = Math.abs(z - s.widest) / (up ? s.top - s.widest : s.widest - s.bottom);
    const n = up ? s.exponentAbove : s.exponentBelow;
    const y = s.halfBreadth * (n === 2 ? Math.sqrt(1 - u * u) : pow(1 - pow(u, n), 1 / n));
    body.push(-s.s, z, y * (s.top - s.bottom) * ds);
    if (i % SKIN_EVERY !== 0) continue;
    // Half of the girth counts at the top and bottom, half at the sides.
    const girth = (s.halfBreadth + (s.top - s.bottom) / 2) * ds;
    skin.push(-s.s, s.top, girth / 4, -s.s, s.bottom, girth / 4, -s.s, s.widest, girth / 2);
  }
  const cells = { body: settle(body, shape.centroid), skin: settle(skin, shape.skinCentroid) };
  known.set(shape, cells);
  return cells;
}

const binVolume = new Float64Array(BINS);
const binX = new Float64Array(BINS);

export function cloudOf(wet: Wettable): Cloud {
  const { body, skin } = cellsOf(wet.shape);
  const points: number[] = [];
  const put = (from: Float64Array, volume: number): void => {
    for (let i = 0; i < from.length; i += 3)
      points.push(from[i] ?? 0, from[i + 1] ?? 0, volume * (from[i + 2] ?? 0));
  };
  put(body, wet.shape.volume);
  if (wet.coats > 0) put(skin, wet.coats);
  for (const p of wet.pieces)
    for (const t of [0.25, 0.75])
      points.push(p.a.x + t * (p.b.x - p.a.x), p.a.z + t * (p.b.z - p.a.z), p.volume / 2);
  for (const s of wet.spheres) points.push(s.at.x, s.at.z, s.volume);
  const packed = Float64Array.from(points);
  const along = extent(packed, 0);
  const up = extent(packed, 1);
  const { always } = wet;
  return {
    at(sin, cos, volume, Gx, Gz) {
      const reach = Math.abs(sin) * along.half + Math.abs(cos) * up.half;
      const low = along.middle * sin + up.middle * cos - reach;
      const scale = (BINS - 1e-9) / (2 * reach);
      binVolume.fill(0);
      binX.fill(0);
      fillBins(packed, sin, cos, low, scale, binVolume, binX);
      let V = always.volume;
      let X = always.x * cos - always.z * sin;
      let level = low + 2 * reach;
      for (let b = 0; b < BINS; b++) {
        const v = binVolume[b] as number;
        if (V + v >= volume && v > 0) {
          const part = (volume - V) / v;
          X += part * (binX[b] as number);
          level = low + (b + part) / scale;
          break;
        }
        V += v;
        X += binX[b] as number;
      }
      return { lever: X / volume - (Gx * cos - Gz * sin), level };
    },
  };
}

/** From the least to the greatest of the points' x (0) or z (1). */
function extent(points: Float64Array, which: 0 | 1): Extent {
  let [least, most] = [Infinity, -Infinity];
  for (let i = which; i < points.length; i += 3) {
    least = Math.min(least, points[i] as number);
    most = Math.max(most, points[i] as number);
  }
  return { middle: (least + most) / 2, half: (most - least) / 2 };
}

/** Sorts the points (x, z, volume) into bins by height: their volumes, and those times the distance forward. */
function fillBins(
  points: Float64Array,
  sin: number,
  cos: number,
  low: number,
  scale: number,
  volumes: Float64Array,
  moments: Float64Array,
): void {
  for (let i = 0; i < points.length; i += 3) {
    const x = points[i] as number;
    const z = points[i + 1] as number;
    const v = points[i + 2] as number;
    const b = Math.min(Math.max((x * sin + z * cos - low) * scale, 0), BINS - 1) | 0;
    volumes[b] = (volumes[b] as number) + v;
    moments[b] = (moments[b] as number) + v * (x * cos - z * sin);
  }
}
