import { gaussLegendre } from "../base";
import { type Section, sectionIntegrals } from "../shape";
import { Bonjean } from "./bonjean";
import { fit } from "./fit";
import type { Cuttable } from "./types";

/**
 * A slice of the body's upper or lower half, between two stations and its widest line: one half section throughout,
 * sheared, of half thickness `half` along x; places relative to G, m.
 */
export interface Slab {
  /** Index of the strip that it belongs to. */
  readonly strip: number;
  readonly x: number;
  readonly half: number;
  readonly volume: number;
  readonly centroidZ: number;
  /** Rise of the half section forward, dz/dx. */
  readonly slope: number;
  /** The half section as the water meets it with the back up, and with the belly up. */
  readonly backUp: Bonjean;
  readonly bellyUp: Bonjean;
}

/** Points of the quadrature inside a slab. */
const POINTS = 4;

/**
 * Two slabs for each strip, an upper and a lower half, cut at the running sum of the strips' ds. Each slab has the volume,
 * the centroid and the spread along x of the body's half between its cuts: it stands at that centroid and reaches √3 times
 * the spread to each side. It also has the slope of its sections' centroids, and the form of the half section half way.
 *
 * So level, trim and the righting moments of both are right to second order in the slabs' length. Compared with the exact
 * immersion they are within 5e-4 of the volume for trims up to 60°, and 2e-3 for a bait on its head (32 strips).
 */
export function slabsOf(swimmer: Cuttable): Slab[] {
  const { shape } = swimmer.bait;
  const { G } = swimmer.rigid;
  const L = shape.length;
  const whole = swimmer.strips.reduce((sum, s) => sum + s.ds, 0);
  let from = 0;
  let run = 0;
  const raw = swimmer.strips.flatMap((strip, index) => {
    run += strip.ds;
    const to = Math.min(L, (L * run) / whole);
    const cut = (to - from) / 2;
    const middle = from + cut;
    from = to;
    const section = shape.section(middle);
    return [true, false].flatMap((upper) => {
      const height = upper ? section.top - section.widest : section.widest - section.bottom;
      const part = slice((s) => halfOf(shape.section(s), upper), middle, cut);
      if (!(part.volume > 0 && height > 0)) return [];
      const exponent = upper ? section.exponentAbove : section.exponentBelow;
      const x = part.ahead - middle - G.x;
      return [{ ...part, strip: index, x, centroidZ: part.z - G.z, upper, height, exponent }];
    });
  });
  const exact = fit(raw, shape, G);
  return raw.map(({ strip, x, half, upper, height, exponent, volume: rough, centroidZ: z, slope }) => {
    const volume = rough * (exact.level + exact.tilt * (x - exact.about));
    const centroidZ = z + exact.lift;
    const area = volume / (2 * half);
    return {
      strip,
      x,
      half,
      volume,
      centroidZ,
      slope,
      backUp: new Bonjean(upper, exponent, height, area, centroidZ),
      bellyUp: new Bonjean(!upper, exponent, height, area, -centroidZ),
    };
  });
}

const halfOf = (s: Section, upper: boolean): Section =>
  upper ? { ...s, bottom: s.widest } : { ...s, top: s.widest };

/** A slice of half a body, `cut` to both sides of a station. */
interface Slice {
  /** m³ */
  readonly volume: number;
  /** Its centroid: height above the datum line, and ahead of the station, m. */
  readonly z: number;
  readonly ahead: number;
  /** Rise of its sections' centroids forward. */
  readonly slope: number;
  /** √3 × its spread along x: the half thickness of an even slab with the same second moment, m. */
  readonly half: number;
}

function slice(at: (station: number) => Section, station: number, cut: number): Slice {
  const { x, w } = gaussLegendre(POINTS);
  let volume = 0;
  let first = 0;
  let rise = 0;
  let ahead = 0;
  let second = 0;
  for (let i = 0; i < POINTS; i++) {
    const forward = -cut * (x[i] as number);
    const { area, momentZ } = sectionIntegrals(at(station - forward));
    const weight = cut * (w[i] as number);
    volume += weight * area;
    ahead += weight * area * forward;
    second += weight * area * forward * forward;
    first += weight * momentZ;
    rise += weight * momentZ * forward;
  }
  if (!(volume > 0)) return { volume: 0, z: 0, ahead: 0, slope: 0, half: cut };
  const z = first / volume;
  ahead /= volume;
  const variance = second / volume - ahead * ahead;
  // the line through the sections' centroids, by least squares with their areas
  const slope = (rise / volume - z * ahead) / variance;
  return { volume, z, ahead, slope, half: Math.sqrt(3 * variance) };
}
