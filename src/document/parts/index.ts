export { ballastEntry } from "./ballast";
export { fittingEntry } from "./fittings";
export {
  byStage,
  compileParts,
  countsOf,
  denseThings,
  fileEntries,
  fileEntryOf,
  ownStage,
  PART_FILES,
  partFields,
  partRules,
  stageOf,
  stretchParts,
} from "./registry";
export type { FileEntry, HeldParts } from "./registry";
export { USUAL } from "./usual";
