/**
 * The lesson: a file of its own beside the scenario, with its formulas, its figures by the model, and what students hand
 * in. A room of its own, so that nobody who opens no lesson loads any of it.
 */
export { drawn } from "./draws";
export type { Student } from "./draws";
export { answersRight, cameTrue, optionOf, outcomeAgrees, outcomeOf, toleranceOf } from "./figures";
export type { Outcome } from "./figures";
export { readFormula } from "./formula";
export type { Values } from "./formula";
export { parseLesson, readLesson } from "./parse";
export {
  parseResults,
  resultsJsonSchema,
  RESULTS_FORMAT,
  RESULTS_VERSION,
  serializeResults,
} from "./results";
export type { LessonResult, Results } from "./results";
export { lessonJsonSchema, lessonSchema } from "./schema";
export type { Exercise, Language, Lesson, LessonUnit, LessonWords, Prediction } from "./schema";
export { serializeLesson } from "./serialize";
export { saidOf, texOf } from "./tex";
export type { Speech } from "./tex";
export { equationIn, filled, inLanguage } from "./text";
export { textsOf } from "./rules";
export { variantsOf } from "./variants";
export type { Built, Collection } from "./variants";
