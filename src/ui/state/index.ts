export { App, app, provideApp } from "./app.svelte";
export { cautions, cautionsFor } from "./cautions";
export type { Caution } from "./cautions";
export { examples } from "./examples";
export type { Example } from "./examples";
export { fileName } from "./files.svelte";
export {
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
export { CADENCE } from "./cadence-editor.svelte";
export { kindLabel, KINDS, lineTurn, moveInputs, RHYTHMS, turnsInput } from "./cadence";
export { columnInputs, reelInputs, withReel, withWeed, withZone } from "./retrieve";
export type { Letter } from "./compare.svelte";
export type { Rival } from "./rivals.svelte";
export type { Panel, Told, Zone } from "./swim.svelte";
export type { Draft } from "./drafts";
export type { ThemeChoice } from "./prefs.svelte";
export { keptWith } from "./kept.svelte";
export { Later } from "./runs.svelte";
export type { Session } from "./session.svelte";
export type { ShownUnit, UnitChoice, Units } from "./units";
export type { Why } from "./why.svelte";
export type { Worked } from "./workspace.svelte";
