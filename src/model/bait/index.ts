export type * from "./types";
export { assemble, MID } from "./assemble";
export type { AssembleOptions } from "./assemble";
export { ballPlaces, ballRoom } from "./balls";
export { benchBodyMass, benchBodyVolume, prepareBench, rowsNamed } from "./bench";
export type { PreparedReading, Sizes } from "./bench";
export { bibPlate } from "./bib";
export type { BibPlate, Piece } from "./bib";
export { BaitError } from "./error";
export { withOnly } from "./part";
export {
  AIR_DENSITY,
  densityHungUnder,
  readingHeldUnder,
  scaleReading,
  trueMass,
  trueMassOfDensity,
  volumeHeldUnder,
} from "./weighing";
