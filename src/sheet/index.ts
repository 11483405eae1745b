/**
 * From the document to paper: templates at 1 : 1 as pages, and the files that hold them. No page, no Node: fonts come in as
 * bytes, files go out as bytes.
 */
export { allFiles, cutterFile, pdfFile } from "./files";
export type { MadeFile } from "./files";
export { sheetJob, stationsTrouble, usualStations } from "./job";
export type { SheetChoice, SheetJob } from "./job";
export { classPages, classPdf } from "./lesson/paper";
export type { Block, ClassJob, ClassPaper } from "./lesson/paper";
export { readFont } from "./paper/font";
export type { Fonts } from "./paper/font";
export { AS_PRINTED, measuredTrouble, PAPERS } from "./paper/frame";
export type { Measured, PaperKey } from "./paper/frame";
export type { Page } from "./paper/page";
export { pagesOf } from "./sheets";
export { solidFigures } from "./solid/compare";
export type { SolidFigures } from "./solid/compare";
export { solidFiles } from "./solid/files";
export { solidKernel } from "./solid/kernel";
export { solveHalf } from "./solid/solve";
export { TEMPLATES } from "./templates";
export type { TemplateKey } from "./templates";
export { svgOf } from "./write/svg";
