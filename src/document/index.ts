export { movesOf, withMoves, writtenOut } from "./cadence";
export type { DoneMove } from "./cadence";
export { baitSpec, compile } from "./compile";
export type { Compiled } from "./compile";
export type { ChoiceField, Field, FieldUnit, FlagField, GroupField, NumberField, TextField } from "./fields";
export {
  bare,
  choice,
  fieldOf,
  list,
  maybe,
  name,
  number,
  pathSteps,
  pathText,
  text,
  valueAt,
  whole,
} from "./fields";
export { decodeText, LARGEST_FILE } from "./bytes";
export type { Decoded } from "./bytes";
export { History, NO_TRAIL } from "./history";
export type { Trail } from "./history";
export { joinBoxes, mergeBoxes } from "./kept/box";
export { deltaOf } from "./kept/delta";
export type { Delta } from "./kept/delta";
export { differencesOf } from "./kept/differences";
export type { Difference } from "./kept/differences";
export { exchanges } from "./kept/exchange";
export type { Exchange } from "./kept/exchange";
export { fingerprint } from "./kept/fingerprint";
export { LARGEST_LIBRARY, openLibrary, readLibraryBait, serializeLibrary } from "./kept/library";
export type { LibraryBait } from "./kept/library";
export { PHOTO_PLACES } from "./kept/photo-places";
export type { PhotoPlace } from "./kept/photo-places";
export { fromBase64, linkOf, readLink, toBase64 } from "./kept/link";
export type { ReadLink } from "./kept/link";
export { asSetDown, buildAnew, noteDown, setDown } from "./kept/recipe";
export { readHead, readKept, readVersion } from "./kept/record";
export type { BaitHead, BaitVersion, Beside, KeptBait, ReadBait } from "./kept/record";
export { ELSEWHERE, mergeBeside, mergeScenarios, settle } from "./kept/settle";
export type { Clash, Settled } from "./kept/settle";
export { tidyTag } from "./kept/tags";
export { same } from "./kept/tree";
export { carryForward } from "./migrate";
export type { Step } from "./migrate";
export { draftOf, parseScenario, readScenario, tryCompile } from "./parse";
export type { Parsed, Tried } from "./parse";
export type { Immutable } from "./immutable";
export { problemsOf } from "./issues";
export { readJson } from "./json";
export { nearestPlace, problem } from "./problem";
export type { Place, Problem } from "./problem";
export { FORMAT, VERSION, fieldAt, scenarioJsonSchema } from "./schema";
export { MOST_MOVES } from "./schema-cadence";
export type { Scenario, ScenarioBait, ScenarioEntry, ScenarioMove, ScenarioRepeat } from "./schema";
export { SET_DOWN } from "./schema-recipe";
export type { SetDownKey } from "./schema-recipe";
export { print, serialize } from "./serialize";
export { STAGES } from "./schema-bench";
export type { Stage } from "./schema-bench";
export {
  byStage,
  countsOf,
  fileEntries,
  fileEntryOf,
  ownStage,
  PART_FILES,
  stageOf,
  stretchParts,
  compileParts,
} from "./parts";
export type { FileEntry } from "./parts";
export { emptyBox, parseBox, pieceMass, planKinds, readBox, serializeBox, swapParts } from "./box";
export type { ParsedBox } from "./box";
export type { Box, BoxThing } from "./box-schema";
export { BY_HAND, USUAL_DRILLS, USUAL_WEIGHTS, usualFor } from "./usual-box";
export { boxLeft, handPlace, onBait, piecesOf, putOn, startPlace, takeOff } from "./put-on";
export type { PutPlace, Taken } from "./put-on";
export { cautionsAt, cautions, cautionsFor } from "./cautions";
export type { Caution } from "./cautions";
export {
  BARE_TEST,
  baitAt,
  hasBareTest,
  hungForTest,
  isOnAt,
  MOMENTS,
  momentsOf,
  notYetAt,
  rowStages,
} from "./stages";
export type { Moment } from "./stages";
export { attitudeWords, floats, floatWords, LEVEL_WITHIN_DEG, riseWords, SUSPENDS_WITHIN_G } from "./words";
export { visible, visibleIn, visibleJson } from "./visible";
export { targetWords } from "./target";
export { adoptPlan, adoptSwap, correctionEntry } from "./adopt";
export { freeCorrection, readingWords } from "./readings";
export {
  addPoint,
  CURVES,
  curveSteps,
  hasCurve,
  movePoints,
  pointsOf,
  removePoints,
  setAt,
  setPoint,
  tidy,
  valueOn,
  withBody,
  withBreadth,
  withLength,
  withoutCurve,
  withOutline,
  withPoints,
} from "./outline";
export type { CurveKey, CurvePoint, CurvePoints } from "./outline";
export { reversed, scaled, shifted } from "./whole";
export type { Shifted } from "./whole";
export { formAt, switched, valueFrom, valueWords } from "./form";
export type { FormKey, ValueField } from "./form";
export { drilledSize, withDrilled } from "./parts/ballast";
export type { DrilledSize } from "./parts/ballast";
export type { StandsFree } from "./part-edits";
export { addPart, doublePart, dragPart, partHandles, partKinds, removePart } from "./part-edits";
