export { againstTarget } from "./against";
export { App, app, provideApp } from "./app.svelte";
export { boxOf } from "./box.svelte";
export type { BoxState } from "./box.svelte";
export { cautions, cautionsFor } from "../../document";
export type { Caution } from "../../document";
export { examples } from "./examples";
export type { Example } from "./examples";
export { fileName } from "./files.svelte";
export {
  answers,
  asking,
  attitudeWords,
  chanceFigure,
  degrees,
  floatFigures,
  leverFigure,
  massFigures,
  netFigure,
  restFigure,
  riseFigures,
  uprightUnderWater,
  verdictSentence,
} from "./figures";
export type { Figure } from "./figures";
export * from "./inputs";
export { faultText } from "./fault";
export { CADENCE, CadenceEditor } from "./cadence-editor.svelte";
export { KINDS, moveAt, RHYTHMS } from "./cadence";
export { moveInputs, turnsInput } from "./move-inputs";
export {
  columnInputs,
  firstMoveAt,
  lineTurn,
  reelInputs,
  retrieveSpeed,
  withReel,
  withWeed,
  withZone,
} from "./retrieve";
export { LETTERS, LONGEST_NAME } from "./compare.svelte";
export type { Compare, Letter, Variant } from "./compare.svelte";
export { aCount, aFlag, aNumber, aRecord, aText, groupOf, listOf, oneOf, orNull } from "./readers";
export type { Store, ThemeChoice } from "./prefs.svelte";
export { keptWith } from "./kept.svelte";
export { BesideState } from "./beside.svelte";
export { atRest, KEYS_REST_MS, Pace } from "./rest";
export type { Library, Taken } from "./library.svelte";
export { quietly } from "./quiet";
export { Later, RunSlot } from "./runs.svelte";
export type { Shown } from "./runs.svelte";
export { Session } from "./session.svelte";
export type { StageSwitch } from "./stage.svelte";
export type { ShownUnit, UnitChoice, Units } from "./units";
export { whenAsked } from "./why.svelte";
export type { Asking, Why } from "./why.svelte";
export { workOut, Workspace } from "./workspace.svelte";
export type { Worked } from "./workspace.svelte";

/** Many baits in one file: it comes with the list of baits, not with the page's start. */
export const loadLibrary = () => import("./library.svelte");
