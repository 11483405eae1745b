export type {
  Apart,
  Ball,
  BallSide,
  Bodies,
  DrawnBody,
  DrawnRows,
  Figure,
  FigureRole,
  Hanging,
  Immersing,
  MaterialClass,
  NewInput,
  NextSizes,
  Part,
  Piece,
  Row,
  RowDraft,
  RowDraw,
  Sketch,
  Solid,
  Stuff,
  UncertaintySpec,
  Warning,
} from "./types";
export { entriesOf, mapParts, noParts, PART_GROUPS, PART_KEYS, partKeyOf, PARTS, replaced } from "./registry";
export type {
  AnyPart,
  Entry,
  Group,
  Item,
  ListKey,
  PartKey,
  PartSpec,
  PartSpecs,
  PieceName,
} from "./registry";
export {
  checkLayout,
  checkNumbers,
  entryFinder,
  fittedItems,
  itemsOnSide,
  keepOuts,
  Labels,
  sketches,
  whatOf,
} from "./fitted";
export type { EntrySketch, KeepOut } from "./fitted";
export { bodyRow, bodyUncertain, checkBody } from "./body";
export type { ChangeWords } from "./small-changes";
export { finite, above0, point } from "./checks";
export { BaitError, inG, inMl, inMm } from "./error";
export { rowOf } from "./rows";
export { densitySpread } from "./spread";
export { cutBall } from "./figures";
export { areApart, ballRadius, gap, overlap, roomOf } from "./solids";
export { ballPlaces, ballRoom, lowSide } from "./balls";
export type { BallsSpec } from "./balls";
export { bibOutline, bibPlate, slotAngle } from "./plate";
export type { BibPlate, BibSpec } from "./plate";
export type { BallastSpec } from "./ballast";
export type { ChamberSpec } from "./chamber";
export type { CoatSpec } from "./coat";
export type { FittingSpec } from "./fitting";
export { drilledHole, holeAcross } from "./ballast";
export { hookLength, hookMeasure, hookOfSize, RING_TAKES } from "./hanger";
export type { HookMeasure } from "./hanger";
export type { HangerSpec } from "./hanger";
export type { WireSpec } from "./wire";
