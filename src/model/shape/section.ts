import { pow } from "../base";
import type { Section, SectionImmersion } from "./types";
import { quarter, quarterPart, type QuarterPart } from "./superellipse";

/** Area (m²) and first and second moment about the datum line (m³, m⁴) of a section, both sides together. */
export interface SectionIntegrals {
  readonly area: number;
  readonly momentZ: number;
  readonly secondZ: number;
}

/** Area of a whole section, m²: 2·hw·(h_above·c(n_above) + h_below·c(n_below)), docs/model.md §2. */
export const sectionArea = (s: Section): number =>
  2 *
  s.halfBreadth *
  ((s.top - s.widest) * quarter(s.exponentAbove).c + (s.widest - s.bottom) * quarter(s.exponentBelow).c);

export function sectionIntegrals(s: Section): SectionIntegrals {
  const up = quarter(s.exponentAbove);
  const down = quarter(s.exponentBelow);
  const a = s.top - s.widest;
  const b = s.widest - s.bottom;
  const hw2 = 2 * s.halfBreadth;
  const area = hw2 * (a * up.c + b * down.c);
  const first = hw2 * (a * a * up.m - b * b * down.m); // about the widest line
  const second = hw2 * (a * a * a * up.q + b * b * b * down.q);
  const w = s.widest;
  return { area, momentZ: w * area + first, secondZ: second + 2 * w * first + w * w * area };
}

/** Height of a section's centroid above the datum line, m; the widest height where the section has no area. */
export function sectionCentroidZ(s: Section): number {
  const { area, momentZ } = sectionIntegrals(s);
  return area > 0 ? momentZ / area : s.widest;
}

/** Half-breadth of a section at a height, m; 0 above its top and below its bottom. */
export function halfBreadthAt(s: Section, z: number): number {
  if (z > s.top || z < s.bottom) return 0;
  const above = z >= s.widest;
  const h = above ? s.top - s.widest : s.widest - s.bottom;
  if (!(h > 0)) return s.halfBreadth;
  const n = above ? s.exponentAbove : s.exponentBelow;
  const u = Math.abs(z - s.widest) / h;
  return u >= 1 ? 0 : s.halfBreadth * pow(1 - pow(u, n), 1 / n);
}

/**
 * The part of a section on one side of a level line at height `zSurface` (its Bonjean curve). `under` says on which side
 * the water is: "below" with the keel down, "above" when the bait floats belly-up. The result is written to `out`, which is
 * returned.
 */
export function immersedSection(
  s: Section,
  zSurface: number,
  under: "below" | "above" = "below",
  out: SectionImmersion = { area: 0, momentZ: 0, waterHalfBreadth: 0 },
): SectionImmersion {
  const above = quarter(s.exponentAbove);
  const below = quarter(s.exponentBelow);
  halves.halfBreadth = s.halfBreadth;
  halves.widest = s.widest;
  halves.up = s.top - s.widest;
  halves.down = s.widest - s.bottom;
  halves.nUp = s.exponentAbove;
  halves.nDown = s.exponentBelow;
  halves.cUp = above.c;
  halves.mUp = above.m;
  halves.cDown = below.c;
  halves.mDown = below.m;
  immersedHalves(halves, zSurface, under === "below", result);
  out.area = result.area;
  out.momentZ = result.momentZ;
  out.waterHalfBreadth = result.waterHalfBreadth;
  return out;
}

/** A section as its two halves, with their full integrals stored. */
export interface Halves {
  halfBreadth: number;
  widest: number;
  /** Heights of the halves, m. */
  up: number;
  down: number;
  nUp: number;
  nDown: number;
  /** Full integrals of the unit quarters (`quarter`). */
  cUp: number;
  mUp: number;
  cDown: number;
  mDown: number;
}

export const newHalves = (): Halves => ({
  halfBreadth: 0,
  widest: 0,
  up: 0,
  down: 0,
  nUp: 2,
  nDown: 2,
  cUp: 0,
  mUp: 0,
  cDown: 0,
  mDown: 0,
});

/** A section's immersion, and where the surface passes it. */
export interface HalvesImmersion extends SectionImmersion {
  /** Whether the surface passes the upper half, or lies above it. */
  inUpper: boolean;
  /**
   * Place of the surface in the half that it passes: relative height u from the widest line (1: beyond the half) and
   * relative breadth y.
   */
  u: number;
  y: number;
}

export const newHalvesImmersion = (): HalvesImmersion => ({
  area: 0,
  momentZ: 0,
  waterHalfBreadth: 0,
  inUpper: true,
  u: 1,
  y: 0,
});

const halves = newHalves();
const result = newHalvesImmersion();
const part: QuarterPart = { area: 0, moment: 0, breadth: 0 };

/** `immersedSection` on prepared halves; `keelDown`: the water is below the line. */
export function immersedHalves(h: Halves, zSurface: number, keelDown: boolean, out: HalvesImmersion): void {
  const { up, down } = h;
  const upArea = up * h.cUp;
  const upMoment = up * up * h.mUp;
  const downArea = down * h.cDown;
  const downMoment = down * down * h.mDown;
  const z = zSurface - h.widest;
  // below the line: area and first moment about the widest line, per 2·half-breadth
  let area = 0;
  let first = 0;
  let u = 1;
  let y = 0;
  if (z >= up) {
    area = upArea + downArea;
    first = upMoment - downMoment;
  } else if (z >= 0) {
    u = z / up;
    quarterPart(h.nUp, u, h.cUp, h.mUp, part);
    area = downArea + up * part.area;
    first = up * up * part.moment - downMoment;
    y = part.breadth;
  } else if (z > -down) {
    u = -z / down;
    quarterPart(h.nDown, u, h.cDown, h.mDown, part);
    area = downArea - down * part.area;
    first = down * down * part.moment - downMoment;
    y = part.breadth;
  }
  out.inUpper = z >= 0;
  out.u = u;
  out.y = y;
  if (!keelDown) {
    area = upArea + downArea - area;
    first = upMoment - downMoment - first;
  }
  area *= 2 * h.halfBreadth;
  out.area = area;
  out.momentZ = h.widest * area + 2 * h.halfBreadth * first;
  out.waterHalfBreadth = y * h.halfBreadth;
}
