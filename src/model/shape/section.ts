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
  return u >= 1 ? 0 : s.halfBreadth * Math.pow(-Math.expm1(n * Math.log(u)), 1 / n);
}

const part: QuarterPart = { area: 0, moment: 0, breadth: 0 };

/**
 * The part of a section on one side of a level line at height `zSurface` (its Bonjean curve): `under` says on which side the
 * water is: "below" with the keel down, "above" when the bait floats belly-up. Written to `out`, which is returned.
 */
export function immersedSection(
  s: Section,
  zSurface: number,
  under: "below" | "above" = "below",
  out: SectionImmersion = { area: 0, momentZ: 0, waterHalfBreadth: 0 },
): SectionImmersion {
  const a = s.top - s.widest;
  const b = s.widest - s.bottom;
  const hw2 = 2 * s.halfBreadth;
  const up = quarter(s.exponentAbove);
  const down = quarter(s.exponentBelow);
  const upArea = a * up.c;
  const upMoment = a * a * up.m;
  const downArea = b * down.c;
  const downMoment = b * b * down.m;
  // below the line: area and first moment about the widest line, per 2·hw
  let area: number;
  let first: number;
  let y = 0;
  if (zSurface >= s.top) {
    area = upArea + downArea;
    first = upMoment - downMoment;
  } else if (zSurface <= s.bottom) {
    area = 0;
    first = 0;
  } else if (zSurface >= s.widest) {
    quarterPart(s.exponentAbove, (zSurface - s.widest) / a, part);
    area = downArea + a * part.area;
    first = a * a * part.moment - downMoment;
    y = part.breadth;
  } else {
    quarterPart(s.exponentBelow, (s.widest - zSurface) / b, part);
    area = downArea - b * part.area;
    first = b * b * part.moment - downMoment;
    y = part.breadth;
  }
  if (under === "above") {
    area = upArea + downArea - area;
    first = upMoment - downMoment - first;
  }
  area *= hw2;
  out.area = area;
  out.momentZ = s.widest * area + hw2 * first;
  out.waterHalfBreadth = y * s.halfBreadth;
  return out;
}

/** A section's contour as n points (y, z) from the top round one side to the bottom and back up the other, m. */
export function sectionOutline(s: Section, n = 64): { readonly y: number; readonly z: number }[] {
  if (n < 4) throw new RangeError(`a section outline of ${n} points: use 4 or more`);
  return Array.from({ length: n }, (_, i) => {
    const angle = Math.PI / 2 - (2 * Math.PI * i) / n; // polar angle, from the top clockwise
    const sin = Math.sin(angle);
    const cos = Math.cos(angle);
    const above = sin >= 0;
    const k = above ? s.exponentAbove : s.exponentBelow;
    const h = above ? s.top - s.widest : s.widest - s.bottom;
    const rho = (Math.abs(cos) ** k + Math.abs(sin) ** k) ** (-1 / k);
    return { y: s.halfBreadth * rho * cos, z: s.widest + h * rho * sin };
  });
}
