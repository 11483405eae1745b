export type * from "./types";
// The types of parts that a bait's own types use: so whoever reads a bait imports from here alone.
export { BaitError, ballPlaces, ballRoom, bibPlate, lowSide } from "../parts";
export type {
  BallastSpec,
  BallSide,
  BallsSpec,
  BibPlate,
  BibSpec,
  ChamberSpec,
  CoatSpec,
  FittingSpec,
  Group,
  HangerSpec,
  Immersing,
  Item,
  MaterialClass,
  Piece,
  Stuff,
  UncertaintySpec,
  Warning,
  WireSpec,
} from "../parts";
export { assemble, MID } from "./assemble";
export type { AssembleOptions } from "./assemble";
export { benchBodyMass, benchBodyVolume, prepareBench, rowsNamed } from "./readings";
export type { PreparedReading, Sizes } from "./readings";
export { correctionsBefore, correctionsKept, isHung } from "./corrections";
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
