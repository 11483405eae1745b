export type { Edges, Immersion, Knot, Section, SectionImmersion, Shape, ShapeSpec, Station } from "./types";
export { edgesFromKnots, phiOfStation, sectionAt, ShapeError, stationOfPhi } from "./edges";
export { makeShape, shapeOf } from "./shape";
export {
  halfBreadthAt,
  immersedSection,
  sectionArea,
  sectionCentroidZ,
  sectionIntegrals,
  sectionOutline,
} from "./section";
export type { SectionIntegrals } from "./section";
export { insideOutline, outline, outlineCrossings, planOutline, reach } from "./outline";
