import { gaussLegendre } from "../base";
import { sectionIntegrals } from "../shape";
import { Bonjean } from "./bonjean";
import { fit } from "./strips";
import type { Craft } from "./types";

/** A slice of the body with one section throughout, of half thickness `half` along x; places relative to G, m. */
export interface Slab {
  readonly x: number;
  readonly half: number;
  readonly volume: number;
  readonly centroidZ: number;
  /** The section as the water meets it with the back up, and with the belly up. */
  readonly backUp: Bonjean;
  readonly bellyUp: Bonjean;
}

/** Points of the quadrature inside a slab. */
const POINTS = 4;

/**
 * One slab for each strip, tiling the body from nose to tail without gap: cuts at the running sum of the strips' ds. Each
 * has the body's own volume and centroid height between its cuts, the section half way between them for its form; volumes
 * are then tilted by parts in 1e3 so that the first moment along x is the body's too, for the slabs' are at their middles.
 */
export function slabsOf(craft: Craft): Slab[] {
  const { shape } = craft.bait;
  const { G } = craft.rigid;
  const L = shape.length;
  const whole = craft.strips.reduce((sum, s) => sum + s.ds, 0);
  const rule = gaussLegendre(POINTS);
  let from = 0;
  let run = 0;
  const raw = craft.strips.map((strip) => {
    run += strip.ds;
    const to = Math.min(L, (L * run) / whole);
    const half = (to - from) / 2;
    const middle = from + half;
    let volume = 0;
    let moment = 0;
    for (let i = 0; i < POINTS; i++) {
      const section = shape.section(middle + half * (rule.x[i] as number));
      const { area, momentZ } = sectionIntegrals(section);
      volume += half * (rule.w[i] as number) * area;
      moment += half * (rule.w[i] as number) * momentZ;
    }
    from = to;
    const section = shape.section(middle);
    const centroidZ = (volume > 0 ? moment / volume : section.widest) - G.z;
    return { x: -middle - G.x, half, volume, centroidZ, section };
  });
  const exact = fit(raw, shape, G);
  return raw.map(({ x, half, volume: rough, centroidZ: about, section }) => {
    const volume = rough * (exact.level + exact.tilt * (x - exact.about));
    const centroidZ = about + exact.lift;
    const form = {
      ...section,
      top: section.top - G.z,
      widest: section.widest - G.z,
      bottom: section.bottom - G.z,
    };
    const area = volume / (2 * half);
    return {
      x,
      half,
      volume,
      centroidZ,
      backUp: new Bonjean(form, area, centroidZ, 1),
      bellyUp: new Bonjean(form, area, centroidZ, -1),
    };
  });
}
