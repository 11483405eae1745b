import { footOn, heightAbove, type SurfacePlane, type Vec } from "../base";
import { immersedSection, type SectionImmersion, type Skin, type SkinSum } from "../shape";

/** Skin under water, and what of it goes under as the surface rises: dS/dl (m) and its moments by X (m², m³). */
export interface SkinUnder extends SkinSum {
  cut: number;
  cutMoment: number;
  cutSecond: number;
}

/** What lies under a surface: its share of the bare skin, its centroid, and what is cut. */
export interface WetSkin {
  readonly fraction: number;
  readonly centroid: Vec;
  readonly cut: number;
  readonly cutMoment: number;
  readonly cutSecond: number;
}

/** What is under of a body's skin: the sum over its sections, and the blunt faces that it leaves out. */
export function wetSkin(skin: Skin, sum: SkinUnder, surface: SurfacePlane): WetSkin {
  const { sin, cos, level } = surface;
  let { area, momentX, momentZ, cut, cutMoment, cutSecond } = sum;
  for (const face of skin.faces) {
    if (cos === 0) {
      // the surface is parallel to the face: all of it or nothing
      if (heightAbove(surface, { x: -face.s, z: 0 }) >= 0) continue;
      immersedSection(face, Infinity, "below", facePart);
    } else immersedSection(face, (level + face.s * sin) / cos, cos > 0 ? "below" : "above", facePart);
    area += facePart.area;
    momentX -= facePart.area * face.s;
    momentZ += facePart.momentZ;
    if (cos === 0) continue;
    const breadth = (2 * facePart.waterHalfBreadth) / Math.abs(cos);
    const X = (-face.s - level * sin) / cos;
    cut += breadth;
    cutMoment += X * breadth;
    cutSecond += X * X * breadth;
  }
  return {
    fraction: area / skin.area,
    centroid:
      area > 0
        ? { x: momentX / area, z: momentZ / area }
        : footOn(surface, { x: skin.momentX / skin.area, z: skin.momentZ / skin.area }),
    cut,
    cutMoment,
    cutSecond,
  };
}

const facePart: SectionImmersion = { area: 0, momentZ: 0, waterHalfBreadth: 0 };
