export type { Edges, Knot, Section, SectionImmersion, ShapeSpec, Station } from "./types";
export { edgesFromKnots, phiOfStation, sectionAt, ShapeError, stationOfPhi } from "./edges";
export { makeShape, shapeOf } from "./shape";
export {
  halfBreadthAt,
  immersedHalves,
  immersedSection,
  newHalves,
  newHalvesImmersion,
  sectionArea,
  sectionCentroidZ,
  sectionIntegrals,
} from "./section";
export type { Halves, SectionIntegrals } from "./section";
export { insideOutline, outline, outlineCrossings } from "./outline";
// The tables that the hydrostatics room reads.
export { lineCrossings } from "./grid";
export { addWhole } from "./integrals";
export type { VolumeSum } from "./integrals";
export type { Skin, SkinSum } from "./skin";
export type { Shape, Solid } from "./solid";
export type { SectionTable } from "./table";
