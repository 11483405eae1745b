/**
 * What a bait looks like, as plain data: its outlines and parts (a scene), the list of marks that draws it, and the
 * colours by role. It knows no page and no drawing library: the stage, pictures, templates and lessons draw from here.
 */
export { ARROW_SCALES, forceText, SCALE_WORDS, type ArrowScale } from "./arrows";
export {
  boardBoxes,
  boardLayout,
  drawnCurve,
  gridMarks,
  inPane,
  onPane,
  sideMarks,
  snapStep,
  type BoardLayout,
  type BoardUnit,
  type Elevation,
  type Pane,
} from "./board";
export { lookedAt, movedView, wholeView, type BoardView } from "./board-view";
export { sectionCurve, sideCurve, topCurve } from "./curves";
export { sectionMarks, topMarks } from "./elevations";
export { freeBody, FREE_SCALES, momentAbout, scaleFor, type FreeBody } from "./free-body";
export { frameOf, withStrip, type Caption } from "./frame";
export { sumOf } from "./forces";
export { dashed, distanceToPath, placed } from "./geometry";
export { groundOf, isNarrow, rulerSizes, toScreen, toWorld, type Rulers, type View } from "./ground";
export { SUM_WORDS } from "./legend";
export type { Lengths } from "./lengths";
export { lookedMarks, notYetOn, type Look } from "./look";
export { arrowShape, boxOfMarks, colourOf, pickFrom, type Mark, type TextMark } from "./mark";
export { ballMarks, bodyMarks, ghostMarks, hookMarks, thingOf } from "./marks";
export {
  cssOf,
  forcedPalette,
  mix,
  numberOf,
  paletteFrom,
  rgbOf,
  TOKENS,
  type Palette,
  type Rgb,
  type Role,
  type SystemColours,
} from "./palette";
export { layersOf, pictureMarks, type Picture } from "./picture";
export { sceneOf } from "./scene";
export { heldStill, hookedHangers, posedMarks, restingPlace } from "./still";
export { escaped, svgElements, svgKeeper, svgOf, type SvgElement } from "./svg";
export { thumbnailFigures, thumbnailOf, type Thumbnail } from "./thumbnail";
export { niceStep, ticksBetween } from "./ticks";
export { RIVAL_DASH, type Point, type Posed, type Rival, type Scene, type Size } from "./types";
export type { PictureWords } from "./words";
